namespace RailRules.Tests.Cases.Boards;

/// <summary>case-012: Radio draws 1.43 A at 14 V: is a 2 A breaker right?. Invented, not for use.</summary>
[Board]
public static class Case012
{
    /// <summary>Light-aircraft bus.</summary>
    public static readonly Supply Bus = new() { Voltage = Band.Of(9.Volts(), 14.Volts(), 33.Volts()) };

    public static readonly Rail Radio = new()
    {
        From = Bus,
        Path =
        [
            new CircuitBreaker { Name = "CB1", RatedCurrent = 2.Amperes(), ReferenceAmbient = 25.Celsius() },
            new Wire { Name = "Lead", Ampacity = 5.Amperes() },
        ],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Transceiver", Power = (14 * 1.43).Watts() }], // switching input: constant power
    };

    /// <summary>The remedy: 3 A.</summary>
    public static readonly Rail WithThree = new()
    {
        From = Bus,
        Path = [new CircuitBreaker { Name = "CB3", RatedCurrent = 3.Amperes(), ReferenceAmbient = 25.Celsius() }, new Wire { Name = "Lead", Ampacity = 5.Amperes() }],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Transceiver", Power = (14 * 1.43).Watts() }],
    };
}
