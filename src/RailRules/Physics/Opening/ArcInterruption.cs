namespace RailRules.Physics;

/// <summary>A fuse that melts in a loop of resistance and inductance and then holds a constant arc voltage until the current is gone.</summary>
/// <param name="MeltingTime">When it melts (s).</param>
/// <param name="LetThroughPeak">Largest current (A).</param>
/// <param name="ClearingTime">When the current is gone (s).</param>
/// <param name="ClearingIntegral">Joule integral let through in all (A²s).</param>
/// <param name="Current">The current over time.</param>
internal sealed record ArcInterruption(double MeltingTime, double LetThroughPeak, double ClearingTime, double ClearingIntegral, Waveform Current)
{
    /// <summary>
    /// Works the interruption out: adiabatic melting at the melting integral, then L di/dt = V − R i − V_arc. Source: closed form, any textbook.
    /// Null: it never melts, or its arc voltage does not exceed the source's, so that the current never ends.
    /// </summary>
    /// <param name="voltage">Source voltage (V).</param>
    /// <param name="resistance">Loop resistance (Ω), above 0.</param>
    /// <param name="inductance">Loop inductance (H), 0 allowed.</param>
    /// <param name="meltingIntegral">Melting I²t (A²s), above 0.</param>
    /// <param name="arcVoltage">Arc voltage (V).</param>
    internal static ArcInterruption? Of(double voltage, double resistance, double inductance, double meltingIntegral, double arcVoltage)
    {
        var rise = Waveform.Inductive(voltage, resistance, inductance);
        if (!(arcVoltage > voltage) || rise.TimeToIntegral(meltingIntegral) is not { } melts)
            return null;

        var peak = rise.At(melts);
        var cleared = melts + ArcingTime(voltage, resistance, inductance, peak, arcVoltage);
        var whole = rise.Then(
            melts,
            Waveform.InductivePiece(melts, voltage - arcVoltage, resistance, inductance, peak),
            new(cleared, 0, []));
        return new(melts, rise.LetThroughPeak(melts), cleared, whole.SquareIntegral(cleared), whole);
    }

    /// <summary>How long an arc of constant voltage lasts (s): L/R ln(1 + R i0 / (V_arc − V)). Source: closed form, any textbook.</summary>
    /// <param name="voltage">Source voltage (V), below the arc voltage.</param>
    /// <param name="resistance">Loop resistance (Ω), above 0.</param>
    /// <param name="inductance">Loop inductance (H).</param>
    /// <param name="current">Current at which the arc begins (A).</param>
    /// <param name="arcVoltage">Arc voltage (V).</param>
    internal static double ArcingTime(double voltage, double resistance, double inductance, double current, double arcVoltage) =>
        inductance / resistance * Math.Log(1 + (resistance * current / (arcVoltage - voltage)));
}
