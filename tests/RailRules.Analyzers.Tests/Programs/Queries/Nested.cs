using System.Collections.Immutable;

namespace Programs.Queries.Nested;

/// <summary>Queries inside queries.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Triples = [.. from a in Enumerable.Range(1, 20) from b in Enumerable.Range(a, 20 - a) let c = Math.Sqrt(a * a + b * b) where c == Math.Floor(c) && c <= 20 select $"{a},{b},{c}"];
    public static readonly ImmutableArray<int> Inner = [.. from n in new[] { 1, 2, 3 } select (from m in Enumerable.Range(1, n) select m * m).Sum()];
    public static readonly int Subquery = (from n in new[] { 3, 1, 2 } where n == (from m in new[] { 3, 1, 2 } select m).Max() select n).Single();
}
