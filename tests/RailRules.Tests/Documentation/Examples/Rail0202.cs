namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0202
{
    static readonly Supply Plant = new() { Voltage = 54.Volts() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius() };

    static readonly Surroundings Shelf = new() { Ambient = Band.Of(10.Celsius(), 60.Celsius()) };

    static readonly Rail Sled = new() { From = Plant, Path = [Reed20.As("F1")], Surroundings = Shelf, Loads = [new() { Current = 9.Amperes() }] };

    /// <summary>7 A stay below 20 A × 0.75 × 0.5, the lowest plausible derating: no curve is needed.</summary>
    static readonly Rail Light = new() { From = Plant, Path = [Reed20.As("F2")], Surroundings = Shelf, Loads = [new() { Current = 7.Amperes() }] };
}
