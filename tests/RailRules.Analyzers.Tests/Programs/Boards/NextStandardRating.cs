using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.NextStandardRating;

/// <summary>The next standard rating above a need.</summary>
public static class P
{
    private static readonly ImmutableArray<double> Standard = [1, 2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200];
    public static readonly double ForNine = Next(9);
    public static readonly double Exactly = Next(16);
    public static readonly double Derated = Next(12 / (0.75 * 0.86));
    public static readonly ImmutableArray<double> Table = [.. new[] { 0.5, 3, 17.2, 64, 199 }.Select(Next)];

    private static double Next(double amperes) => Standard.First(rating => rating >= amperes);
}
