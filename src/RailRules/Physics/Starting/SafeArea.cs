using System.Collections.Immutable;

namespace RailRules.Physics;

/// <summary>A point of a transistor's safe operating area. SI units.</summary>
/// <param name="Voltage">Voltage across it (V).</param>
/// <param name="Current">Current it bears (A).</param>
/// <param name="Width">For this long (s).</param>
/// <param name="Case">At this case temperature (°C).</param>
internal readonly record struct SafeAreaPoint(double Voltage, double Current, double Width, double Case);

/// <summary>A current between bounds (A), and what decides it.</summary>
/// <param name="Low">What it surely bears.</param>
/// <param name="High">What it bears at most.</param>
/// <param name="Factor">The temperature factor in it.</param>
/// <param name="IsUnstable">Whether the voltage lies beyond the knee of thermal instability and no point is stated near the temperature.</param>
internal readonly record struct SafeAreaCurrent(double Low, double High, double Factor, bool IsUnstable);

/// <summary>
/// The safe operating area of a transistor, read between the points of its diagram: straight lines on logarithms of voltage and of width; between stated case temperatures
/// a straight line, beyond the hottest one (T_max − T)/(T_max − T_stated).
/// Source: linear heat balance, textbooks of power semiconductors (from memory); reading between lines: common practice, no source.
/// </summary>
/// <remarks>
/// Outside the diagram it gives bounds. For a shorter time it bears no less, and no more than by equal energy; for a longer time no more, and no less than by equal energy.
/// Below the lowest voltage it bears no less; above the highest no more.
/// </remarks>
internal sealed class SafeArea
{
    /// <summary>A width (s) from which a point counts as bearing for ever. Common practice, no source.</summary>
    internal const double ForEver = 10;

    /// <summary>A curve whose power falls by more than this share between two points is beyond the knee; less is read as straight. Common practice, no source.</summary>
    private const double FallsBy = 0.05;

    private readonly ImmutableArray<(double Case, ImmutableArray<(double Width, ImmutableArray<SafeAreaPoint> Curve)> Widths)> sets;

    private SafeArea(ImmutableArray<(double, ImmutableArray<(double, ImmutableArray<SafeAreaPoint>)>)> sets) => this.sets = sets;

    /// <summary>The diagram of some points; points that are not above 0 are left out. Null: none is left.</summary>
    internal static SafeArea? Of(IEnumerable<SafeAreaPoint> points)
    {
        var usable = points.Where(point => point is { Voltage: > 0, Current: > 0, Width: > 0 } && Usable(point.Voltage) && Usable(point.Current) && Usable(point.Width) && Usable(point.Case));
        ImmutableArray<(double, ImmutableArray<(double, ImmutableArray<SafeAreaPoint>)>)> sets =
        [
            .. usable.GroupBy(point => point.Case).OrderBy(set => set.Key).Select(set => (set.Key, (ImmutableArray<(double, ImmutableArray<SafeAreaPoint>)>)
            [
                .. set.GroupBy(point => point.Width).OrderBy(width => width.Key).Select(width => (width.Key, (ImmutableArray<SafeAreaPoint>)
                [
                    .. width.GroupBy(point => point.Voltage).Select(same => same.OrderBy(point => point.Current).First()).OrderBy(point => point.Voltage),
                ])),
            ])),
        ];
        return sets.IsEmpty ? null : new SafeArea(sets);
    }

    /// <summary>The voltages of the points (V), in order.</summary>
    internal IEnumerable<double> Voltages => sets.SelectMany(set => set.Widths).SelectMany(width => width.Curve).Select(point => point.Voltage).Distinct().OrderBy(v => v);

    /// <summary>The current that it bears at a voltage for a time at a case temperature.</summary>
    /// <param name="voltage">Voltage across it (V).</param>
    /// <param name="width">For this long (s); positive infinity: for ever.</param>
    /// <param name="temperature">Case temperature (°C).</param>
    /// <param name="limit">Highest junction temperature (°C); NaN: not known.</param>
    internal SafeAreaCurrent Current(double voltage, double width, double temperature, double limit)
    {
        for (var k = 0; k < sets.Length; k++)
        {
            if (temperature > sets[k].Case)
                continue;

            var (low, high) = At(sets[k].Widths, voltage, width);
            if (k == 0)
                return new(low, high, 1, false);

            // Between two stated temperatures.
            var share = (temperature - sets[k - 1].Case) / (sets[k].Case - sets[k - 1].Case);
            var (coldLow, coldHigh) = At(sets[k - 1].Widths, voltage, width);
            return new(coldLow + (share * (low - coldLow)), Between(coldHigh, high, share), 1, false);
        }

        var (hottest, widths) = sets[sets.Length - 1];
        var (least, most) = At(widths, voltage, width);
        var unstable = sets.Length == 1 && IsBeyondKnee(widths, voltage);
        if (double.IsNaN(limit))
            return new(0, most, double.NaN, unstable);

        var factor = limit > hottest ? Math.Max(0, (limit - temperature) / (limit - hottest)) : 0;
        return new(least * factor, factor > 0 ? most * factor : 0, factor, unstable);
    }

    private static double Between(double cold, double hot, double share) => double.IsInfinity(cold) || double.IsInfinity(hot) ? Math.Max(cold, hot) : cold + (share * (hot - cold));

    private static (double Low, double High) At(ImmutableArray<(double Width, ImmutableArray<SafeAreaPoint> Curve)> widths, double voltage, double width)
    {
        var first = widths[0];
        var last = widths[widths.Length - 1];
        if (width <= first.Width)
        {
            var (low, high) = On(first.Curve, voltage);
            return (low, width > 0 ? high * first.Width / width : double.PositiveInfinity);
        }

        if (width >= last.Width)
        {
            var (low, high) = On(last.Curve, voltage);
            return (last.Width >= ForEver ? low : low * last.Width / width, high);
        }

        var k = 1;
        while (widths[k].Width < width)
            k++;

        var share = Math.Log(width / widths[k - 1].Width) / Math.Log(widths[k].Width / widths[k - 1].Width);
        var (shortLow, shortHigh) = On(widths[k - 1].Curve, voltage);
        var (longLow, longHigh) = On(widths[k].Curve, voltage);
        return (Line(shortLow, longLow, share), Line(shortHigh, longHigh, share));
    }

    private static double Line(double a, double b, double share) =>
        a <= 0 || b <= 0 ? 0 : double.IsInfinity(a) || double.IsInfinity(b) ? double.PositiveInfinity : Math.Exp(Math.Log(a) + (share * Math.Log(b / a)));

    /// <summary>The current of one curve at a voltage.</summary>
    private static (double Low, double High) On(ImmutableArray<SafeAreaPoint> curve, double voltage)
    {
        if (voltage <= curve[0].Voltage)
            return (curve[0].Current, voltage < curve[0].Voltage ? double.PositiveInfinity : curve[0].Current);

        var last = curve[curve.Length - 1];
        if (voltage > last.Voltage * (1 + 1e-9))
            return (0, last.Current);

        var k = 1;
        while (k < curve.Length - 1 && curve[k].Voltage < voltage)
            k++;

        if (curve.Length == 1)
            return (last.Current, last.Current);

        var share = Math.Min(1, Math.Log(voltage / curve[k - 1].Voltage) / Math.Log(curve[k].Voltage / curve[k - 1].Voltage));
        var current = Line(curve[k - 1].Current, curve[k].Current, share);
        return (current, current);
    }

    /// <summary>Whether a voltage lies beyond where the power of any curve begins to fall.</summary>
    private static bool IsBeyondKnee(ImmutableArray<(double Width, ImmutableArray<SafeAreaPoint> Curve)> widths, double voltage)
    {
        foreach (var (_, curve) in widths)
        {
            for (var k = 1; k < curve.Length; k++)
            {
                if (curve[k - 1].Voltage < voltage && curve[k].Voltage * curve[k].Current < (1 - FallsBy) * curve[k - 1].Voltage * curve[k - 1].Current)
                    return true;
            }
        }

        return false;
    }

    private static bool Usable(double value) => !double.IsNaN(value) && !double.IsInfinity(value);
}
