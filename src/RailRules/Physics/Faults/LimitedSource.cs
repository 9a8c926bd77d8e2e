namespace RailRules.Physics;

/// <summary>How a current comes down to the level of a source that has gone into current limit.</summary>
internal enum LimitApproach
{
    /// <summary>At once: the source absorbs what the inductance holds. The usual assumption of the rules.</summary>
    Step,

    /// <summary>The source lowers its voltage to level × loop resistance: exponentially, with the loop's time constant.</summary>
    Exponential,

    /// <summary>The source gives no voltage until the current has come down to the level.</summary>
    Freewheel,
}

/// <summary>Fault current of one source with a current limit into one loop. SI units. A limit never raises a current: where resistance keeps it below the level, nothing changes.</summary>
internal static class LimitedSource
{
    /// <summary>Stiff until the response time or the peak, whichever comes first, then the level.</summary>
    /// <param name="voltage">Driving voltage (V).</param>
    /// <param name="resistance">Loop resistance (Ω), above 0.</param>
    /// <param name="inductance">Loop inductance (H), 0 allowed.</param>
    /// <param name="level">Level of the limit (A).</param>
    /// <param name="response">Time until the limit acts (s).</param>
    /// <param name="peak">Current that it never exceeds before (A); infinite where none is stated.</param>
    /// <param name="approach">How the current comes down.</param>
    /// <param name="off">Time at which the source switches off (s); infinite where it does not.</param>
    internal static Waveform Into(
        double voltage,
        double resistance,
        double inductance,
        double level,
        double response,
        double peak = double.PositiveInfinity,
        LimitApproach approach = LimitApproach.Step,
        double off = double.PositiveInfinity)
    {
        var stiff = Waveform.Inductive(voltage, resistance, inductance);
        var reached = double.IsPositiveInfinity(peak) ? null : stiff.FirstReach(Math.Max(peak, level));
        if (stiff.FirstReach(level, response) is not { } acts)
            return Off(stiff, off);

        acts = Math.Min(acts, reached ?? acts);
        var current = acts <= 0 ? level : stiff.Pieces[0].At(acts);
        var tau = inductance / resistance;
        WavePiece[] after = approach switch
        {
            LimitApproach.Exponential => [Waveform.InductivePiece(acts, level * resistance, resistance, inductance, current)],
            LimitApproach.Freewheel when tau > 0 && current > level =>
                [Waveform.InductivePiece(acts, 0, resistance, inductance, current), new(acts + (tau * Math.Log(current / level)), level, [])],
            _ => [new(acts, level, [])],
        };
        return Off(acts <= 0 ? new(after) : stiff.Then(acts, after), off);
    }

    /// <summary>The level for the on-time, nothing for the off-time, over and over.</summary>
    /// <param name="level">Level (A).</param>
    /// <param name="onTime">How long it tries (s), above 0.</param>
    /// <param name="offTime">How long it rests (s).</param>
    /// <param name="cycles">How many cycles, 1 or more; nothing flows after them.</param>
    internal static Waveform Hiccup(double level, double onTime, double offTime, int cycles) =>
        new(Enumerable.Range(0, cycles).SelectMany(k => new WavePiece[]
        {
            new(k * (onTime + offTime), level, []),
            new((k * (onTime + offTime)) + onTime, 0, []),
        }));

    /// <summary>What a thermal element feels of a hiccup: level × √(on / (on + off)). Source: root mean square, any textbook.</summary>
    internal static double HiccupEffective(double level, double onTime, double offTime) => level * Math.Sqrt(onTime / (onTime + offTime));

    private static Waveform Off(Waveform current, double off) =>
        double.IsPositiveInfinity(off) ? current : current.Then(off, new WavePiece(off, 0, []));
}
