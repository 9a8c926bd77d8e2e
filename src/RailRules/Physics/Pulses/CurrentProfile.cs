using System.Collections.Immutable;

namespace RailRules.Physics;

/// <summary>A corner of a current that runs on straight lines.</summary>
/// <param name="Time">Time (s).</param>
/// <param name="Current">Current (A).</param>
internal readonly record struct CurrentCorner(double Time, double Current);

/// <summary>
/// A repeated current of straight lines: trains of pulses and bursts. Mean, r.m.s. and I²t are exact. A jump is two corners at one time.
/// </summary>
internal sealed class CurrentProfile
{
    private CurrentProfile(ImmutableArray<CurrentCorner> corners, double period)
    {
        Corners = corners;
        Period = period;
        for (var k = 1; k < corners.Length; k++)
        {
            var (a, b) = (corners[k - 1], corners[k]);
            IntegralPerPeriod += PulseIntegrals.Trapezoid(a.Current, b.Current, b.Time - a.Time);
            Mean += (b.Time - a.Time) * (a.Current + b.Current) / 2 / period;
        }

        Rms = Math.Sqrt(IntegralPerPeriod / period);
        Peak = corners.Max(corner => corner.Current);
    }

    /// <summary>The corners of one period, from 0 to its end.</summary>
    internal ImmutableArray<CurrentCorner> Corners { get; }

    /// <summary>Period (s).</summary>
    internal double Period { get; }

    /// <summary>Mean (A).</summary>
    internal double Mean { get; }

    /// <summary>Root mean square (A).</summary>
    internal double Rms { get; }

    /// <summary>Highest current (A).</summary>
    internal double Peak { get; }

    /// <summary>I²t of a period (A²s).</summary>
    internal double IntegralPerPeriod { get; }

    /// <summary>Trapezoids on a base current, in bursts or alone. Null: the pulses do not fit into the period, or a time is below 0.</summary>
    /// <param name="baseCurrent">Current between pulses (A).</param>
    /// <param name="peak">Current of the flat top (A).</param>
    /// <param name="rise">Rise time (s).</param>
    /// <param name="flat">Width of the flat top (s).</param>
    /// <param name="fall">Fall time (s).</param>
    /// <param name="period">Time from pulse to pulse, or from burst to burst (s).</param>
    /// <param name="count">Pulses in a burst.</param>
    /// <param name="spacing">Time from pulse to pulse within a burst (s).</param>
    internal static CurrentProfile? Trapezoids(
        double baseCurrent, double peak, double rise, double flat, double fall, double period, int count = 1, double spacing = 0)
    {
        var width = rise + flat + fall;
        var fits = ((count - 1) * spacing) + width <= period * (1 + 1e-12) && (count == 1 || spacing >= width * (1 - 1e-12));
        if (!(rise >= 0 && flat >= 0 && fall >= 0 && period > 0 && count > 0 && fits))
            return null;

        var corners = ImmutableArray.CreateBuilder<CurrentCorner>((count * 4) + 1);
        for (var k = 0; k < count; k++)
        {
            var start = k * spacing;
            corners.Add(new(start, baseCurrent));
            corners.Add(new(start + rise, peak));
            corners.Add(new(start + rise + flat, peak));
            corners.Add(new(start + width, baseCurrent));
        }

        corners.Add(new(Math.Max(period, corners[corners.Count - 1].Time), baseCurrent));
        return new(corners.ToImmutable(), period);
    }
}

/// <summary>
/// Square pulses drawn from a capacitor that is fed through a resistance, in the periodic steady state: what the feed, and a device in it, still sees.
/// Source: two exponentials matched over a period, closed form.
/// </summary>
/// <param name="Mean">Mean current of the feed (A).</param>
/// <param name="Rms">Root mean square current of the feed (A).</param>
/// <param name="Peak">Highest current of the feed (A).</param>
/// <param name="Lowest">Lowest current of the feed (A).</param>
internal sealed record FilteredPulses(double Mean, double Rms, double Peak, double Lowest)
{
    /// <summary>Lowest voltage at the load (V).</summary>
    internal double LowestVoltage(double sourceVoltage, double resistance) => sourceVoltage - (resistance * Peak);

    /// <summary>Highest voltage at the load (V).</summary>
    internal double HighestVoltage(double sourceVoltage, double resistance) => sourceVoltage - (resistance * Lowest);

    /// <summary>Works the feed's current out. Null: a time constant or a time is not above 0, or the pulse is longer than its period.</summary>
    /// <param name="resistance">Resistance between source and capacitor (Ω).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="baseCurrent">Current between pulses (A).</param>
    /// <param name="peak">Current of a pulse (A).</param>
    /// <param name="width">Width (s).</param>
    /// <param name="period">Period (s).</param>
    internal static FilteredPulses? Of(double resistance, double capacitance, double baseCurrent, double peak, double width, double period)
    {
        var constant = resistance * capacitance;
        if (!(constant > 0 && width > 0 && period >= width))
            return null;

        // What is missing to 1 in each exponential, so that a slow filter loses no digits.
        double a = -Exponentials.Minus1(-width / constant), b = -Exponentials.Minus1((width - period) / constant);
        var both = a + b - (a * b);
        var low = ((baseCurrent * b) + ((1 - b) * peak * a)) / both;
        var high = (peak * a) + ((1 - a) * low);
        var current = new Waveform(
        [
            new(0, low, [new(low - peak, -1 / constant)]),
            new(width, high, [new(high - baseCurrent, -1 / constant)]),
        ]);
        var mean = ((peak * width) + (baseCurrent * (period - width))) / period;
        return new(mean, Math.Sqrt(current.SquareIntegral(period) / period), Math.Max(high, low), Math.Min(high, low));
    }
}
