using System.Collections.Immutable;

namespace Programs.Iterators.Recursive;

/// <summary>Recursive iterators over trees.</summary>
public static class P
{
    private static readonly Node Tree = new("a", [new("b", [new("c", [])]), new("d", [])]);
    public static readonly string PreOrder = string.Join(' ', Pre(Tree));
    public static readonly string PostOrder = string.Join(' ', Post(Tree));
    public static readonly ImmutableArray<(int Depth, string Name)> Depths = [.. WithDepth(Tree, 0)];

    private static IEnumerable<string> Pre(Node node)
    {
        yield return node.Name;
        foreach (var child in node.Children)
        {
            foreach (var name in Pre(child))
                yield return name;
        }
    }

    private static IEnumerable<string> Post(Node node) => node.Children.SelectMany(Post).Append(node.Name);

    private static IEnumerable<(int, string)> WithDepth(Node node, int depth)
    {
        yield return (depth, node.Name);
        foreach (var item in node.Children.SelectMany(child => WithDepth(child, depth + 1)))
            yield return item;
    }
}

public sealed record Node(string Name, Node[] Children);
