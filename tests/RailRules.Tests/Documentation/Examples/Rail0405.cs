namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0405
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), SourceResistance = Band.Of(5.Milliohms(), 9.Milliohms()) };

    static readonly Fuse Reed10 = new() { RatedCurrent = 10.Amperes(), MeltingIntegral = 60.AmpereSquaredSeconds(), ColdResistance = Band.Of(5.Milliohms(), 7.Milliohms()) };

    static readonly InrushLimiter Warm5 = new()
    {
        ColdResistance = Band.Of(4.Ohms(), 6.Ohms()),
        HotResistance = Band.Of(0.15.Ohms(), 0.25.Ohms()),
        RecoveryTime = 60.Seconds(),
        MaxEnergy = 20.Joules(),
        MaxCurrent = 8.Amperes(),
        Derating = [new(25.Celsius(), 1), new(65.Celsius(), 1), new(125.Celsius(), 0.4)],
    };

    static readonly Load Radio = new() { Current = 4.Amperes(), InputCapacitance = 4.7.Millifarads(), InputCapacitorEsr = Band.Of(30.Milliohms(), 80.Milliohms()), StartsInLife = 1000 };

    static readonly Rail Mast = new()
    {
        From = Plant,
        Path = [Reed10.As("F1"), Warm5.As("RT1")],
        Return = Return.OfResistance(10.Milliohms()),
        Surroundings = new() { Ambient = Band.Of(0.Celsius(), 50.Celsius()) },
        ShortestOutage = 0.5.Seconds(),
        Loads = [Radio],
    };
}
