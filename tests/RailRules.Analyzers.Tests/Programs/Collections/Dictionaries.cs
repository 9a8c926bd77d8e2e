namespace Programs.Collections.Dictionaries;

/// <summary>Initialisers, lookups, changes and enumeration order.</summary>
public static class P
{
    private static readonly Dictionary<string, int> Slots = new() { ["A"] = 1, ["B"] = 2 };
    private static readonly Dictionary<int, string> ByAdd = new() { { 1, "one" }, { 2, "two" } };
    public static readonly int Known = Slots["B"];
    public static readonly string Found = Slots.TryGetValue("C", out var missing) ? "found" : $"not found {missing}";
    public static readonly string Keys = string.Join(',', Slots.Keys) + string.Join(',', ByAdd.Values);
    public static readonly string Pairs = string.Join(';', ByAdd.Select(pair => $"{pair.Key}={pair.Value}"));
    public static readonly string Changed = Change();
    public static readonly int Sum = Slots.Sum(p => p.Value);
    public static readonly Dictionary<int, string> Inverted = Slots.ToDictionary(p => p.Value, p => p.Key);
    public static readonly int Or = Slots.GetValueOrDefault("Z", -1);

    private static string Change()
    {
        var counts = new Dictionary<char, int>();
        foreach (var c in "mississippi")
            counts[c] = counts.TryGetValue(c, out var n) ? n + 1 : 1;
        counts['m'] += 10;
        counts.Remove('p');
        var added = counts.TryAdd('z', 26) && !counts.TryAdd('s', 0);
        var text = "";
        foreach (var (letter, count) in counts)
            text += $"{letter}{count}";
        return $"{text} {added} {counts.Count} {counts.ContainsKey('p')}";
    }
}
