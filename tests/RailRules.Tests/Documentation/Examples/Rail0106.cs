namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0106
{
    static readonly Supply Rectifier = new() { Voltage = 54.Volts(), CurrentLimit = new() { Level = 60.Amperes() } };

    static readonly Battery String = new() { OpenCircuitVoltage = Band.Of(43.Volts(), 51.Volts()), InternalResistance = 20.Milliohms() };

    static readonly CircuitBreaker Gate63 = new() { RatedCurrent = 63.Amperes(), Polarized = true };

    /// <summary>The battery can feed a fault in the rectifier through its breaker, which breaks in one direction only.</summary>
    static readonly Rail Bus = new() { Feeds = [new() { From = Rectifier, Path = [Gate63.As("Q1")] }, new() { From = String }] };

    static readonly Rail Better = new() { Feeds = [new() { From = Rectifier, Path = [(Gate63 with { Polarized = false }).As("Q2")] }, new() { From = String }] };
}
