using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.ConstantsAndUnits;

/// <summary>Constants of a board in one place.</summary>
public static class P
{
    public const double BusVolts = 54;
    public const int Slots = 6;
    public const string Prefix = "SL";
    private static readonly ElectricPotential Bus = BusVolts.Volts();
    public static readonly ElectricCurrent PerSlot = (Slots * 100).Watts() / Bus / Slots;
    public static readonly ImmutableArray<string> Names = [.. Enumerable.Range(0, Slots).Select(i => $"{Prefix}{i:D2}")];
    public static readonly Rail All = new() { Name = Prefix + "-" + Slots, Loads = [.. Enumerable.Repeat(new Load { Power = 100.Watts() }, Slots)] };
}
