namespace Programs.Collections.Sets;

/// <summary>Hash sets and sorted sets.</summary>
public static class P
{
    private static readonly HashSet<int> A = [1, 2, 3];
    private static readonly HashSet<int> B = [2, 3, 4];
    public static readonly bool Contains = A.Contains(2);
    public static readonly bool Subset = new HashSet<int> { 2 }.IsSubsetOf(A);
    public static readonly bool Overlap = A.Overlaps(B);
    public static readonly bool Equal = A.SetEquals([3, 2, 1]);
    public static readonly string Union = Text(A.Union(B));
    public static readonly string Intersection = Text(A.Intersect(B));
    public static readonly string Difference = Text(A.Except(B));
    public static readonly string Changed = Change();
    public static readonly SortedSet<int> Sorted = [2, 1, 2];
    public static readonly int Min = Sorted.Min;

    private static string Text(IEnumerable<int> values) => string.Join(',', values.Order());

    private static string Change()
    {
        var set = new HashSet<int>(A);
        var added = set.Add(9);
        var again = set.Add(1);
        set.UnionWith(B);
        set.ExceptWith([1, 2]);
        set.IntersectWith([3, 4, 9, 10]);
        set.Remove(4);
        return $"{added} {again} {Text(set)}";
    }
}
