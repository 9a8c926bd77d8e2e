namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0301
{
    static readonly Battery Bank = new() { OpenCircuitVoltage = Band.Of(44.Volts(), 54.Volts()), InternalResistance = Band.Of(6.Milliohms(), 10.Milliohms()), InternalInductance = 5.Microhenries() };

    static readonly Fuse Reed25 = new()
    {
        RatedCurrent = 25.Amperes(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        InterruptingRatings = [new() { Current = 5.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
        MeltingIntegral = 320.AmpereSquaredSeconds(),
    };

    static readonly Fuse Weir25 = Reed25 with { InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }] };

    static readonly Rail Sled = new() { From = Bank, Path = [Reed25.As("F1")], Return = Return.OfResistance(0.Ohms()) };

    static readonly Rail Better = new() { From = Bank, Path = [Weir25.As("F2")], Return = Return.OfResistance(0.Ohms()) };
}
