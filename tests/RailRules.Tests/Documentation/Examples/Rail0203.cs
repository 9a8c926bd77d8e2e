namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0203
{
    static readonly Supply Plant = new() { Voltage = 54.Volts() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes(), OperatingTemperature = Band.Of((-40).Celsius(), 85.Celsius()) };

    static readonly Surroundings Hut = new() { Ambient = Band.Of((-20).Celsius(), 75.Celsius()), HeatOfNeighbours = 15.Kelvins() };

    static readonly Rail Sled = new() { From = Plant, Path = [Reed20.As("F1")], Surroundings = Hut };

    /// <summary>Moved away from its neighbours.</summary>
    static readonly Rail Better = new()
    {
        From = Plant,
        Path = [Reed20.As("F2") with { Surroundings = new() { Ambient = Band.Of((-20).Celsius(), 75.Celsius()), HeatOfNeighbours = 5.Kelvins() } }],
        Surroundings = Hut,
    };
}
