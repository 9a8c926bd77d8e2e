namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0104
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts() };

    static readonly TransientSuppressor Sluice54 = new() { StandOffVoltage = 54.Volts() };

    static readonly TransientSuppressor Sluice58 = new() { StandOffVoltage = 58.Volts() };

    static readonly Rail Sled = new() { From = Plant, Clamps = [Sluice54] };

    /// <summary>Transients to 60 V do not count: the clamp is there to cut them.</summary>
    static readonly Rail Better = new() { From = Plant, Clamps = [Sluice58] };
}
