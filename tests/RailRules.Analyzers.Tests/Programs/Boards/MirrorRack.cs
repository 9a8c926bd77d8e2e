using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.MirrorRack;

/// <summary>The right half of a rack as the left one renamed.</summary>
public static class P
{
    private static readonly Rail[] Left = [new() { Name = "L1", Loads = [new() { Power = 100.Watts() }] }, new() { Name = "L2" }];
    public static readonly ImmutableArray<Rail> Right = [.. Left.Select(rail => rail with { Name = 'R' + rail.Name[1..] })];
    public static readonly string Names = string.Join(',', Right.Select(rail => rail.Name));
    public static readonly bool SharedLoad = ReferenceEquals(Left[0].Loads[0], Right[0].Loads[0]);
    public static readonly bool OwnRail = Left[0] != Right[0];
}
