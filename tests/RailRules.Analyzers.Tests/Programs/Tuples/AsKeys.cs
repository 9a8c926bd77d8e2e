using System.Collections.Immutable;

namespace Programs.Tuples.AsKeys;

/// <summary>Tuples in dictionaries, sets, sorting and grouping.</summary>
public static class P
{
    private static readonly Dictionary<(string, int), double> Table = new() { [("A", 1)] = 1.5, [("B", 2)] = 2.5 };
    public static readonly double Found = Table[("B", 2)];
    public static readonly bool Missing = Table.ContainsKey(("A", 2));
    public static readonly HashSet<(int, int)> Set = [(1, 2), (2, 1), (1, 2)];
    public static readonly ImmutableArray<(int, char)> Sorted = [.. new[] { (2, 'a'), (1, 'b'), (1, 'a') }.Order()];
    public static readonly string Groups = string.Join(" ", new[] { 1, 2, 3, 4, 5, 6 }.GroupBy(i => (i % 2, i > 3)).Select(g => $"{g.Key}={g.Count()}"));
    public static readonly int Distinct = new[] { (1, 'a'), (1, 'a'), (2, 'a') }.Distinct().Count();
    public static readonly (double, char) Max = new[] { (1.5, 'x'), (2.5, 'a') }.Max();
}
