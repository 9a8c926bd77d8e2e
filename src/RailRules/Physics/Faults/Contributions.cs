namespace RailRules.Physics;

/// <summary>Estimates of the current that batteries, chargers and motors give into a fault.</summary>
internal static class Contributions
{
    /// <summary>
    /// Peak current of a lead-acid battery: 1.05 U / (0.9 R_B + R_L). Source: IEC 61660-1, contribution of batteries (from memory, to be verified).
    /// </summary>
    /// <param name="nominalVoltage">Nominal voltage (V).</param>
    /// <param name="batteryResistance">Internal resistance of the cells (Ω).</param>
    /// <param name="linkResistance">Resistance of links and leads up to the fault (Ω).</param>
    /// <returns>Current (A).</returns>
    internal static double BatteryPeak(double nominalVoltage, double batteryResistance, double linkResistance) =>
        1.05 * nominalVoltage / ((0.9 * batteryResistance) + linkResistance);

    /// <summary>
    /// Quasi-steady current of a lead-acid battery: 0.95 × 1.05 U / (R_B + R_L). Source: IEC 61660-1 (from memory, to be verified).
    /// </summary>
    /// <param name="nominalVoltage">Nominal voltage (V).</param>
    /// <param name="batteryResistance">Internal resistance of the cells (Ω).</param>
    /// <param name="linkResistance">Resistance of links and leads up to the fault (Ω).</param>
    /// <returns>Current (A).</returns>
    internal static double BatteryQuasiSteady(double nominalVoltage, double batteryResistance, double linkResistance) =>
        0.95 * 1.05 * nominalVoltage / (batteryResistance + linkResistance);
}
