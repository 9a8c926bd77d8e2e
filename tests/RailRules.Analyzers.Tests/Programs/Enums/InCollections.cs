using System.Collections.Immutable;

namespace Programs.Enums.InCollections;

/// <summary>Enumerations as keys, in sets and in tuples.</summary>
public static class P
{
    private static readonly Dictionary<Phase, double> Limits = new() { [Phase.Start] = 1.5, [Phase.Run] = 1.0 };
    public static readonly double Start = Limits[Phase.Start];
    public static readonly bool HasStop = Limits.ContainsKey(Phase.Stop);
    public static readonly ImmutableArray<Phase> Sorted = [.. new[] { Phase.Stop, Phase.Start, Phase.Run }.Order()];
    public static readonly HashSet<Phase> Set = [Phase.Run, Phase.Run, Phase.Start];
    public static readonly ILookup<Phase, int> Lookup = Enumerable.Range(1, 5).ToLookup(i => (Phase)(i % 3));
    public static readonly string Grouped = string.Join(";", Enumerable.Range(1, 7).GroupBy(i => (Phase)(i % 3)).Select(g => $"{g.Key}:{g.Sum()}"));
    public static readonly (Phase, int) Pair = (Phase.Run, 2);
    public static readonly string PairText = (Phase.Run, 2).ToString();
    public static readonly Phase Max = new[] { Phase.Run, Phase.Start }.Max();
}

public enum Phase
{
    Start,
    Run,
    Stop,
}
