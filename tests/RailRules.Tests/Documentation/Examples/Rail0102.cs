namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0102
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts() };

    static readonly Fuse Glass10 = new() { RatedCurrent = 10.Amperes(), AcVoltageRating = 250.Volts() };

    static readonly Fuse Weir10 = new() { RatedCurrent = 10.Amperes(), AcVoltageRating = 250.Volts(), DcVoltageRating = 80.Volts() };

    static readonly Rail Sled = new() { From = Plant, Path = [Glass10.As("F1")] };

    static readonly Rail Better = new() { From = Plant, Path = [Weir10.As("F2")] };
}
