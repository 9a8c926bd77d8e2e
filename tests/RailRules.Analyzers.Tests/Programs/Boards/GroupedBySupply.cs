using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.GroupedBySupply;

/// <summary>Rails grouped by what feeds them.</summary>
public static class P
{
    private static readonly Supply A = new() { Voltage = 54.Volts() };
    private static readonly Supply B = new() { Voltage = 12.Volts() };
    private static readonly Rail[] Rails = [new() { Name = "r1", From = A }, new() { Name = "r2", From = B }, new() { Name = "r3", From = A }];
    public static readonly ImmutableArray<string> Groups = [.. Rails.GroupBy(rail => rail.From!.Name).Select(group => $"{group.Key}: {string.Join(',', group)}")];
    public static readonly ILookup<Source?, Rail> ByReference = Rails.ToLookup(rail => rail.From);
    public static readonly int OfA = ByReference[A].Count();
}
