using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.OrderedByCurrent;

/// <summary>Parts sorted by a quantity.</summary>
public static class P
{
    private static readonly ImmutableArray<Fuse> Mixed = [new() { RatedCurrent = 10.Amperes() }, new() { RatedCurrent = 500.Milliamperes() }, new() { RatedCurrent = 0.0063.Kiloamperes() }];
    public static readonly ImmutableArray<Fuse> Sorted = [.. Mixed.OrderBy(fuse => fuse.RatedCurrent!.Value)];
    public static readonly ImmutableArray<Fuse> Descending = [.. Mixed.OrderByDescending(fuse => fuse.RatedCurrent)];
    public static readonly Fuse Largest = Mixed.MaxBy(fuse => fuse.RatedCurrent!.Value.Amperes)!;
    public static readonly bool FirstIsSmallest = ReferenceEquals(Sorted[0], Mixed[1]);
}
