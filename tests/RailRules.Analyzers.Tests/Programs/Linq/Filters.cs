using System.Collections.Immutable;

namespace Programs.Linq.Filters;

/// <summary>Where, take, skip and their kin.</summary>
public static class P
{
    private static readonly int[] N = [5, 3, 8, 1, 9, 2, 7];
    public static readonly ImmutableArray<int> Where = [.. N.Where(n => n > 4)];
    public static readonly ImmutableArray<int> WhereIndex = [.. N.Where((n, i) => i % 2 == 0)];
    public static readonly ImmutableArray<int> Take = [.. N.Take(3).Concat(N.TakeLast(2))];
    public static readonly ImmutableArray<int> TakeRange = [.. N.Take(2..^2)];
    public static readonly ImmutableArray<int> Skip = [.. N.Skip(4).Concat(N.SkipLast(5))];
    public static readonly ImmutableArray<int> While = [.. N.TakeWhile(n => n != 1).Concat(N.SkipWhile(n => n != 9))];
    public static readonly ImmutableArray<int> Distinct = [.. new[] { 3, 1, 3, 2, 1 }.Distinct()];
    public static readonly ImmutableArray<string> DistinctBy = [.. new[] { "aa", "b", "cc", "ddd" }.DistinctBy(s => s.Length)];
    public static readonly ImmutableArray<int> Chunks = [.. N.Chunk(3).Select(c => c.Sum())];
    public static readonly ImmutableArray<object> OfType = [.. new object[] { 1, "a", 2 }.OfType<int>().Cast<object>()];
}
