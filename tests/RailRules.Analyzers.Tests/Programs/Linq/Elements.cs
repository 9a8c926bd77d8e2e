using System.Collections.Immutable;

namespace Programs.Linq.Elements;

/// <summary>First, last, single, element at, defaults.</summary>
public static class P
{
    private static readonly int[] N = [4, 8, 15];
    public static readonly int First = N.First() + N.First(n => n > 5);
    public static readonly int FirstOrDefault = N.FirstOrDefault(n => n > 50) + N.FirstOrDefault(n => n > 50, -1);
    public static readonly string? NoText = new[] { "a" }.FirstOrDefault(t => t.Length > 2);
    public static readonly int Last = N.Last() * 100 + N.Last(n => n < 10);
    public static readonly int Single = N.Single(n => n == 8);
    public static readonly int? SingleOrDefault = N.Cast<int?>().SingleOrDefault(n => n == 9);
    public static readonly int ElementAt = N.ElementAt(1) + N.ElementAt(^1);
    public static readonly int ElementAtOrDefault = N.ElementAtOrDefault(7);
    public static readonly ImmutableArray<int> DefaultIfEmpty = [.. Enumerable.Empty<int>().DefaultIfEmpty(5), .. N.DefaultIfEmpty(5)];
    public static readonly bool Contains = N.Contains(15) && !N.Contains(16);
}
