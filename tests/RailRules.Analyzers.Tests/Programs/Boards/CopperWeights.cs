using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.CopperWeights;

/// <summary>Thickness of copper by ounces, in a dictionary.</summary>
public static class P
{
    private static readonly Dictionary<double, Length> Copper = new() { [0.5] = 17.5.Micrometers(), [1] = 35.Micrometers(), [2] = 70.Micrometers() };
    public static readonly Trace Thin = new() { Thickness = Copper[0.5], Width = 1.Millimeters() };
    public static readonly ImmutableArray<double> Areas = [.. Copper.Values.Select(thickness => Math.Round(thickness.Millimeters * 3, 6))];
    public static readonly Length Total = Copper.Values.Aggregate(Length.Zero, (sum, next) => sum + next);
}
