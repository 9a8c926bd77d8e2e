using System.Collections.Immutable;

namespace RailRules.Physics;

/// <summary>What bounds the current of a start: i = min(Current, Power / (V − v), (V − v) / Resistance). Unlimited: positive infinity; no resistance: 0.</summary>
/// <param name="Current">Current limit (A).</param>
/// <param name="Power">Limit of the power in the switch (W).</param>
/// <param name="Resistance">Resistance of switch and path (Ω).</param>
internal readonly record struct StartLimits(double Current, double Power = double.PositiveInfinity, double Resistance = 0);

/// <summary>A load that draws while the capacitor is charged: Current + Conductance × v + Power / v, from a voltage on.</summary>
/// <param name="Current">Constant current (A).</param>
/// <param name="Conductance">Conductance (S).</param>
/// <param name="Power">Constant power (W).</param>
/// <param name="From">Voltage from which it draws (V); positive infinity: not during the start.</param>
internal readonly record struct StartLoad(double Current = 0, double Conductance = 0, double Power = 0, double From = 0);

/// <summary>Where a start stands.</summary>
/// <param name="Time">Time (s).</param>
/// <param name="Integral">Joule integral of the switch's current so far (A²s).</param>
/// <param name="Energy">Energy dissipated between source and capacitor so far, in the switch and the resistance (J).</param>
internal readonly record struct StartState(double Time, double Integral, double Energy);

/// <summary>
/// Start of an electronic fuse or hot-swap switch, or of a limited source, into capacitance with loads on: at constant current, limited power, through its
/// resistance, whichever gives least. Time, I²t and energy are integrals over the capacitor's voltage: dt = C dv / (i(v) − i_load(v)).
/// Source: charge balance of the capacitor; adaptive Gauss-Kronrod quadrature, relative error below 1e-9.
/// </summary>
internal sealed class SwitchedStart
{
    private readonly double source;
    private readonly double capacitance;
    private readonly StartLimits limits;
    private readonly ImmutableArray<StartLoad> loads;
    private readonly double initial;
    private readonly ImmutableArray<double> knees;

    private SwitchedStart(double source, double capacitance, StartLimits limits, ImmutableArray<StartLoad> loads, double initial)
    {
        this.source = source;
        this.capacitance = capacitance;
        this.limits = limits;
        this.loads = loads;
        this.initial = initial;
        var gaps = new[] { limits.Power / limits.Current, limits.Current * limits.Resistance, Math.Sqrt(limits.Power * limits.Resistance) };
        knees =
        [
            .. gaps.Select(gap => source - gap).Concat(loads.Select(load => load.From))
                .Where(v => v > initial && v < source).Distinct().OrderBy(v => v),
        ];
    }

    /// <summary>The largest current of the switch (A), at the beginning or where the power limit ends.</summary>
    internal double PeakCurrent => Boundaries(source).Select(CurrentAt).Where(i => !double.IsInfinity(i)).DefaultIfEmpty(0).Max();

    /// <summary>The largest power between source and capacitor (W).</summary>
    internal double PeakPower => Boundaries(source).Select(v => v < source ? CurrentAt(v) * (source - v) : 0).Max();

    /// <summary>Sets a start up. Null: no capacitance, no limit at all, or nothing to charge.</summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="limits">What bounds the current.</param>
    /// <param name="loads">Loads that draw meanwhile.</param>
    /// <param name="initialVoltage">Voltage of the capacitor before (V).</param>
    internal static SwitchedStart? Of(double sourceVoltage, double capacitance, StartLimits limits, IEnumerable<StartLoad>? loads = null, double initialVoltage = 0)
    {
        var bounded = !double.IsInfinity(limits.Current) || !double.IsInfinity(limits.Power) || limits.Resistance > 0;
        return capacitance > 0 && sourceVoltage > initialVoltage && limits.Current > 0 && limits.Power > 0 && limits.Resistance >= 0 && bounded
            ? new(sourceVoltage, capacitance, limits, [.. loads ?? []], initialVoltage)
            : null;
    }

    /// <summary>The switch's current with the capacitor at a voltage (A).</summary>
    internal double CurrentAt(double voltage)
    {
        var gap = Math.Max(0, source - voltage);
        return Math.Min(limits.Current, Math.Min(limits.Power / gap, limits.Resistance > 0 ? gap / limits.Resistance : double.PositiveInfinity));
    }

    /// <summary>What the loads draw with the capacitor at a voltage (A).</summary>
    internal double LoadAt(double voltage) =>
        loads.Sum(load => voltage >= load.From ? load.Current + (load.Conductance * voltage) + (load.Power > 0 ? load.Power / voltage : 0) : 0);

    /// <summary>
    /// The first voltage (V) up to <paramref name="target"/> at which the loads take all that the switch gives, so that the start stalls. Null: none.
    /// </summary>
    internal double? Stall(double target)
    {
        var ends = Boundaries(Math.Min(target, source));
        for (var k = 0; k + 1 < ends.Length; k++)
        {
            double low = ends[k], high = ends[k + 1];
            foreach (var v in new[] { low, Dip(low, high), high })
            {
                if (Excess(v, low, high) <= 0)
                    return v;
            }
        }

        return null;
    }

    /// <summary>Time, I²t and energy until the capacitor has come to a voltage (V). Null: never, because the loads take all that the switch gives, or because it lies beyond the source.</summary>
    internal StartState? Until(double target)
    {
        if (target > source || Stall(target) is not null)
            return null;

        double time = 0, integral = 0, energy = 0;
        var ends = Boundaries(target);
        for (var k = 0; k + 1 < ends.Length; k++)
        {
            // The logarithm of what is left to charge: the last stretch through a resistance becomes a straight line in it.
            double low = ends[k], high = ends[k + 1];
            double from = Math.Log(Math.Max(source - high, 1e-15 * source)), to = Math.Log(source - low);
            var pieces = Math.Max(1, (int)Math.Ceiling((to - from) / 1.5));
            for (var n = 0; n < pieces; n++)
                Integrate(from + ((to - from) * n / pieces), from + ((to - from) * (n + 1) / pieces), low, high, 0);
        }

        return double.IsInfinity(time) || double.IsNaN(time) ? null : new(time, integral, energy);

        void Integrate(double a, double b, double low, double high, int depth)
        {
            var (fine, error) = Rule(a, b, low, high);
            if (depth < 40 && error > 1e-10 * Math.Abs(fine.Time))
            {
                Integrate(a, (a + b) / 2, low, high, depth + 1);
                Integrate((a + b) / 2, b, low, high, depth + 1);
                return;
            }

            time += fine.Time;
            integral += fine.Integral;
            energy += fine.Energy;
        }
    }

    /// <summary>Where the start stands at a time (s), and the capacitor's voltage then (V).</summary>
    internal (StartState State, double Voltage) At(double time)
    {
        // Bisection on the logarithm of what is left, down to where a double cannot tell it from nothing.
        double low = Math.Log(1e-15 * source), high = Math.Log(source - initial);
        var best = (State: new StartState(0, 0, 0), Voltage: initial);
        for (var n = 0; n < 60; n++)
        {
            var middle = (low + high) / 2;
            var voltage = source - Math.Exp(middle);
            if (Until(voltage) is { } state && state.Time <= time)
                (best, high) = ((state, voltage), middle);
            else
                low = middle;
        }

        return best;
    }

    /// <summary>When the I²t reaches a value (s), with the largest current until then (A). Null: never.</summary>
    internal (double Time, double Peak)? TimeToIntegral(double integral)
    {
        double low = Math.Log(1e-15 * source), high = Math.Log(source - initial);
        double? time = null;
        var reached = initial;
        for (var n = 0; n < 60; n++)
        {
            var middle = (low + high) / 2;
            var voltage = source - Math.Exp(middle);
            if (Until(voltage) is { } state && state.Integral < integral)
                high = middle;
            else
                (time, reached, low) = (Until(voltage)?.Time ?? time, voltage, middle);
        }

        return time is { } at ? (at, Boundaries(reached).Select(CurrentAt).Max()) : null;
    }

    private ImmutableArray<double> Boundaries(double target) => [initial, .. knees.Where(v => v < target), target];

    /// <summary>What is left for the capacitor just inside a stretch between knees (A).</summary>
    private double Excess(double voltage, double low, double high)
    {
        var inside = voltage <= low ? low + (1e-12 * (high - low)) : voltage >= high ? high - (1e-12 * (high - low)) : voltage;
        return CurrentAt(inside) - LoadAt(inside);
    }

    /// <summary>
    /// Where the excess is least inside a stretch. It is concave, and so least at an end, except under a power limit with a constant-power load:
    /// P/(V − v) − p/v turns from concave to convex once, at v = V r/(1 + r), r = (p/P)^(1/3), and beyond that its slope rises.
    /// </summary>
    private double Dip(double low, double high)
    {
        var middle = (low + high) / 2;
        var power = loads.Sum(load => middle >= load.From ? load.Power : 0);
        var conductance = loads.Sum(load => middle >= load.From ? load.Conductance : 0);
        if (double.IsInfinity(limits.Power) || CurrentAt(middle) < limits.Power / (source - middle))
            return low;

        double Slope(double v) => (limits.Power / ((source - v) * (source - v))) - conductance + (power > 0 ? power / (v * v) : 0);
        var ratio = Math.Pow(power / limits.Power, 1.0 / 3);
        double a = Math.Max(low, source * ratio / (1 + ratio)), b = high;
        if (a >= high || Slope(a) >= 0)
            return a >= high ? high : a;

        for (var n = 0; n < 100; n++)
        {
            var v = (a + b) / 2;
            (a, b) = Slope(v) < 0 ? (v, b) : (a, v);
        }

        return b;
    }

    private (StartState Sum, double Error) Rule(double a, double b, double low, double high)
    {
        double centre = (a + b) / 2, half = (b - a) / 2;
        double time = 0, integral = 0, energy = 0, coarse = 0;
        for (var k = 0; k < Nodes.Length; k++)
        {
            var (x, kronrod, gauss) = Nodes[k];
            foreach (var sign in x == 0 ? One : Both)
            {
                var gap = Math.Exp(centre + (sign * half * x));
                var v = Math.Min(Math.Max(source - gap, low + (1e-13 * (high - low))), high);
                var current = CurrentOfGap(gap);
                var rate = capacitance * gap * half / (current - LoadAt(v));
                time += kronrod * rate;
                coarse += gauss * rate;
                integral += kronrod * rate * current * current;
                energy += kronrod * rate * current * gap;
            }
        }

        return (new(time, integral, energy), Math.Abs(time - coarse));
    }

    private double CurrentOfGap(double gap) =>
        Math.Min(limits.Current, Math.Min(limits.Power / gap, limits.Resistance > 0 ? gap / limits.Resistance : double.PositiveInfinity));

    private static readonly double[] One = [1];

    private static readonly double[] Both = [1, -1];

    /// <summary>Abscissae with the weights of Kronrod (15) and Gauss (7). Source: QUADPACK, dqk15 (from memory; the tests check that they integrate polynomials).</summary>
    internal static readonly (double X, double Kronrod, double Gauss)[] Nodes =
    [
        (0.991455371120812639206854697526329, 0.022935322010529224963732008058970, 0),
        (0.949107912342758524526189684047851, 0.063092092629978553290700663189204, 0.129484966168869693270611432679082),
        (0.864864423359769072789712788640926, 0.104790010322250183839876322541518, 0),
        (0.741531185599394439863864773280788, 0.140653259715525918745189590510238, 0.279705391489276667901467771423780),
        (0.586087235467691130294144691693193, 0.169004726639267902826583426598550, 0),
        (0.405845151377397166906606412076961, 0.190350578064785409913256402421014, 0.381830050505118944950369775488975),
        (0.207784955007898467600689403773245, 0.204432940075298892414161999234649, 0),
        (0, 0.209482141084727828012999174891714, 0.417959183673469387755102040816327),
    ];
}
