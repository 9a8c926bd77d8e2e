namespace Programs.Throws.SwitchExpression;

/// <summary>A switch expression without a matching arm.</summary>
public static class P
{
    private static readonly int Five = 5;
    public static string Unmatched => Five switch { 1 => "one", 2 => "two" };
    public static int Nullable => ((int?)null) switch { > 0 => 1, < 0 => -1 };
}
