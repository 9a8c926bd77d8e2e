namespace RailRules.Tests.Cases.Boards;

/// <summary>case-023: 750 mA fast fuse charging 100 uF through 0.34 ohm from 15 V, two candidate parts. Invented, not for use.</summary>
[Board]
public static class Case023
{
    public static readonly Supply Unit = new() { Voltage = 15.Volts(), SourceResistance = 0.Ohms() }; // the loop as a whole is in the return

    private static readonly Surroundings Room = new() { Ambient = 25.Celsius() };

    private static readonly Load Board = new() { Name = "Board", Current = 0.3.Amperes(), InputCapacitance = 100.Microfarads(), InputCapacitorEsr = 0.Ohms(), StartsInLife = 10_000 };

    public static readonly Rail OptionA = new()
    {
        From = Unit,
        Path = [new Fuse { Name = "A", RatedCurrent = 0.75.Amperes(), ColdResistance = 0.Ohms(), RatingBasis = RatingBasis.CarriesThreeQuarters, MeltingIntegral = 0.041.AmpereSquaredSeconds(), ReferenceAmbient = 25.Celsius() }],
        Return = Return.OfResistance(0.34.Ohms()), // the loop as a whole
        Surroundings = Room,
        Loads = [Board],
    };

    public static readonly Rail OptionB = new()
    {
        From = Unit,
        Path = [new Fuse { Name = "B", RatedCurrent = 0.75.Amperes(), ColdResistance = 0.Ohms(), RatingBasis = RatingBasis.CarriesThreeQuarters, MeltingIntegral = 0.15.AmpereSquaredSeconds(), ReferenceAmbient = 25.Celsius() }],
        Return = Return.OfResistance(0.34.Ohms()),
        Surroundings = Room,
        Loads = [Board],
    };

    public static readonly Rail OptionBOften = new()
    {
        From = Unit,
        Path = [new Fuse { Name = "B", RatedCurrent = 0.75.Amperes(), ColdResistance = 0.Ohms(), RatingBasis = RatingBasis.CarriesThreeQuarters, MeltingIntegral = 0.15.AmpereSquaredSeconds(), ReferenceAmbient = 25.Celsius() }],
        Return = Return.OfResistance(0.34.Ohms()),
        Surroundings = Room,
        Loads = [Board with { StartsInLife = 100_000 }],
    };
}
