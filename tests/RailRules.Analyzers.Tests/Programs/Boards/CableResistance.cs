using RailRules;
using UnitsNet;

namespace Programs.Boards.CableResistance;

/// <summary>Resistance of a cable from length, section and temperature.</summary>
public static class P
{
    public const double CopperResistivity = 0.01724;
    public static readonly ElectricResistance Feeder = Resistance(6.Meters(), 35.SquareMillimeters());
    public static readonly ElectricResistance Hot = Resistance(6.Meters(), 35.SquareMillimeters(), 70.Celsius());
    public static readonly Wire Cable = new()
    {
        Length = 6.Meters(),
        Section = 35.SquareMillimeters(),
        Resistance = Band.Of(Resistance(6.Meters(), 35.SquareMillimeters()) * 0.97, Resistance(6.Meters(), 35.SquareMillimeters()) * 1.03),
    };
    public static readonly ElectricPotential Drop = 120.Amperes() * Hot;

    private static ElectricResistance Resistance(Length length, Area section, Temperature? at = null)
    {
        var cold = CopperResistivity * length.Meters / section.SquareMillimeters;
        var factor = 1 + 0.00393 * ((at ?? 20.Celsius()).DegreesCelsius - 20);
        return ElectricResistance.FromOhms(cold * factor);
    }
}
