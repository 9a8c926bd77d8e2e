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
    private static readonly ImmutableArray<object> Mixed = [1, "two", 3, new Left("a"), new Right("b"), new Left("c"), null!];
    public static readonly int OfValues = Mixed.OfType<int>().Sum();
    public static readonly string OfText = string.Join(",", Mixed.OfType<string>());
    public static readonly string OfOwn = string.Join(",", Mixed.OfType<Left>().Select(left => left.Name));
    public static readonly int OfBase = Mixed.OfType<Side>().Count() + default(ImmutableArray<object>).OfType<int>().Count() + ImmutableArray<object>.Empty.OfType<Right>().Count();

    private abstract record Side(string Name);

    private sealed record Left(string Name) : Side(Name);

    private sealed record Right(string Name) : Side(Name);
}
