using RailRules;

namespace Programs.Boards.LastWins;

/// <summary>Dictionaries of overrides over defaults.</summary>
public static class P
{
    private static readonly Dictionary<string, double> Defaults = new() { ["drop"] = 0.5, ["margin"] = 0.75, ["share"] = 1 };
    private static readonly Dictionary<string, double> Overrides = new() { ["margin"] = 0.6, ["extra"] = 2 };
    public static readonly Dictionary<string, double> Merged = Merge(Defaults, Overrides);
    public static readonly DesignPolicy Policy = new() { FuseContinuous = Merged["margin"], ElectronicTrip = Merged["share"] };
    public static readonly int Unchanged = Defaults.Count;

    private static Dictionary<string, double> Merge(params Dictionary<string, double>[] all)
    {
        var merged = new Dictionary<string, double>();
        foreach (var one in all)
        {
            foreach (var (key, value) in one)
                merged[key] = value;
        }

        return merged;
    }
}
