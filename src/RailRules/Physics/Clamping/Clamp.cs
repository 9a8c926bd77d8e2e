namespace RailRules.Physics;

/// <summary>
/// A transient suppressor as a straight line: V = V_BR + R_d I. Common practice, no source. All SI.
/// </summary>
/// <param name="Breakdown">Breakdown voltage in the corner meant (V).</param>
/// <param name="Resistance">Dynamic resistance (Ω), 0 or more.</param>
internal readonly record struct Clamp(double Breakdown, double Resistance)
{
    /// <summary>Shortest width (s) for which pulse power is scaled; a shorter one counts as this.</summary>
    internal const double ShortestWidth = 1e-6;

    /// <summary>Longest width (s) for which pulse power is scaled.</summary>
    internal const double LongestWidth = 10e-3;

    /// <summary>The line through breakdown and clamping voltage: R_d = (V_C − V_BR) / I_PP. Null: no pulse current, or a clamping voltage below the breakdown.</summary>
    /// <param name="breakdown">Breakdown voltage (V).</param>
    /// <param name="clamping">Clamping voltage (V) at <paramref name="pulseCurrent"/>.</param>
    /// <param name="pulseCurrent">Pulse current (A).</param>
    internal static Clamp? Through(double breakdown, double clamping, double pulseCurrent) =>
        pulseCurrent > 0 && clamping >= breakdown ? new(breakdown, (clamping - breakdown) / pulseCurrent) : null;

    /// <summary>Clamping voltage at a current (V).</summary>
    internal double VoltageAt(double current) => Breakdown + (Resistance * current);

    /// <summary>Current that a surge drives (A): (V_s − V_BR) / (Z_s + R_d), 0 below breakdown; positive infinity where nothing limits it.</summary>
    /// <param name="surgeVoltage">Open-circuit voltage of the surge (V).</param>
    /// <param name="surgeResistance">Resistance behind it (Ω).</param>
    internal double SurgeCurrent(double surgeVoltage, double surgeResistance) =>
        surgeVoltage <= Breakdown ? 0 : (surgeVoltage - Breakdown) / (surgeResistance + Resistance);

    /// <summary>
    /// Pulse power (W) for another width: P √(t_ref / t), from 1 µs to 10 ms. Source: adiabatic junction, P proportional to t^−0.5, Wunsch and Bell 1968 (from memory).
    /// Null: a width beyond 10 ms, for which the law says nothing.
    /// </summary>
    /// <param name="power">Pulse power at the reference width (W).</param>
    /// <param name="reference">Reference width (s).</param>
    /// <param name="width">Width (s).</param>
    internal static double? PulsePower(double power, double reference, double width) =>
        width > LongestWidth * (1 + 1e-9) || reference > LongestWidth * (1 + 1e-9) || !(reference > 0)
            ? null
            : power * Math.Sqrt(reference / Math.Max(width, ShortestWidth));

    /// <summary>Energy (J) of an exponential pulse stated by its time to half value: V_C I t_d / ln 2. Source: closed form.</summary>
    internal static double PulseEnergy(double clamping, double peakCurrent, double halfValue) => clamping * peakCurrent * halfValue / Math.Log(2);

    /// <summary>
    /// Energy (J) that an interrupted inductance leaves in a clamp of constant voltage, the source still in the loop: L I²/2 × V_C / (V_C − V).
    /// Also the energy of an avalanche. Null: the clamp does not stop the current. Source: closed form.
    /// </summary>
    /// <param name="inductance">Loop inductance (H).</param>
    /// <param name="current">Current when interrupted (A).</param>
    /// <param name="clamping">Clamping or avalanche voltage (V).</param>
    /// <param name="sourceVoltage">Source voltage (V); 0 for a plain freewheel path.</param>
    internal static double? InductiveEnergy(double inductance, double current, double clamping, double sourceVoltage) =>
        clamping > sourceVoltage ? inductance * current * current / 2 * clamping / (clamping - sourceVoltage) : null;
}
