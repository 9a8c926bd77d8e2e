using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.StandardSeries;

/// <summary>Fuses of the Renard series from a table.</summary>
public static class P
{
    private static readonly double[] R10 = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];
    private static readonly ImmutableArray<double> Ratings = [.. from decade in new[] { 1, 10 } from step in R10 select decade * step];
    public static readonly ImmutableArray<Fuse> Series =
    [
        .. Ratings.Select(amperes => new Fuse
        {
            PartNumber = FormattableString.Invariant($"Sorrel{amperes:0.##}"),
            RatedCurrent = amperes.Amperes(),
            DcVoltageRating = amperes <= 10 ? 125.Volts() : 80.Volts(),
            MeltingIntegral = (0.5 * amperes * amperes).AmpereSquaredSeconds(),
        }),
    ];
    public static readonly int Count = Series.Length;
    public static readonly double Largest = Ratings.Max();
}
