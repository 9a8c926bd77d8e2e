using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.SeriesOfConverters;

/// <summary>Efficiencies multiplied down a chain.</summary>
public static class P
{
    private static readonly double[] Stages = [0.97, 0.95, 0.88];
    public static readonly double Overall = Stages.Aggregate((a, b) => a * b);
    public static readonly ImmutableArray<double> Needed = [.. Chain(100)];
    public static readonly Ratio AsRatio = Stages.Aggregate((a, b) => a * b).DecimalFractions();

    private static IEnumerable<double> Chain(double watts)
    {
        foreach (var stage in Stages.Reverse())
            yield return watts = Math.Round(watts / stage, 6);
    }
}
