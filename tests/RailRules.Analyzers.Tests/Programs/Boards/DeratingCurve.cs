using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.DeratingCurve;

/// <summary>Linear interpolation in a derating table.</summary>
public static class P
{
    private static readonly (double Celsius, double Factor)[] Curve = [(25, 1), (55, 0.86), (85, 0.71), (105, 0.5)];
    public static readonly ImmutableArray<double> Factors = [.. new[] { -40, 25, 40, 55, 70, 100, 120 }.Select(t => Math.Round(At(t), 4))];
    public static readonly ImmutableArray<DeratingPoint> Points = [.. Curve.Select(point => new DeratingPoint(point.Celsius.Celsius(), point.Factor))];
    public static readonly Fuse Derated = new() { RatedCurrent = 20.Amperes(), Derating = Points };
    public static readonly ElectricCurrent Allowed = 20.Amperes() * 0.75 * At(50);

    private static double At(double celsius)
    {
        if (celsius <= Curve[0].Celsius)
            return Curve[0].Factor;
        for (var i = 1; i < Curve.Length; i++)
        {
            var (t0, f0) = Curve[i - 1];
            var (t1, f1) = Curve[i];
            if (celsius <= t1)
                return f0 + (f1 - f0) * (celsius - t0) / (t1 - t0);
        }

        return Curve[^1].Factor;
    }
}
