using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.CurveLogInterpolation;

/// <summary>Times between the points of a curve on log-log paper.</summary>
public static class P
{
    private static readonly (double Amperes, double Seconds)[] Curve = [(15, 1000), (30, 10), (60, 0.5), (300, 0.01)];
    public static readonly ImmutableArray<double> Times = [.. new[] { 15.0, 20, 45, 100, 300 }.Select(i => Math.Round(At(i), 8))];
    public static readonly double Steepness = Math.Round(Slope(1), 9);

    private static double Slope(int i) => Math.Log(Curve[i].Seconds / Curve[i - 1].Seconds) / Math.Log(Curve[i].Amperes / Curve[i - 1].Amperes);

    private static double At(double amperes)
    {
        var i = 1;
        while (i < Curve.Length - 1 && amperes > Curve[i].Amperes)
            i++;
        return Curve[i - 1].Seconds * Math.Pow(amperes / Curve[i - 1].Amperes, Slope(i));
    }
}
