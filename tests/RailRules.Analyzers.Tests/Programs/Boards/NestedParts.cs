using RailRules;
using UnitsNet;

namespace Programs.Boards.NestedParts;

/// <summary>Parts in nested static classes, rails that use them.</summary>
public static class P
{
    public static readonly Rail Bus = new()
    {
        From = Parts.Plant,
        Path = [Parts.Fuses.Weir200.As("F1"), Parts.Copper.Bar],
        Return = Return.Of(Parts.Copper.Bar),
    };
    public static readonly ElectricCurrent? Rated = Parts.Fuses.Weir200.RatedCurrent;
}

public static class Parts
{
    private const string Invented = "invented, not for use";

    public static readonly Supply Plant = new() { Voltage = 54.Volts(), Citation = Invented };

    public static class Fuses
    {
        public static readonly Fuse Weir200 = new() { PartNumber = nameof(Weir200), Citation = Invented, RatedCurrent = 200.Amperes() };
    }

    public static class Copper
    {
        public static Busbar Bar { get; } = new() { Resistance = Milliohms(0.2), Citation = Invented };

        private static ElectricResistance Milliohms(double value) => ElectricResistance.FromMilliohms(value);
    }
}
