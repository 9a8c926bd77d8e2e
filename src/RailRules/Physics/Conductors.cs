namespace RailRules.Physics;

/// <summary>Resistance and continuous current of conductors. SI units except where a standard's own unit is in the formula.</summary>
internal static class Conductors
{
    /// <summary>Resistivity of annealed copper at 20 °C (Ω·m): 1/58 Ω·mm²/m. Source: IEC 60028 (from memory).</summary>
    internal const double CopperResistivity = 1e-6 / 58;

    /// <summary>Temperature coefficient of annealed copper at 20 °C (1/K). Source: IEC 60028 (from memory).</summary>
    internal const double CopperCoefficient = 0.00393;

    /// <summary>Resistivity of hard-drawn aluminium at 20 °C (Ω·m). Source: IEC 60889 (from memory).</summary>
    internal const double AluminiumResistivity = 0.028264e-6;

    /// <summary>Temperature coefficient of aluminium at 20 °C (1/K). Source: IEC 60889 (from memory).</summary>
    internal const double AluminiumCoefficient = 0.00403;

    /// <summary>Highest current density (A/m²) from which the section of a conductor that is known by its continuous current alone is bounded. Common practice, no source.</summary>
    internal const double HighestDensity = 40e6;

    private const double SquareMil = 25.4e-6 * 25.4e-6;

    /// <summary>Resistance (Ω) of a conductor at 20 °C.</summary>
    /// <param name="resistivity">Resistivity (Ω·m).</param>
    /// <param name="length">Length (m).</param>
    /// <param name="section">Section (m²), above 0.</param>
    internal static double Resistance(double resistivity, double length, double section) => resistivity * length / section;

    /// <summary>Factor on the resistance at 20 °C: 1 + a (T − 20 °C), never below 0.</summary>
    /// <param name="coefficient">Temperature coefficient at 20 °C (1/K).</param>
    /// <param name="celsius">Temperature (°C).</param>
    internal static double TemperatureFactor(double coefficient, double celsius) => Math.Max(0, 1 + (coefficient * (celsius - 20)));

    /// <summary>Running temperature (°C): ambient + rise (I/I_z)², not above ambient + rise.</summary>
    /// <param name="ambient">Air temperature (°C).</param>
    /// <param name="rise">Rise (K) at the continuous current.</param>
    /// <param name="current">Current (A).</param>
    /// <param name="continuous">Continuous current I_z (A).</param>
    internal static double RunningTemperature(double ambient, double rise, double current, double continuous)
    {
        var share = continuous > 0 ? current / continuous : 1;
        return ambient + (rise * Math.Min(1, share * share));
    }

    /// <summary>Continuous current of a trace (A): k ΔT^0.44 A^0.725, A in square mil, k = 0.048 outer, 0.024 inner. Source: IPC-2221A, 6.2.</summary>
    /// <param name="section">Section of finished copper (m²).</param>
    /// <param name="rise">Rise above the air (K), not negative.</param>
    /// <param name="inner">Whether it lies in an inner layer.</param>
    internal static double TraceCurrent(double section, double rise, bool inner) =>
        (inner ? 0.024 : 0.048) * Math.Pow(Math.Max(0, rise), 0.44) * Math.Pow(section / SquareMil, 0.725);

    /// <summary>Section (m²) at which a trace carries a current with a rise: the inverse of <see cref="TraceCurrent"/>.</summary>
    internal static double TraceSection(double current, double rise, bool inner) =>
        SquareMil * Math.Pow(current / ((inner ? 0.024 : 0.048) * Math.Pow(rise, 0.44)), 1 / 0.725);

    /// <summary>Rise (K) of a trace: the inverse of <see cref="TraceCurrent"/>.</summary>
    internal static double TraceRise(double current, double section, bool inner) =>
        Math.Pow(current / ((inner ? 0.024 : 0.048) * Math.Pow(section / SquareMil, 0.725)), 1 / 0.44);
}
