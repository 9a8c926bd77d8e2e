namespace RailRules.Tests.Cases.Boards;

/// <summary>case-032: Thin strip feed without fuse on a supply whose trip is above the fault current. Invented, not for use.</summary>
[Board]
public static class Case032
{
    /// <summary>Its overload trip stands at 20 A.</summary>
    public static readonly Supply Unit = new() { Voltage = 5.Volts(), CurrentLimit = new() { Level = 20.Amperes(), Style = CurrentLimitStyle.LatchOff } };

    private static readonly Wire Lead = new() { Name = "Lead", Length = 1.Meters(), Section = 0.129.SquareMillimeters(), Ampacity = 2.2.Amperes() };

    private static readonly Load Leds = new() { Name = "Leds", Current = 0.6.Amperes() };

    public static readonly Rail Strip = new() { From = Unit, Path = [Lead], Return = Return.OfResistance(0.6.Ohms()), Loads = [Leds] };

    /// <summary>The remedy: a 1 A fuse at the supply.</summary>
    public static readonly Rail FusedStrip = new()
    {
        From = Unit,
        Path = [new Fuse { Name = "F1", RatedCurrent = 1.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius() }, Lead],
        Return = Return.OfResistance(0.6.Ohms()),
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [Leds],
    };
}
