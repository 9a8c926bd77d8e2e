using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.VoltageDropBudget;

/// <summary>Drops along a path added up.</summary>
public static class P
{
    private static readonly (string Name, double Milliohms)[] Stretch = [("lug", 0.2), ("cable", 3.1), ("fuse", 1.4), ("connector", 0.8)];
    public static readonly double Total = Stretch.Sum(part => part.Milliohms);
    public static readonly ElectricPotential Drop = 45.Amperes() * Stretch.Sum(part => part.Milliohms).Milliohms();
    public static readonly ImmutableArray<string> Shares = [.. Stretch.Select(part => $"{part.Name}: {100 * part.Milliohms / Stretch.Sum(p => p.Milliohms):0.0} %")];
    public static readonly Budgets Limits = new() { Drop = 0.5.Volts(), DropShare = 2.Percent(), Dissipation = 15.Watts() };
}
