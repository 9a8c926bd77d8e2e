namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0201
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), ContinuousCurrent = 100.Amperes() };

    static readonly Fuse Reed20 = new()
    {
        RatedCurrent = 20.Amperes(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        ReferenceAmbient = 25.Celsius(),
        Derating = [new(25.Celsius(), 1), new(55.Celsius(), 0.86), new(85.Celsius(), 0.7)],
        ColdResistance = 4.Milliohms(),
    };

    static readonly Surroundings Cabin = new() { Ambient = Band.Of((-5).Celsius(), 55.Celsius()), Altitude = 3000.Meters() };

    static readonly Load Blade = new() { Power = 560.Watts(), MinVoltage = 40.Volts() };

    static readonly Rail Sled = new()
    {
        From = Plant,
        Path = [Reed20.As("F1")],
        Return = Return.OfResistance(10.Milliohms()),
        Surroundings = Cabin,
        Loads = [Blade],
    };

    static readonly Rail Better = new()
    {
        From = Plant,
        Path = [(Reed20 with { RatedCurrent = 25.Amperes(), ColdResistance = 3.Milliohms() }).As("F2")],
        Return = Return.OfResistance(10.Milliohms()),
        Surroundings = Cabin,
        Loads = [Blade],
    };
}
