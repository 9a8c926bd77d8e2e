using System.Collections.Immutable;

namespace Programs.Linq.Joins;

/// <summary>Join and group join by methods.</summary>
public static class P
{
    private static readonly (int Id, string Name)[] Rails = [(1, "bus"), (2, "fan"), (3, "none")];
    private static readonly (int Rail, double Amperes)[] Loads = [(1, 10), (2, 1.5), (1, 4), (9, 7)];
    public static readonly ImmutableArray<string> Inner = [.. Rails.Join(Loads, r => r.Id, l => l.Rail, (r, l) => $"{r.Name} {l.Amperes}")];
    public static readonly ImmutableArray<string> Group = [.. Rails.GroupJoin(Loads, r => r.Id, l => l.Rail, (r, ls) => $"{r.Name} {ls.Sum(l => l.Amperes)}")];
    public static readonly ImmutableArray<string> Left = [.. Rails.SelectMany(r => Loads.Where(l => l.Rail == r.Id).Select(l => l.Amperes).DefaultIfEmpty(-1), (r, a) => r.Name + a)];
}
