using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.GroupingFactors;

/// <summary>Factors for bundled wires by switch.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Factors = [.. new[] { 1, 3, 5, 9, 30, 60 }.Select(Factor)];
    public static readonly ImmutableArray<Wire> Bundle = [.. Enumerable.Range(1, 4).Select(i => new Wire { Name = $"core {i}", Grouping = 4, Ampacity = (20 * Factor(4)).Amperes() })];

    private static double Factor(int conductors) => conductors switch
    {
        < 1 => throw new ArgumentOutOfRangeException(nameof(conductors)),
        <= 3 => 1,
        <= 6 => 0.8,
        <= 9 => 0.7,
        <= 24 => 0.7 - 0.01 * (conductors - 9),
        <= 42 => 0.45,
        _ => 0.35,
    };
}
