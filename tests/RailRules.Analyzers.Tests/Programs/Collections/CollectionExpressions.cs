using System.Collections.Immutable;

namespace Programs.Collections.CollectionExpressions;

/// <summary>One syntax for every collection type.</summary>
public static class P
{
    private static readonly int[] More = [3, 4];
    public static readonly int[] Array = [1, 2, .. More];
    public static readonly List<int> List = [.. More, 5];
    public static readonly ImmutableArray<int> Immutable = [0, .. Array, .. List];
    public static readonly HashSet<int> Set = [1, 1, .. More];
    public static readonly IEnumerable<int> Sequence = [1, 2];
    public static readonly IReadOnlyList<string> ReadOnly = ["a", "b"];
    public static readonly IList<double> Interface = [1, 2.5];
    public static readonly ImmutableArray<ImmutableArray<int>> Nested = [[1], [], [2, 3]];
    public static readonly int[] Empty = [];
    public static readonly long[] Widened = [1, 'a', .. new byte[] { 7 }];
    public static readonly int Length = ((int[])[1, 2, 3]).Length;
    public static readonly ImmutableList<int> ImmutableList = [1, 2];
    public static readonly string Conditional = string.Join(',', true ? [1, 2] : (int[])[3]);
}
