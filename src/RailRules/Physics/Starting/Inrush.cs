using System.Numerics;

namespace RailRules.Physics;

/// <summary>
/// Inrush into capacitance through plain paths: a resistance, a resistance and an inductance, a resistance that is bypassed.
/// Source: series RC and RLC circuits, closed forms, any textbook. Null: no such path (nothing limits the current, or a value is not above 0).
/// </summary>
internal static class Inrush
{
    /// <summary>
    /// Joule integral of the whole charge of a capacitor: C ΔV²/(2 R). It holds for RC and RLC alike as long as current may swing back, since all that is lost is lost in R.
    /// </summary>
    /// <param name="step">Source voltage less the capacitor's voltage before (V).</param>
    /// <param name="resistance">Loop resistance (Ω).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <returns>A²s; positive infinity without resistance.</returns>
    internal static double Integral(double step, double resistance, double capacitance) => capacitance * step * step / (2 * resistance);

    /// <summary>Through a resistance: i = ΔV/R exp(−t/RC).</summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="resistance">Loop resistance (Ω).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="initialVoltage">Voltage of the capacitor before (V).</param>
    internal static Charging? Resistive(double sourceVoltage, double resistance, double capacitance, double initialVoltage = 0) =>
        resistance > 0 && capacitance > 0
            ? new(Waveform.Capacitive(sourceVoltage - initialVoltage, resistance, 0, capacitance), capacitance, initialVoltage)
            : null;

    /// <summary>
    /// Through a resistance and an inductance: under-, critically or overdamped. One way: a blocking element ends the current at its first zero, which
    /// leaves the capacitor above the source.
    /// </summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="resistance">Loop resistance (Ω).</param>
    /// <param name="inductance">Loop inductance (H).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="oneWay">Whether current cannot swing back.</param>
    /// <param name="initialVoltage">Voltage of the capacitor before (V).</param>
    internal static Charging? Resonant(
        double sourceVoltage, double resistance, double inductance, double capacitance, bool oneWay = false, double initialVoltage = 0)
    {
        if (!(resistance > 0 && capacitance > 0 && inductance >= 0))
            return null;

        var current = Waveform.Capacitive(sourceVoltage - initialVoltage, resistance, inductance, capacitance);
        if (oneWay && HalfPeriod(resistance, inductance, capacitance) is { } half)
            current = current.Then(half, new WavePiece(half, 0, []));

        return new(current, capacitance, initialVoltage);
    }

    /// <summary>Highest voltage of the capacitor (V): V + ΔV exp(−α π/ω) where the path rings, else the source voltage.</summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="resistance">Loop resistance (Ω).</param>
    /// <param name="inductance">Loop inductance (H).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="initialVoltage">Voltage of the capacitor before (V).</param>
    internal static double PeakVoltage(double sourceVoltage, double resistance, double inductance, double capacitance, double initialVoltage = 0) =>
        HalfPeriod(resistance, inductance, capacitance) is { } half
            ? sourceVoltage + ((sourceVoltage - initialVoltage) * Math.Exp(-resistance / (2 * inductance) * half))
            : Math.Max(sourceVoltage, initialVoltage);

    /// <summary>Time of the first zero of the current (s), π/ω; null where the path does not ring.</summary>
    /// <param name="resistance">Loop resistance (Ω).</param>
    /// <param name="inductance">Loop inductance (H).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    internal static double? HalfPeriod(double resistance, double inductance, double capacitance)
    {
        if (!(inductance > 0))
            return null;

        var damping = resistance / (2 * inductance);
        var square = (1 / (inductance * capacitance)) - (damping * damping);
        return square > 1e-12 * damping * damping ? Math.PI / Math.Sqrt(square) : null;
    }

    /// <summary>Through a precharge resistance that is bypassed after a time.</summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="prechargeResistance">Loop resistance before (Ω).</param>
    /// <param name="bypassedResistance">Loop resistance after (Ω).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="bypassTime">When the bypass closes (s).</param>
    internal static Charging? Stepped(double sourceVoltage, double prechargeResistance, double bypassedResistance, double capacitance, double bypassTime)
    {
        if (!(prechargeResistance > 0 && bypassedResistance > 0 && capacitance > 0))
            return null;

        var left = sourceVoltage * Math.Exp(-bypassTime / (prechargeResistance * capacitance));
        WavePiece Discharge(double start, double step, double resistance) =>
            new(start, step / resistance, [new(step / resistance, new Complex(-1 / (resistance * capacitance), 0))]);
        return new(
            new([Discharge(0, sourceVoltage, prechargeResistance), Discharge(bypassTime, left, bypassedResistance)]), capacitance, 0);
    }
}
