using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.DeratingByPolynomial;

/// <summary>A derating formula from a data sheet, tabulated.</summary>
public static class P
{
    public static readonly ImmutableArray<DeratingPoint> Derating = [.. Enumerable.Range(0, 9).Select(i => new DeratingPoint((i * 10 + 25).Celsius(), Math.Round(Factor(i * 10 + 25), 3)))];
    public static readonly double AtSixty = Factor(60);
    public static readonly Fuse Part = new() { PartNumber = "Yarrow8", RatedCurrent = 8.Amperes(), Derating = Derating };

    private static double Factor(double celsius)
    {
        var rise = celsius - 25;
        return 1 - 0.0042 * rise - 1.5e-5 * rise * rise;
    }
}
