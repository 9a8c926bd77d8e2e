namespace RailRules.Tests.Cases.Boards;

/// <summary>case-081: Fuse tested at 10 ms time constant in a loop with a smoothing choke. Invented, not for use.</summary>
[Board]
public static class Case081
{
    /// <summary>8 mΩ in the whole loop; 5 µH without the choke.</summary>
    public static readonly Supply Stack = new() { Voltage = 109.Volts(), SourceResistance = 8.Milliohms(), SourceInductance = 5.Microhenries() };

    private static readonly Fuse F1 = new()
    {
        RatedCurrent = 200.Amperes(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        DcVoltageRating = 125.Volts(),
        InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 125.Volts(), TimeConstant = 10.Milliseconds() }],
        ReferenceAmbient = 25.Celsius(),
    };

    /// <summary>What the fuse meets before the choke.</summary>
    public static readonly Rail AheadOfChoke = new() { From = Stack, Path = [F1], Return = Return.OfResistance(0.Ohms()), Surroundings = new() { Ambient = 25.Celsius() } };

    public static readonly Rail Traction = new()
    {
        From = Stack,
        Path = [F1, new Inductor { Name = "Choke", Inductance = 200.Microhenries(), Resistance = 0.Ohms() }],
        Return = Return.OfResistance(0.Ohms()),
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Drive", Current = 120.Amperes() }],
    };
}
