namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0601
{
    static readonly Supply Plant = new() { Voltage = 54.Volts(), SourceResistance = 10.Milliohms() };

    static readonly Fuse Tinder5 = new() { RatedCurrent = 5.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, Flammability = Flammability.HB };

    static readonly Rail Sled = new() { From = Plant, Path = [Tinder5.As("F1")], Return = Return.OfResistance(5.Milliohms()) };

    static readonly Rail Better = new() { From = Plant, Path = [Tinder5.As("F2") with { Flammability = Flammability.V0 }], Return = Return.OfResistance(5.Milliohms()) };
}
