using System.Collections.Immutable;

namespace Programs.Nullables.Aggregates;

/// <summary>Sums and means over absent numbers.</summary>
public static class P
{
    private static readonly int?[] Numbers = [1, null, 3];
    private static readonly double?[] Empty = [null, null];
    public static readonly int? Sum = Numbers.Sum();
    public static readonly double? Average = Numbers.Average();
    public static readonly int? Max = Numbers.Max();
    public static readonly double? NoAverage = Empty.Average();
    public static readonly double? NoMin = Empty.Min();
    public static readonly double? EmptySum = Empty.Sum();
    public static readonly ImmutableArray<int> Present = [.. Numbers.Where(n => n.HasValue).Select(n => n!.Value)];
    public static readonly ImmutableArray<int> OfType = [.. Numbers.OfType<int>()];
    public static readonly ImmutableArray<int?> Sorted = [.. Numbers.OrderBy(n => n)];
    public static readonly ImmutableArray<int?> Doubled = [.. Numbers.Select(n => n * 2)];
}
