namespace RailRules.Tests.Cases.Boards;

/// <summary>case-078: 600 mA fuse unavailable: 460 mA or 750 mA?. Invented, not for use.</summary>
[Board]
public static class Case078
{
    public static readonly Supply Injector = new() { Voltage = 48.Volts() }; // the case does not state the voltage

    public static readonly Rail Pairs = new()
    {
        From = Injector,
        Path =
        [
            new Fuse
            {
                Name = "F046",
                RatedCurrent = 0.46.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                ReferenceAmbient = 25.Celsius(),
                Alternates = [new Fuse { Name = "F075", RatedCurrent = 0.75.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius() }],
            },
            new Wire { Name = "TwoPairs", Ampacity = (2 * 0.3).Amperes() },
        ],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Terminal", Current = 0.3.Amperes() }],
    };

    /// <summary>With the larger of the two.</summary>
    public static readonly Rail PairsWith750 = new()
    {
        From = Injector,
        Path = [new Fuse { Name = "F075", RatedCurrent = 0.75.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius() }, new Wire { Name = "TwoPairs", Ampacity = (2 * 0.3).Amperes() }],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Terminal", Current = 0.3.Amperes() }],
    };
}
