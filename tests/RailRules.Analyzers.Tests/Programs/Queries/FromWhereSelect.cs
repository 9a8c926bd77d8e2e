using System.Collections.Immutable;

namespace Programs.Queries.FromWhereSelect;

/// <summary>The simplest queries.</summary>
public static class P
{
    private static readonly int[] N = [5, 2, 8];
    public static readonly ImmutableArray<int> Select = [.. from n in N select n * 2];
    public static readonly ImmutableArray<int> Where = [.. from n in N where n > 3 where n < 8 select n];
    public static readonly ImmutableArray<string> Product = [.. from a in N from b in "xy" where a != 2 select $"{a}{b}"];
    public static readonly ImmutableArray<object> Typed = [.. from int n in new object[] { 1, 2 } select (object)(n + 0.5)];
    public static readonly int Sum = (from n in N where n % 2 == 0 select n).Sum();
    public static readonly ImmutableArray<int> Identity = [.. from n in N select n];
}
