using RailRules;

namespace Programs.Boards.MonthsOfLife;

/// <summary>Starts in life from a duty table.</summary>
public static class P
{
    private static readonly Dictionary<string, (int PerDay, int Days)> Duty = new() { ["bus"] = (24, 365), ["test"] = (3, 50), ["service"] = (2, 12) };
    public static readonly int PerYear = Duty.Values.Sum(row => row.PerDay * row.Days);
    public static readonly Load Radio = new() { StartsInLife = 15 * Duty.Values.Sum(row => row.PerDay * row.Days) };
    public static readonly string Most = Duty.MaxBy(row => row.Value.PerDay * row.Value.Days).Key;
}
