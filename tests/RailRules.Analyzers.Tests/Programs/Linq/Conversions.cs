using System.Collections.Immutable;

namespace Programs.Linq.Conversions;

/// <summary>To arrays, lists, sets, dictionaries and lookups.</summary>
public static class P
{
    public static readonly int[] Array = Enumerable.Range(0, 3).ToArray();
    public static readonly List<string> List = "ab".Select(c => c.ToString()).ToList();
    public static readonly HashSet<int> Set = new[] { 1, 2, 1 }.ToHashSet();
    public static readonly Dictionary<char, int> Dictionary = "xyz".ToDictionary(c => c, c => c - 'a');
    public static readonly Dictionary<int, string> KeyOnly = new[] { "a", "bb" }.ToDictionary(s => s.Length);
    public static readonly ImmutableArray<int> Immutable = Enumerable.Range(1, 2).ToImmutableArray();
    public static readonly ImmutableList<int> ImmutableList = Enumerable.Range(1, 2).ToImmutableList();
    public static readonly IEnumerable<int> Enumerable2 = new[] { 1 }.AsEnumerable();
    public static readonly IReadOnlyList<int> Lazy = [.. Enumerable.Range(0, 2).Select(i => i * 2)];
    public static readonly Dictionary<string, double> Pairs = new[] { ("a", 1.5) }.ToDictionary();
}
