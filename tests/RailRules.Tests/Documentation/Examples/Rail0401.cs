namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0401
{
    static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), SourceResistance = Band.Of(5.Milliohms(), 9.Milliohms()) };

    static readonly Fuse Reed20 = new() { RatedCurrent = 20.Amperes(), MeltingIntegral = 160.AmpereSquaredSeconds(), ColdResistance = Band.Of(3.Milliohms(), 4.5.Milliohms()) };

    static readonly Load Blade = new() { InputCapacitance = 1500.Microfarads(), InputCapacitorEsr = Band.Of(20.Milliohms(), 60.Milliohms()), StartsInLife = 5000 };

    static readonly Rail Sled = new() { From = Plant, Path = [Reed20.As("F1")], Return = Return.OfResistance(2.Milliohms()), Loads = [Blade] };

    /// <summary>A limiter that is bypassed once the capacitors are full.</summary>
    static readonly Rail Better = new()
    {
        From = Plant,
        Path = [Reed20.As("F2"), new InrushLimiter { ColdResistance = Band.Of(0.4.Ohms(), 0.6.Ohms()), HotResistance = 5.Milliohms(), Bypass = true }],
        Return = Return.OfResistance(2.Milliohms()),
        Loads = [Blade],
    };
}
