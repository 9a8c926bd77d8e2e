namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0004
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts(), ContinuousCurrent = 100.Amperes() };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes() };

    /// <summary>9 A at 43 V: less than 20 A, more than 20 A × 0.75 × 0.5.</summary>
    static readonly Rail Sled = new()
    {
        From = Plant,
        Path = [Reed20.As("F1")],
        Return = Return.OfResistance(1.Milliohms()),
        Surroundings = new() { Ambient = Band.Of(0.Celsius(), 50.Celsius()) },
        Loads = [new() { Name = "Blade", Power = 385.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() }],
    };
}
