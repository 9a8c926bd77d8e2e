using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.LoadDiversity;

/// <summary>Simultaneous demand of many loads.</summary>
public static class P
{
    public static readonly double All = Demand(1, 10, 25, 40);
    public static readonly ImmutableArray<double> Factors = [.. Enumerable.Range(1, 6).Select(Factor)];
    public static readonly Load Group = new() { Name = "lamps", Current = Demand(2, 2, 2, 2, 2).Amperes() };

    private static double Demand(params double[] amperes) => amperes.Sum() * Factor(amperes.Length);

    private static double Factor(int count) => count is <= 1 ? 1 : Math.Max(0.6, 1.1 - 0.1 * count);
}
