namespace RailRules.Physics;

/// <summary>
/// An inductance at its current that is interrupted into a clamp while the source stays in the loop: L di/dt = V − V_c − (R + R_c) i until i is 0.
/// Source: closed form, any textbook. All SI, time 0 is the interruption.
/// </summary>
internal sealed class TurnOff
{
    private readonly double inductance;
    private readonly double resistance;
    private readonly double opposing;
    private readonly double initial;
    private readonly Clamp clamp;

    private TurnOff(double inductance, double resistance, double opposing, double initial, Clamp clamp)
    {
        this.inductance = inductance;
        this.resistance = resistance;
        this.opposing = opposing;
        this.initial = initial;
        this.clamp = clamp;

        // L/R ln(1 + R i/V), with the logarithm taken by its series where the resistance hardly matters.
        var ratio = resistance * initial / opposing;
        DecayTime = inductance * initial / opposing * (ratio < 1e-5 ? 1 - (ratio / 2) + (ratio * ratio / 3) : Math.Log(1 + ratio) / ratio);
    }

    /// <summary>Time until the current is 0 (s).</summary>
    internal double DecayTime { get; }

    /// <summary>Highest voltage of the clamp (V), at the first instant.</summary>
    internal double PeakVoltage => clamp.VoltageAt(initial);

    /// <summary>Joule integral of the whole decay (A²s).</summary>
    internal double TotalIntegral => SquareIntegral(DecayTime);

    /// <summary>Energy that the clamp takes (J).</summary>
    internal double ClampEnergy => (clamp.Breakdown * Charge(DecayTime)) + (clamp.Resistance * TotalIntegral);

    /// <summary>Energy stored before (J): L I²/2.</summary>
    internal double StoredEnergy => inductance * initial * initial / 2;

    /// <summary>Sets the interruption up. Null: the clamp's voltage does not exceed the source's, so that the current does not stop, or there is no current or inductance.</summary>
    /// <param name="sourceVoltage">Source voltage (V); 0 for a plain freewheel path.</param>
    /// <param name="current">Current when interrupted (A).</param>
    /// <param name="inductance">Inductance (H).</param>
    /// <param name="resistance">Loop resistance without the clamp (Ω).</param>
    /// <param name="clamp">The clamp.</param>
    internal static TurnOff? Of(double sourceVoltage, double current, double inductance, double resistance, Clamp clamp) =>
        clamp.Breakdown > sourceVoltage && current > 0 && inductance > 0 && resistance >= 0 && clamp.Resistance >= 0
            ? new(inductance, resistance + clamp.Resistance, clamp.Breakdown - sourceVoltage, current, clamp)
            : null;

    /// <summary>Current at a time (A).</summary>
    internal double At(double time)
    {
        if (time >= DecayTime)
            return 0;

        var x = -resistance * time / inductance;
        return initial + (initial * Exponentials.Minus1(x)) - (opposing * time / inductance * Decrease(x));
    }

    /// <summary>Charge up to a time (As).</summary>
    internal double Charge(double time)
    {
        // From the loop's equation: L (i − i0) = −V t − R q; where the resistance hardly matters by the series, whose next term is below 1e-9.
        var t = Math.Min(time, DecayTime);
        var x = resistance * t / inductance;
        return x < 1e-4
            ? (initial * t) - (((resistance * initial) + opposing) * t * t / (2 * inductance) * (1 - (x / 3)))
            : ((inductance * (initial - At(t))) - (opposing * t)) / resistance;
    }

    /// <summary>Joule integral up to a time (A²s).</summary>
    internal double SquareIntegral(double time)
    {
        // Energy balance: L i0²/2 − L i²/2 = V q + R ∫i².
        var t = Math.Min(time, DecayTime);
        var now = At(t);
        if (resistance * t / inductance < 1e-3)
        {
            // Almost a straight line, where the balance would lose digits: Simpson's rule, relative error below 1e-12.
            var middle = At(t / 2);
            return ((initial * initial) + (4 * middle * middle) + (now * now)) * t / 6;
        }

        return ((inductance * ((initial * initial) - (now * now)) / 2) - (opposing * Charge(t))) / resistance;
    }

    /// <summary>(exp(x) − 1)/x.</summary>
    private static double Decrease(double x) => x == 0 ? 1 : Exponentials.Minus1(x) / x;
}

/// <summary>
/// What an opened switch meets when the inductance before it rings with the capacitance there. Source: series RLC with initial current, closed form, any textbook.
/// </summary>
internal static class OpeningSurge
{
    /// <summary>Upper bound without resistance (V): V + I √(L/C).</summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="current">Current when interrupted (A).</param>
    /// <param name="inductance">Inductance (H).</param>
    /// <param name="capacitance">Capacitance at the switch (F).</param>
    /// <returns>Positive infinity without capacitance.</returns>
    internal static double Bound(double sourceVoltage, double current, double inductance, double capacitance) =>
        current <= 0 || inductance <= 0 ? sourceVoltage : sourceVoltage + (current * Math.Sqrt(inductance / capacitance));

    /// <summary>
    /// Highest voltage of the capacitor and when the current is first 0. The capacitor starts at <paramref name="start"/>.
    /// Null: no current, inductance or capacitance.
    /// </summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="current">Current when interrupted (A).</param>
    /// <param name="inductance">Inductance (H).</param>
    /// <param name="resistance">Loop resistance (Ω).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="start">Voltage of the capacitor before (V), not above the source's.</param>
    internal static (double Voltage, double Time)? Into(
        double sourceVoltage, double current, double inductance, double resistance, double capacitance, double start)
    {
        if (!(current > 0 && inductance > 0 && capacitance > 0 && resistance >= 0 && start <= sourceVoltage))
            return null;

        // u = v − V: u'' + 2 α u' + ω² u = 0, u(0) = start − V, u'(0) = i/C; the current is 0 where u' is.
        double damping = resistance / (2 * inductance), square = 1 / (inductance * capacitance);
        double u = start - sourceVoltage, rate = current / capacitance;
        var difference = square - (damping * damping);
        if (Math.Abs(difference) < 1e-12 * square)
            difference = -1e-12 * square;

        if (difference > 0)
        {
            // u = exp(−α t)(u cos ω t + b sin ω t); u' = 0 at tan ω t = u'(0) / (ω u + α b).
            var omega = Math.Sqrt(difference);
            var b = (rate + (damping * u)) / omega;
            var time = Math.Atan2(rate, (omega * u) + (damping * b)) / omega;
            return (sourceVoltage + (Math.Exp(-damping * time) * ((u * Math.Cos(omega * time)) + (b * Math.Sin(omega * time)))), time);
        }

        // u = p exp(s t) + q exp(r t), r < s < 0; u' = 0 at exp((s − r) t) = −q r / (p s). Without such a time u only rises towards 0.
        var root = Math.Sqrt(-difference);
        double r = -damping - root, s = square / r;
        double p = (rate - (r * u)) / (s - r), q = u - p;
        var ratio = -q * r / (p * s);
        if (!(ratio > 1))
            return (sourceVoltage, double.PositiveInfinity);

        var at = Math.Log(ratio) / (s - r);
        return (sourceVoltage + (p * Math.Exp(s * at)) + (q * Math.Exp(r * at)), at);
    }
}
