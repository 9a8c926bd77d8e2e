namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0206
{
    static readonly Supply Plant = new() { Voltage = 48.Volts() };

    static readonly Fuse Weir60 = new()
    {
        PartNumber = "Weir60",
        RatedCurrent = 60.Amperes(),
        RatingBasis = RatingBasis.CarriesRating,
        ReferenceAmbient = 25.Celsius(),
        ColdResistance = Band.Of(0.9.Milliohms(), 1.1.Milliohms()),
        ParallelAllowed = "invented set, sheet 4",
    };

    /// <summary>Two of 60 A do not make 120 A: with 10 % of spread either way one takes 55 %.</summary>
    static readonly Rail Drive = new()
    {
        From = Plant,
        Path = [new ParallelGroup { Branches = [[Weir60.As("F1")], [Weir60.As("F2")]] }],
        Return = Return.OfResistance(0.Ohms()),
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Motor", Current = 115.Amperes() }],
    };
}
