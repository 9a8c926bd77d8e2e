using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.WireGauges;

/// <summary>Sections of American wire gauges by formula.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Sections = [.. new[] { 4, 10, 14, 18, 24 }.Select(gauge => Math.Round(Section(gauge).SquareMillimeters, 3))];
    public static readonly ImmutableArray<Wire> Wires = [.. new[] { 10, 14 }.Select(gauge => new Wire { Name = $"AWG {gauge}", Section = Section(gauge), Length = 2.Meters() })];
    public static readonly double Diameter = Math.Round(DiameterOf(0), 4);

    private static double DiameterOf(int gauge) => 0.127 * Math.Pow(92, (36 - gauge) / 39.0);

    private static Area Section(int gauge)
    {
        var diameter = DiameterOf(gauge);
        return Area.FromSquareMillimeters(Math.PI / 4 * diameter * diameter);
    }
}
