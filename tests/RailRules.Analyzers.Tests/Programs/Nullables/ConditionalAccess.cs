namespace Programs.Nullables.ConditionalAccess;

/// <summary>Chains stop at the first null.</summary>
public static class P
{
    private static readonly Node Tree = new("root", new("child", null, 5), null);
    private static readonly Node? None = null;
    public static readonly string? Child = Tree.Left?.Name;
    public static readonly string? Missing = Tree.Right?.Left?.Name;
    public static readonly int? Weight = Tree.Left?.Weight;
    public static readonly int? NoWeight = None?.Left?.Weight;
    public static readonly int? Length = Tree.Left?.Name.Length;
    public static readonly char? Letter = Tree.Left?.Name?[0];
    public static readonly string? Upper = None?.Name.ToUpperInvariant().Trim();
    public static readonly int? Twice = Tree.Left?.Weight * 2;
    public static readonly bool Comparison = Tree.Right?.Weight > 3;
    public static readonly string Default = Tree.Right?.Name ?? "none";
    public static readonly int Skipped = Count();
    public static readonly int? Indexed = Tree.Left?.Values?[1];

    private static int Count()
    {
        var calls = 0;
        int Next() => ++calls;
        None?.Take(Next());
        Tree.Left?.Take(Next());
        return calls;
    }
}

public sealed record Node(string Name, Node? Left, int? Weight)
{
    public Node? Right { get; init; }

    public int[]? Values { get; init; } = [10, 20];

    public int Take(int value) => value + 1;
}
