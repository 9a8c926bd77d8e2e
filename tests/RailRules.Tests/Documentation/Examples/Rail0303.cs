namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0303
{
    static readonly Battery Bank = new() { OpenCircuitVoltage = Band.Of(40.5.Volts(), 54.Volts()), InternalResistance = 10.Milliohms() };

    static readonly Wire Run = new() { Length = 15.Meters(), Section = 2.5.SquareMillimeters(), Resistance = 120.Milliohms(), Ampacity = 24.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() };

    static readonly Fuse Weir63 = new() { RatedCurrent = 63.Amperes(), Characteristic = Characteristic.Iec60269gG, RatingBasis = RatingBasis.CarriesRating, ColdResistance = 0.Ohms() };

    static readonly Fuse Weir20 = Weir63 with { Name = "Weir20", RatedCurrent = 20.Amperes(), Curve = [new(32.Amperes(), null, 3600.Seconds()), new(60.Amperes(), null, 8.Seconds()), new(150.Amperes(), null, 0.2.Seconds())] };

    static readonly Surroundings Hall = new() { Ambient = 30.Celsius() };

    static readonly Rail Pump = new() { From = Bank, Path = [Weir63.As("F1"), Run], Return = Return.OfResistance(120.Milliohms()), Surroundings = Hall };

    static readonly Rail Smaller = new() { From = Bank, Path = [Weir20.As("F2"), Run], Return = Return.OfResistance(120.Milliohms()), Surroundings = Hall };
}
