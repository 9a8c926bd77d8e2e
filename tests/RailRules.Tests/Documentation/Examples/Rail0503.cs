namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0503
{
    static readonly Supply Unit = new() { Voltage = 12.Volts() };

    static readonly Trace Neck = new() { Length = 20.Millimeters(), Width = 1.2.Millimeters(), Thickness = 35.Micrometers(), Inner = false };

    static readonly Wire Lead = new() { Ampacity = 8.Amperes(), TemperatureLimit = 70.Celsius() };

    /// <summary>Drawn for 70 µm, made in 35 µm.</summary>
    static readonly Rail Board = new()
    {
        From = Unit,
        Path = [Lead, Neck],
        Return = Return.OfResistance(1.Milliohms()),
        Surroundings = new() { Ambient = 40.Celsius() },
        Loads = [new() { Name = "Charger", Current = 5.Amperes() }],
    };
}
