namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0007
{
    static readonly Supply Plant = new() { Voltage = 54.Volts() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes() };

    static readonly Rail Left = new() { From = Plant, Path = [Reed20.As("F1")] };

    static readonly Rail Right = new() { From = Plant, Path = [Reed20.As("F1")] }; // copied, designator and all

    static readonly Rail Spare = new() { Path = [Reed20.As("F3")] };
}
