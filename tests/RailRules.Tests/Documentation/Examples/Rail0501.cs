namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0501
{
    static readonly Supply Unit = new() { Voltage = Band.Of(4.9.Volts(), 5.Volts(), 5.1.Volts()) };

    static readonly Fuse Reed4 = new() { RatedCurrent = 4.Amperes(), VoltageDrop = 130.Millivolts() };

    static readonly Fuse Reed8 = new() { RatedCurrent = 8.Amperes(), VoltageDrop = 70.Millivolts() };

    static readonly Wire Lead = new() { Resistance = 17.Milliohms(), TemperatureLimit = 60.Celsius() };

    static readonly Wire ThickLead = new() { Resistance = 7.Milliohms(), TemperatureLimit = 60.Celsius() };

    static readonly Load Board = new() { Name = "Board", Current = 4.Amperes(), MinVoltage = 4.75.Volts() };

    static readonly Rail Sled = new() { From = Unit, Path = [Reed4.As("F1"), Lead], Return = Return.Mirrored, Loads = [Board] };

    static readonly Rail Better = new() { From = Unit, Path = [Reed8.As("F2"), ThickLead], Return = Return.Mirrored, Loads = [Board] };
}
