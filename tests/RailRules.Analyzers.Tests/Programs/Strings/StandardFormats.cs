using System.Collections.Immutable;
using System.Globalization;

namespace Programs.Strings.StandardFormats;

/// <summary>Standard numeric formats in the invariant culture.</summary>
public static class P
{
    private static readonly double D = 12345.6789;
    private static readonly int I = 42;
    private static readonly decimal M = 0.5m;
    public static readonly ImmutableArray<string> Double = [.. "C E E3 F F0 F3 G G4 N N0 P P1 R".Split(' ').Select(f => D.ToString(f, CultureInfo.InvariantCulture))];
    public static readonly ImmutableArray<string> Int = [.. "D D5 X X8 N0 F2 G E1 B".Split(' ').Select(f => I.ToString(f, CultureInfo.InvariantCulture))];
    public static readonly ImmutableArray<string> Decimal = [.. "F G N P0 C2".Split(' ').Select(f => M.ToString(f, CultureInfo.InvariantCulture))];
    public static readonly string Negative = (-D).ToString("N2", CultureInfo.InvariantCulture);
    public static readonly string NegativeZero = (-0.0).ToString(CultureInfo.InvariantCulture);
    public static readonly string Special = string.Join(' ', new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity }.Select(x => x.ToString(CultureInfo.InvariantCulture)));
}
