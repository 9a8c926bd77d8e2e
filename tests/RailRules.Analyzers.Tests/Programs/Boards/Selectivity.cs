using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Selectivity;

/// <summary>Ratios of ratings up the tree.</summary>
public static class P
{
    private static readonly double[] Ratings = [200, 63, 20, 6.3];
    public static readonly ImmutableArray<double> Ratios = [.. Ratings.Zip(Ratings.Skip(1), (up, down) => Math.Round(up / down, 3))];
    public static readonly bool All = Ratings.Zip(Ratings.Skip(1)).All(pair => pair.First / pair.Second >= 1.6);
    public static readonly ImmutableArray<(double, double)> Pairs = [.. Ratings.Zip(Ratings[1..])];
}
