using System.Collections.Immutable;
using System.Globalization;

namespace Programs.Strings.ShortestRoundTrip;

/// <summary>Doubles and floats print their shortest exact text.</summary>
public static class P
{
    private static readonly double[] Numbers = [0.1, 1e21, 1e-5, 123456789012345680, 5e-324, 100, 1.0 / 3, 1e16, 0.0001];
    public static readonly ImmutableArray<string> Texts = [.. Numbers.Select(n => n.ToString(CultureInfo.InvariantCulture))];
    public static readonly ImmutableArray<string> Interpolated = [.. Numbers.Select(n => $"{n}")];
    public static readonly string Float = (1f / 3).ToString(CultureInfo.InvariantCulture);
    public static readonly string Concatenated = "" + 0.1 + 1e21 + 2f / 3 + 1.0m;
    public static readonly bool RoundTrip = Numbers.All(n => double.Parse(n.ToString("R", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) == n);
}
