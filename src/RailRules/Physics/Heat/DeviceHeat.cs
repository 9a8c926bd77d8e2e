namespace RailRules.Physics;

/// <summary>Heat of devices, and what temperature leaves of a rating where a law and not a curve is stated. SI units, temperatures in °C.</summary>
internal static class DeviceHeat
{
    /// <summary>Dissipation (W) of a device at a current, from its drop at rated current: U I² / I_n, constant resistance. Common practice, no source.</summary>
    /// <param name="drop">Drop at rated current (V).</param>
    /// <param name="ratedCurrent">Rated current (A).</param>
    /// <param name="current">Current (A).</param>
    internal static double Dissipation(double drop, double ratedCurrent, double current) => drop * current * current / ratedCurrent;

    /// <summary>Hot resistance (Ω) from the drop at a current: U / I.</summary>
    internal static double ResistanceOfDrop(double drop, double current) => drop / current;

    /// <summary>
    /// Temperature of a body (°C): air + rise at rated current × P / P at rated current. Common practice, no source: the rise is taken as proportional to the heat.
    /// </summary>
    /// <param name="ambient">Air (°C).</param>
    /// <param name="rise">Rise at rated current (K).</param>
    /// <param name="powerShare">Power over power at rated current.</param>
    internal static double BodyTemperature(double ambient, double rise, double powerShare) => ambient + (rise * powerShare);

    /// <summary>
    /// Factor √((T_lim − T) / (T_lim − T_ref)), 0 at the limit. Source: heat balance I² R = h (T_lim − T), A. Wright and P. G. Newbery, Electric Fuses (from memory);
    /// for conductors NFPA 70, 310.15(B) (from memory).
    /// </summary>
    /// <param name="limit">Highest temperature in service (°C).</param>
    /// <param name="ambient">Air (°C).</param>
    /// <param name="reference">Air at which the rating holds (°C).</param>
    internal static double SquareRootLaw(double limit, double ambient, double reference) =>
        ambient >= limit || reference >= limit ? 0 : Math.Sqrt((limit - ambient) / (limit - reference));

    /// <summary>Factor 1 − slope × (T − T_ref), at least 0. Common practice, no source.</summary>
    /// <param name="slope">Share of the rating lost for each kelvin (1/K).</param>
    /// <param name="ambient">Air (°C).</param>
    /// <param name="reference">Air at which the rating holds (°C).</param>
    internal static double LinearLaw(double slope, double ambient, double reference) => Math.Max(0, 1 - (slope * (ambient - reference)));

    /// <summary>Current of a tripped resettable fuse (A): P / V. Source: power balance.</summary>
    internal static double TrippedCurrent(double trippedPower, double voltage) => trippedPower / voltage;

    /// <summary>
    /// Largest power (W) that a resistive load leaves for a tripped resettable fuse in series: V²/(4 R). It resets under load only if that is below its tripped power.
    /// Source: power matching, closed form.
    /// </summary>
    /// <param name="voltage">Source voltage (V).</param>
    /// <param name="loadResistance">Load (Ω).</param>
    internal static double LoadLinePower(double voltage, double loadResistance) => voltage * voltage / (4 * loadResistance);
}
