using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Curves;

/// <summary>A time-current curve from pairs of numbers.</summary>
public static class P
{
    private static readonly double[,] Points = { { 20, 3600, 36000 }, { 30, 10, 120 }, { 60, 0.4, 1.6 }, { 200, 0.02, 0.06 } };
    public static readonly ImmutableArray<CurvePoint> Curve = Read(Points);
    public static readonly Fuse Slow = new() { RatedCurrent = 15.Amperes(), Curve = Curve };
    public static readonly double MeltingAtSixty = Curve[2].MinimumMelting!.Value.Seconds;
    public static readonly JouleIntegral Integral = (200.0 * 200 * 0.02).AmpereSquaredSeconds();

    private static ImmutableArray<CurvePoint> Read(double[,] table)
    {
        var points = new CurvePoint[table.GetLength(0)];
        for (var row = 0; row < points.Length; row++)
            points[row] = new(table[row, 0].Amperes(), table[row, 1].Seconds(), table[row, 2].Seconds());
        return [.. points];
    }
}
