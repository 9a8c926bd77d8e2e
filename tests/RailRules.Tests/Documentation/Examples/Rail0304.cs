namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0304
{
    static readonly Battery Bank = new() { OpenCircuitVoltage = Band.Of(44.Volts(), 54.Volts()), InternalResistance = 5.4.Milliohms(), InternalInductance = 5.Microhenries() };

    /// <summary>Proven at 80 V, used at 54 V: less comes through.</summary>
    static readonly Fuse Weir100 = new()
    {
        RatedCurrent = 100.Amperes(),
        RatingBasis = RatingBasis.CarriesRating,
        MeltingIntegral = 27000.AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = 114000.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
        Curve = [new(160.Amperes(), null, 3600.Seconds()), new(320.Amperes(), null, 60.Seconds()), new(1.Kiloamperes(), null, 0.5.Seconds()), new(2.5.Kiloamperes(), null, 10.Milliseconds())],
    };

    static readonly Wire Thin = new() { Length = 300.Millimeters(), Section = 2.5.SquareMillimeters(), Ampacity = 24.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() };

    static readonly Wire Thick = Thin with { Name = "Thick", Section = 4.SquareMillimeters(), Ampacity = 32.Amperes() };

    static readonly Surroundings Hall = new() { Ambient = 30.Celsius() };

    static readonly Load Pump = new() { Current = 24.Amperes() };

    static readonly Rail Tap = new() { From = Bank, Path = [Weir100.As("F1"), Thin], Return = Return.Mirrored, Loads = [Pump], Surroundings = Hall };

    static readonly Rail Better = new() { From = Bank, Path = [Weir100.As("F2"), Thick], Return = Return.Mirrored, Loads = [Pump], Surroundings = Hall };
}
