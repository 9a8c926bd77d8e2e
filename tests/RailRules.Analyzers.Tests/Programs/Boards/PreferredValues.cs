using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.PreferredValues;

/// <summary>Values of an E series by rounding.</summary>
public static class P
{
    public static readonly ImmutableArray<double> E12 = [.. Enumerable.Range(0, 12).Select(i => Math.Round(Math.Pow(10, i / 12.0), 1))];
    public static readonly double Nearest = Near(4.2);
    public static readonly double NearestBig = Near(68_300);

    private static double Near(double value)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return E12.Append(10).MinBy(step => Math.Abs(step * decade - value)) * decade;
    }
}
