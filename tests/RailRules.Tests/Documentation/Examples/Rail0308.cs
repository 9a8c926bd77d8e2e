namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0308
{
    static readonly Battery Bank = new() { OpenCircuitVoltage = Band.Of(44.Volts(), 54.Volts()), InternalResistance = Band.Of(10.Milliohms(), 20.Milliohms()) };

    /// <summary>Opens in time at both ends, and takes its time between them.</summary>
    static readonly Fuse Slow63 = new()
    {
        RatedCurrent = 63.Amperes(),
        RatingBasis = RatingBasis.CarriesRating,
        Curve = [new(101.Amperes(), null, 3600.Seconds()), new(200.Amperes(), null, 600.Seconds()), new(400.Amperes(), null, 30.Seconds()), new(1.Kiloamperes(), null, 0.5.Seconds())],
    };

    static readonly Fuse Quick63 = Slow63 with
    {
        Name = "Quick63",
        Curve = [new(101.Amperes(), null, 3600.Seconds()), new(200.Amperes(), null, 60.Seconds()), new(400.Amperes(), null, 3.Seconds()), new(1.Kiloamperes(), null, 0.1.Seconds())],
    };

    static readonly Wire Lead = new() { Length = 4.Meters(), Section = 16.SquareMillimeters(), Ampacity = 76.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() };

    static readonly Surroundings Hall = new() { Ambient = 30.Celsius() };

    static readonly Rail Pump = new() { From = Bank, Path = [Slow63.As("F1"), Lead], Return = Return.Mirrored, Surroundings = Hall };

    static readonly Rail Better = new() { From = Bank, Path = [Quick63.As("F2"), Lead], Return = Return.Mirrored, Surroundings = Hall };
}
