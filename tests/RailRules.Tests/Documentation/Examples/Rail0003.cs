namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0003
{
    static readonly Fuse Reed20 = new()
    {
        RatedCurrent = 20.Amperes(),
        MeltingIntegral = 600.AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = 500.AmpereSquaredSeconds(), Voltage = 58.Volts() }], // melting plus arcing: cannot be less
        ReferenceAmbient = 25.Celsius(),
        Derating = [new(25.Celsius(), 1), new(60.Celsius(), 86)], // a percentage
    };

    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 56.Volts() };

    static readonly Rail Sled = new() { From = Plant, Path = [Reed20.As("F1")] };
}
