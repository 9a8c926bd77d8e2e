using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.Tolerances;

/// <summary>Corner values by all combinations of signs.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Corners = [.. from a in Signs from b in Signs from c in Signs select Math.Round(54 * (1 + 0.02 * a) / (0.1 * (1 + 0.1 * b) + 0.02 * (1 + 0.3 * c)), 6)];
    public static readonly Band<ElectricCurrent> Fault = Band.Of(Corners.Min().Amperes(), Corners.Max().Amperes());

    private static int[] Signs => [-1, 1];
}
