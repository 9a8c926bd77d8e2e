using RailRules;
using UnitsNet;

namespace Programs.Boards.SafeArea;

/// <summary>Points of a safe operating area by powers.</summary>
public static class P
{
    public static readonly SafeOperatingArea Area = new() { Points = [.. from width in new[] { 0.1, 1, 10 } from volts in new[] { 10, 60 } select Point(volts, width)], Guaranteed = true };
    public static readonly int Count = Area.Points.Length;
    public static readonly double Least = Area.Points.Min(point => point.Current.Amperes);

    private static SafeOperatingPoint Point(int volts, double milliseconds) =>
        new(volts.Volts(), Math.Round(300 / volts / Math.Sqrt(milliseconds), 3).Amperes(), milliseconds.Milliseconds(), volts > 50 ? 85.Celsius() : null);
}
