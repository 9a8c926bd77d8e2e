using System.Collections.Immutable;

namespace Programs.Linq.ImmutableArrayLinq;

/// <summary>The methods that immutable arrays bring themselves.</summary>
public static class P
{
    private static readonly ImmutableArray<int> N = [3, 1, 2];
    public static readonly int First = N.First() + N.Last(n => n > 1);
    public static readonly bool Any = N.Any(n => n == 2) && N.All(n => n > 0);
    public static readonly ImmutableArray<int> Selected = [.. N.Select(n => n * 2).Where(n => n > 2)];
    public static readonly int Sum = N.Sum() + N.Max();
    public static readonly int Aggregate = N.Aggregate(0, (a, b) => a * 10 + b);
    public static readonly bool Equal = N.SequenceEqual(new[] { 3, 1, 2 });
    public static readonly ImmutableArray<int> Sorted = N.Sort();
    public static readonly ImmutableArray<int> Ordered = [.. N.OrderByDescending(n => n)];
    public static readonly int Element = N.ElementAt(1) + N.Single(n => n == 2);
    public static readonly Dictionary<int, int> Map = N.ToDictionary(n => n, n => n * n);
}
