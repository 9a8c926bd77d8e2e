namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0101
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes(), DcVoltageRating = 58.Volts() };

    static readonly Fuse Weir20 = new() { RatedCurrent = 20.Amperes(), DcVoltageRating = 80.Volts() };

    static readonly Rail Sled = new() { From = Plant, Path = [Reed20.As("F1")] };

    static readonly Rail Better = new() { From = Plant, Path = [Weir20.As("F2")] };
}
