using System.Collections.Immutable;

namespace Programs.Linq.Grouping;

/// <summary>Group by with keys, elements and results.</summary>
public static class P
{
    private static readonly string[] Words = ["fuse", "ptc", "wire", "lug", "cable"];
    public static readonly string ByLength = Text(Words.GroupBy(w => w.Length));
    public static readonly string Elements = string.Join(' ', Words.GroupBy(w => w.Length, w => w[0]).Select(g => g.Key + ":" + string.Concat(g)));
    public static readonly ImmutableArray<string> Results = [.. Words.GroupBy(w => w.Length > 3, (key, items) => $"{key}={items.Count()}")];
    public static readonly ILookup<int, string> Lookup = Words.ToLookup(w => w.Length);
    public static readonly int InLookup = Lookup[3].Count() + Lookup[99].Count();
    public static readonly Dictionary<int, int> Counts = Words.GroupBy(w => w.Length).ToDictionary(g => g.Key, g => g.Count());
    public static readonly ImmutableArray<KeyValuePair<int, int>> CountBy = [.. Words.CountBy(w => w.Length)];
    public static readonly ImmutableArray<KeyValuePair<int, string>> AggregateBy = [.. Words.AggregateBy(w => w.Length, "", (a, w) => a + w[0])];

    private static string Text(IEnumerable<IGrouping<int, string>> groups) => string.Join(' ', groups.Select(g => $"{g.Key}:{string.Join('+', g)}"));
}
