namespace RailRules.Tests.Cases.Boards;

/// <summary>case-028: 5 A round power jack behind a 10 A board fuse on a 14.6 A supply. Invented, not for use.</summary>
[Board]
public static class Case028
{
    /// <summary>14.6 A with a limit between 110 and 140 %.</summary>
    public static readonly Supply Unit = new()
    {
        Voltage = 24.Volts(),
        ContinuousCurrent = 14.6.Amperes(),
        CurrentLimit = new() { Level = Band.Of((1.10 * 14.6).Amperes(), (1.40 * 14.6).Amperes()), LimitedBy = LimitedBy.Hardware },
    };

    private static readonly Connector Jack = new() { Name = "Jack", ContactRating = 5.Amperes(), ContactResistance = 0.Ohms() };

    public static readonly Rail Board = new()
    {
        From = Unit,
        Path = [Jack, new Connector { Name = "Header", ContactRating = 7.Amperes(), ContactResistance = 0.Ohms() }, Fitted("F_BOARD", 10)],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Motor", Current = 3.Amperes() }], // assumed here; the case is silent
    };

    /// <summary>The remedy: 5 A in the branch.</summary>
    public static readonly Rail Proposed = new()
    {
        From = Unit,
        Path = [Fitted("F_BRANCH", 5), Jack],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Motor", Current = 3.Amperes() }],
    };

    private static Fuse Fitted(string name, double rated) =>
        new() { Name = name, RatedCurrent = rated.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius(), ColdResistance = 0.Ohms() };
}
