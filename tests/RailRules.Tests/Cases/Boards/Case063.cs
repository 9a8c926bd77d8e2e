namespace RailRules.Tests.Cases.Boards;

/// <summary>case-063: Fuse drawn in the earthed return of a -48 V feed. Invented, not for use.</summary>
[Board]
public static class Case063
{
    /// <summary>-48 V with its positive pole earthed; 2.7 kA through plant, lead and chassis.</summary>
    public static readonly Supply Plant = new()
    {
        Voltage = Band.Of(40.5.Volts(), 48.Volts(), 57.Volts()),
        SourceResistance = 20.Milliohms(),
        ProspectiveFault = new() { Current = 2.7.Kiloamperes() },
        Earthing = Earthing.Positive,
    };

    /// <summary>Magnetic, 50 ms at 27 times its rating.</summary>
    private static readonly CircuitBreaker PlantBreaker = new() { Name = "PlantBreaker", RatedCurrent = 100.Amperes(), Resistance = 0.Ohms(), Curve = [new(500.Amperes(), null, 0.05.Seconds()), new(2.7.Kiloamperes(), null, 0.05.Seconds())] };

    private static readonly Wire Lead = new() { Name = "Lead", Length = 5.Meters(), Section = 2.5.SquareMillimeters(), Ampacity = 20.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() }; // length and ampacity are assumed here

    private static readonly Fuse F1 = new() { Name = "F1", RatedCurrent = 10.Amperes() };

    public static readonly Rail Distribution = new() { From = Plant, Polarity = Polarity.Negative, Path = [PlantBreaker], Return = Return.OfResistance(0.Ohms()) };

    public static readonly Rail Feed = new() { From = Distribution, Polarity = Polarity.Negative, Path = [Lead], Return = Return.Of(F1, Lead with { Name = "ReturnLead" }), Surroundings = new() { Ambient = 25.Celsius() }, Loads = [new() { Current = 20.Amperes() }] }; // the load is assumed here: the lead at its limit

    /// <summary>The remedy: the fuse in the negative conductor.</summary>
    public static readonly Rail Proposed = new() { From = Distribution, Polarity = Polarity.Negative, Path = [F1, Lead], Return = Return.Of(Lead), Surroundings = new() { Ambient = 25.Celsius() } };
}
