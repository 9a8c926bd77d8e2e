using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.RailTree;

/// <summary>A tree of rails two levels deep, built by a helper.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = 54.Volts() };
    private static readonly Rail Bus = Feed(Plant, "Bus", 200);
    private static readonly Rail Left = Feed(Bus, "Left", 100);
    private static readonly Rail Right = Feed(Bus, "Right", 100);
    public static readonly ImmutableArray<Rail> Leaves = [.. Shelf(Left, 3), .. Shelf(Right, 2)];
    public static readonly string Depths = string.Join(' ', Leaves.Select(Depth));
    public static readonly bool SharedBus = ReferenceEquals(((Rail)Leaves[0].From!).From, ((Rail)Leaves[^1].From!).From);

    private static IEnumerable<Rail> Shelf(Rail from, int slots) => Enumerable.Range(1, slots).Select(i => Feed(from, $"{from.Name} {i}", 20));

    private static Rail Feed(Source from, string name, double amperes) => new()
    {
        Name = name,
        From = from,
        Path = [new Fuse { RatedCurrent = amperes.Amperes() }],
    };

    private static int Depth(Rail rail) => rail.From is Rail above ? Depth(above) + 1 : 1;
}
