using System.Collections.Immutable;
using RailRules;
using UnitsNet;
using UnitsNet.Units;

namespace Programs.Boards.SurgeTable;

/// <summary>Surges of a site, sorted by their peak.</summary>
public static class P
{
    private static readonly (string Kind, double Volts, double Microseconds)[] Site = [("switching", 75, 300), ("lightning", 120, 50), ("load dump", 65, 900)];
    public static readonly ImmutableArray<string> Sorted = [.. from s in Site orderby s.Volts descending select $"{s.Kind}: {s.Volts} V for {s.Microseconds} µs"];
    public static readonly ElectricPotential Highest = UnitMath.Max(Site.Select(s => s.Volts.Volts()).ToArray(), ElectricPotentialUnit.Volt);
    public static readonly Rail Exposed = new() { TransientMax = Site.Where(s => s.Microseconds >= 500).Max(s => s.Volts).Volts() };
}
