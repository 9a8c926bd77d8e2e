using RailRules;
using UnitsNet;

namespace Programs.Boards.PartsByKey;

/// <summary>Parts in a dictionary by key.</summary>
public static class P
{
    private static readonly Dictionary<string, Fuse> Stock = new()
    {
        ["S4"] = new() { RatedCurrent = 4.Amperes() },
        ["S10"] = new() { RatedCurrent = 10.Amperes() },
    };
    public static readonly Rail Fan = new() { Path = [Stock["S4"].As("F1")] };
    public static readonly Rail Pump = new() { Path = [Stock["S10"].As("F2"), Stock["S4"].As("F3")] };
    public static readonly bool Known = Stock.ContainsKey("S4") && !Stock.ContainsKey("S6");
    public static readonly ElectricCurrent Total = Stock.Values.Aggregate(ElectricCurrent.Zero, (sum, fuse) => sum + fuse.RatedCurrent!.Value);
}
