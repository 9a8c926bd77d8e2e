namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0105
{
    /// <summary>A −48 V plant: its positive pole is earthed.</summary>
    static readonly Supply Plant = new() { Voltage = Band.Of(40.5.Volts(), 54.Volts(), 57.Volts()), Earthing = Earthing.Positive };

    static readonly Fuse Reed10 = new() { RatedCurrent = 10.Amperes() };

    static readonly Wire Lead = new() { Ampacity = 20.Amperes() };

    /// <summary>The fuse stands in the positive conductor, which is the return.</summary>
    static readonly Rail Shelf = new() { From = Plant, Polarity = Polarity.Negative, Path = [Lead], Return = Return.Of(Reed10.As("F1"), Lead) };

    static readonly Rail Better = new() { From = Plant, Polarity = Polarity.Negative, Path = [Reed10.As("F2"), Lead], Return = Return.Of(Lead) };
}
