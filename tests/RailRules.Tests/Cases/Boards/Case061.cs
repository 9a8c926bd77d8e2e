namespace RailRules.Tests.Cases.Boards;

/// <summary>case-061: 60 A fuse per feed on a shelf that normally takes 20 A from each. Invented, not for use.</summary>
[Board]
public static class Case061
{
    /// <summary>4 kA prospective, unlimited but for its cables.</summary>
    private static readonly ProspectiveFault Prospective = new() { Current = 4.Kiloamperes() };

    public static readonly Supply PlantA = new() { Voltage = Band.Of(40.5.Volts(), 48.Volts(), 57.Volts()), ProspectiveFault = Prospective, ContinuousCurrent = 600.Amperes() }; // the plant's rating is assumed here

    public static readonly Supply PlantB = new() { Voltage = Band.Of(40.5.Volts(), 48.Volts(), 57.Volts()), ProspectiveFault = Prospective, ContinuousCurrent = 600.Amperes() };

    private static readonly Fuse FeedFuse = new()
    {
        RatedCurrent = 60.Amperes(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        Curve = [new(81.Amperes(), null, 3600.Seconds()), new(120.Amperes(), null, 100.Seconds()), new(600.Amperes(), null, 0.3.Seconds()), new(4.Kiloamperes(), null, 6.Milliseconds())], // assumed here; the case is silent
        DcVoltageRating = 80.Volts(),
        InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts() }],
        ReferenceAmbient = 25.Celsius(),
        Flammability = Flammability.V0, // assumed here; the case is silent
        ColdResistance = 0.Ohms(), // the case counts no drop
    };

    private static readonly Wire FeedWire = new() { Section = 16.SquareMillimeters(), Ampacity = 70.Amperes(), Resistance = 0.Ohms() };

    public static readonly Rail Shelf = new()
    {
        Feeds =
        [
            new() { From = PlantA, Path = [FeedFuse with { Name = "FA" }, FeedWire with { Name = "WA" }], Return = Return.Mirrored },
            new() { From = PlantB, Path = [FeedFuse with { Name = "FB" }, FeedWire with { Name = "WB" }], Return = Return.Mirrored },
        ],
        Return = Return.OfResistance(0.Ohms()),
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Cards", Power = 1598.Watts(), MinVoltage = 36.Volts(), MaxVoltage = 60.Volts() }], // lowest and highest input voltage are assumed here
    };
}
