using System.Collections.Immutable;

namespace Programs.Linq.SetOperations;

/// <summary>Union, intersection and difference keep the first order.</summary>
public static class P
{
    private static readonly int[] A = [3, 1, 2, 3];
    private static readonly int[] B = [2, 5, 3];
    public static readonly ImmutableArray<int> Union = [.. A.Union(B)];
    public static readonly ImmutableArray<int> Intersect = [.. A.Intersect(B)];
    public static readonly ImmutableArray<int> Except = [.. A.Except(B)];
    public static readonly ImmutableArray<string> UnionBy = [.. new[] { "a", "bb" }.UnionBy(["c", "ddd"], s => s.Length)];
    public static readonly ImmutableArray<string> ExceptBy = [.. new[] { "a", "bb" }.ExceptBy([1], s => s.Length)];
    public static readonly bool Equal = A.SequenceEqual([3, 1, 2, 3]);
}
