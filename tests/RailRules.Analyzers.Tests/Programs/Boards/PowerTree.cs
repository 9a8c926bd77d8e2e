using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.PowerTree;

/// <summary>Total power of a tree of records, by recursion.</summary>
public static class P
{
    private static readonly Block Tree = new("plant", 0, [new("cpu", 120), new("io", 15, [new("nic", 22.5), new("usb", 4.5)]), new("fan", 18)]);
    public static readonly double Total = Tree.Total;
    public static readonly ImmutableArray<Load> Loads = [.. Tree.Leaves().Select(block => new Load { Name = block.Name, Power = block.Watts.Watts() })];
    public static readonly int Depth = Tree.Depth;
}

public sealed record Block(string Name, double Watts, params Block[] Below)
{
    public double Total => Watts + Below.Sum(block => block.Total);

    public int Depth => Below.Length == 0 ? 1 : 1 + Below.Max(block => block.Depth);

    public IEnumerable<Block> Leaves() => Below.Length == 0 ? [this] : Below.SelectMany(block => block.Leaves());
}
