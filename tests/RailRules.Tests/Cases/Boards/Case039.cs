namespace RailRules.Tests.Cases.Boards;

/// <summary>case-039: Fast main over time-lag branch: the main opens first. Invented, not for use.</summary>
[Board]
public static class Case039
{
    public static readonly Supply Plant = new() { Voltage = 24.Volts() };

    public static readonly Rail Main = new()
    {
        From = Plant,
        Path = [new Fuse { Name = "F_MAIN", RatedCurrent = 30.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, MeltingIntegral = 250.AmpereSquaredSeconds(), ReferenceAmbient = 25.Celsius() }],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Others", Current = 24.Amperes() }],
    };

    public static readonly Rail Branch = new()
    {
        From = Main,
        Path = [new Fuse { Name = "F_BRANCH", RatedCurrent = 20.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ClearingIntegrals = [new() { Value = 900.AmpereSquaredSeconds() }], ReferenceAmbient = 25.Celsius() }],
    };
}
