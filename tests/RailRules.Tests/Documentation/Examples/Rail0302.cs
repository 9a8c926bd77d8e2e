namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0302
{
    static readonly Supply Unit = new()
    {
        Voltage = 54.Volts(),
        CurrentLimit = new() { Level = Band.Of(40.Amperes(), 44.Amperes()), Style = CurrentLimitStyle.ConstantCurrent, LimitedBy = LimitedBy.Hardware },
    };

    static readonly Fuse Reed32 = new() { RatedCurrent = 32.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ColdResistance = 2.Milliohms() };

    static readonly Wire Thin = new() { Length = 6.Meters(), Section = 4.SquareMillimeters(), Ampacity = 35.Amperes(), TemperatureLimit = 70.Celsius() };

    static readonly Wire Thick = Thin with { Section = 10.SquareMillimeters(), Ampacity = 57.Amperes() };

    static readonly Surroundings Hall = new() { Ambient = 30.Celsius() };

    static readonly Rail Pump = new() { From = Unit, Path = [Reed32.As("F1"), Thin], Return = Return.Mirrored, Surroundings = Hall };

    static readonly Rail Smaller = new() { From = Unit, Path = [(Reed32 with { RatedCurrent = 25.Amperes() }).As("F2"), Thin], Return = Return.Mirrored, Surroundings = Hall };

    static readonly Rail Harmless = new() { From = Unit, Path = [Reed32.As("F3"), Thick], Return = Return.Mirrored, Surroundings = Hall };
}
