using System.Collections.Immutable;

namespace Programs.Linq.Projections;

/// <summary>Select with index, select many, zip, pairs and ranges.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Indexed = [.. "abc".Select((c, i) => c + "" + i)];
    public static readonly ImmutableArray<int> Many = [.. new[] { 1, 2, 3 }.SelectMany(n => Enumerable.Repeat(n, n))];
    public static readonly ImmutableArray<string> ManyResult = [.. new[] { 1, 2 }.SelectMany(n => "ab", (n, c) => $"{n}{c}")];
    public static readonly ImmutableArray<(int, string)> Zip = [.. new[] { 1, 2, 3 }.Zip(["a", "b"])];
    public static readonly ImmutableArray<double> ZipResult = [.. new[] { 1, 2 }.Zip([0.5, 0.25], (a, b) => a * b)];
    public static readonly ImmutableArray<int> Concat = [.. Enumerable.Range(5, 3).Concat([1]).Append(2).Prepend(0)];
    public static readonly ImmutableArray<(int Index, char Item)> Index = [.. "xy".Index()];
    public static readonly ImmutableArray<int> Repeat = [.. Enumerable.Repeat(7, 2)];
    public static readonly ImmutableArray<int> Reversed = [.. Enumerable.Range(1, 3).Reverse()];
}
