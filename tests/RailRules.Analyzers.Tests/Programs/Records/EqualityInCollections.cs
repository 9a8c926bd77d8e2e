namespace Programs.Records.EqualityInCollections;

/// <summary>Records as keys and in sets, distinct and grouped.</summary>
public static class P
{
    private static readonly Dictionary<Key, int> Table = new() { [new("a", 1)] = 10, [new("b", 2)] = 20 };
    public static readonly int Found = Table[new Key("b", 2)];
    public static readonly bool Missing = Table.ContainsKey(new Key("b", 3));
    public static readonly int Distinct = new[] { new Key("a", 1), new Key("a", 1), new Key("a", 2) }.Distinct().Count();
    public static readonly bool Contains = new List<Key> { new("x", 1) }.Contains(new Key("x", 1));
    public static readonly int Index = new[] { new Key("x", 1), new Key("y", 1) }.ToList().IndexOf(new("y", 1));
    public static readonly HashSet<Spot> Spots = [new(1, 1), new(1, 1), new(1, 2)];
    public static readonly string Groups = string.Join(' ', new[] { 1, 2, 3, 4 }.GroupBy(i => new Key("k", i % 2)).Select(g => g.Key.Number + ":" + g.Count()));
    public static readonly bool Sequence = new[] { new Key("q", 1) }.SequenceEqual([new Key("q", 1)]);
}

public sealed record Key(string Name, int Number);

public readonly record struct Spot(int X, int Y);
