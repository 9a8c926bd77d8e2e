using System.Collections.Immutable;

namespace Programs.Classes.BinaryTree;

/// <summary>Insertion and traversal.</summary>
public static class P
{
    public static readonly ImmutableArray<int> Sorted = [.. Tree.Of(5, 2, 8, 1, 9, 3).InOrder()];
    public static readonly int Depth = Tree.Of(5, 2, 8, 1, 9, 3).Depth;
}

public sealed class Tree(int value)
{
    private Tree? left;
    private Tree? right;

    public int Depth => 1 + Math.Max(left?.Depth ?? 0, right?.Depth ?? 0);

    public static Tree Of(int first, params int[] rest)
    {
        var tree = new Tree(first);
        foreach (var value in rest)
            tree.Insert(value);
        return tree;
    }

    public IEnumerable<int> InOrder() => [.. left?.InOrder() ?? [], value, .. right?.InOrder() ?? []];

    private void Insert(int more)
    {
        ref var side = ref more < value ? ref left : ref right;
        if (side is null)
            side = new Tree(more);
        else
            side.Insert(more);
    }
}
