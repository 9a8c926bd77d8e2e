using UnitsNet;

namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0502
{
    static readonly Supply Unit = new() { Voltage = Band.Of(11.5.Volts(), 12.Volts(), 12.5.Volts()) };

    static readonly Fuse Reed20 = new()
    {
        RatedCurrent = 20.Amperes(),
        VoltageDrop = 85.Millivolts(),
        TemperatureRise = 80.Kelvins(),
        BodyTemperatureLimit = 125.Celsius(),
    };

    static readonly FuseHolder Cradle = new() { ContactResistance = 0.3.Milliohms(), AcceptedPower = 1.6.Watts(), Derating = [new(23.Celsius(), 1), new(85.Celsius(), 0.5)], TemperatureLimit = 105.Celsius() };

    static readonly Wire Lead = new() { Resistance = 8.Milliohms(), TemperatureLimit = 70.Celsius() };

    static readonly Rail Charger = new()
    {
        From = Unit,
        Path = [Cradle, Reed20.As("F1"), Lead],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 50.Celsius() },
        Loads = [new() { Name = "Battery", Current = 18.Amperes() }],
        Budgets = new() { DropShare = Ratio.FromPercent(3), Dissipation = 10.Watts() },
    };
}
