namespace RailRules.Physics;

/// <summary>
/// Closed forms of starts with electronic fuses and hot-swap switches, and what their tolerances make of a limit. Source: charge and energy balance, any textbook.
/// </summary>
internal static class StartFormulas
{
    /// <summary>Time (s) to charge at constant current with a constant-current load on: C V / (I − I_load). Null: never.</summary>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="voltage">Voltage to reach (V).</param>
    /// <param name="current">Switch current (A).</param>
    /// <param name="load">Load current (A).</param>
    internal static double? Time(double capacitance, double voltage, double current, double load = 0) =>
        current > load ? capacitance * voltage / (current - load) : null;

    /// <summary>Energy (J) in the switch of such a start: C V²/2 × I / (I − I_load). Null: without end.</summary>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="voltage">Source voltage (V).</param>
    /// <param name="current">Switch current (A).</param>
    /// <param name="load">Load current (A).</param>
    internal static double? Energy(double capacitance, double voltage, double current, double load = 0) =>
        current > load ? capacitance * voltage * voltage / 2 * current / (current - load) : null;

    /// <summary>Energy (J) in the switch that starts into a short circuit until its timer ends: V I t.</summary>
    internal static double ShortedEnergy(double voltage, double current, double timer) => voltage * current * timer;

    /// <summary>Current (A) of a start whose output rises at a set rate: C dv/dt.</summary>
    internal static double RampCurrent(double capacitance, double rate) => capacitance * rate;

    /// <summary>Lowest and highest limit (A) of a sensed current: threshold ± a over resistance ± b.</summary>
    /// <param name="threshold">Threshold voltage (V).</param>
    /// <param name="thresholdTolerance">Its tolerance as a share.</param>
    /// <param name="resistance">Sense resistance (Ω).</param>
    /// <param name="resistanceTolerance">Its tolerance as a share.</param>
    internal static (double Low, double High) SensedLimit(double threshold, double thresholdTolerance, double resistance, double resistanceTolerance) =>
        (threshold * (1 - thresholdTolerance) / (resistance * (1 + resistanceTolerance)),
            threshold * (1 + thresholdTolerance) / (resistance * (1 - resistanceTolerance)));

    /// <summary>
    /// Factor on a thermally limited safe operating area, or on a pulse power, stated at 25 °C: (T_max − T) / (T_max − 25 °C), from 1 down to 0.
    /// Source: linear heat balance of the junction, textbooks of power semiconductors (from memory). It does not hold where thermal instability rules.
    /// </summary>
    /// <param name="limit">Highest junction temperature (°C).</param>
    /// <param name="temperature">Case or air temperature (°C).</param>
    internal static double TemperatureFactor(double limit, double temperature) =>
        limit > 25 ? Math.Min(1, Math.Max(0, (limit - temperature) / (limit - 25))) : 0;

    /// <summary>Rise of the junction (K): P × Z_th.</summary>
    internal static double JunctionRise(double power, double thermalImpedance) => power * thermalImpedance;
}
