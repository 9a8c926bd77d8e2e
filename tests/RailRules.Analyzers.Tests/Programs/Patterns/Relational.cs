using System.Collections.Immutable;

namespace Programs.Patterns.Relational;

/// <summary>Comparisons, and, or, not with their precedence.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Bands = [.. new[] { -300, -40, 0, 25, 85, 86, 200 }.Select(Band)];
    public static readonly ImmutableArray<bool> Tests = [.. "aZ5_é".Select(c => c is >= 'a' and <= 'z' or >= 'A' and <= 'Z' or '_')];
    public static readonly bool Not = 5 is not 4 and not 6;
    public static readonly bool NotOr = 5 is not (4 or 5);
    public static readonly bool Confusing = 5 is not 4 or 5;

    private static string Band(int celsius) => celsius switch
    {
        < -273 => "impossible",
        >= -40 and <= 85 and not 25 => "industrial",
        25 => "reference",
        < -40 or > 150 => "out",
        _ => "hot",
    };
}
