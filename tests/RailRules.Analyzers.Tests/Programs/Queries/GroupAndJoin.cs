using System.Collections.Immutable;

namespace Programs.Queries.GroupAndJoin;

/// <summary>Group by, join, group join and continuation.</summary>
public static class P
{
    private static readonly (string Name, int Rail)[] Loads = [("fan", 1), ("cpu", 2), ("disk", 1)];
    private static readonly (int Id, double Volts)[] Rails = [(1, 12), (2, 54), (3, 5)];
    public static readonly ImmutableArray<string> Groups = [.. from l in Loads group l.Name by l.Rail into g orderby g.Key descending select $"{g.Key}:{string.Join('+', g)}"];
    public static readonly ImmutableArray<string> Join = [.. from l in Loads join r in Rails on l.Rail equals r.Id select $"{l.Name}@{r.Volts}"];
    public static readonly ImmutableArray<string> GroupJoin = [.. from r in Rails join l in Loads on r.Id equals l.Rail into found select $"{r.Volts}:{found.Count()}"];
    public static readonly ImmutableArray<string> LeftJoin = [.. from r in Rails join l in Loads on r.Id equals l.Rail into found from l in found.DefaultIfEmpty(("none", 0)) select $"{r.Id}{l.Item1}"];
    public static readonly int Keys = (from l in Loads group l by l.Rail).Count();
}
