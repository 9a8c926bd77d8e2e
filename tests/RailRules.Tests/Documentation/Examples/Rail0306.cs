namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0306
{
    static readonly Battery Stack = new() { OpenCircuitVoltage = Band.Of(90.Volts(), 109.Volts()), InternalResistance = 8.Milliohms(), InternalInductance = 5.Microhenries() };

    static readonly Fuse Weir200 = new()
    {
        RatedCurrent = 200.Amperes(),
        InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 125.Volts(), TimeConstant = 10.Milliseconds() }],
        MeltingIntegral = 21000.AmpereSquaredSeconds(),
    };

    static readonly Fuse Weir200Slow = Weir200 with { InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 125.Volts(), TimeConstant = 30.Milliseconds() }] };

    static readonly Inductor Choke = new() { Inductance = 200.Microhenries(), Resistance = 0.Ohms() };

    static readonly Rail Drive = new() { From = Stack, Path = [Weir200.As("F1"), Choke], Return = Return.OfResistance(0.Ohms()) };

    static readonly Rail Better = new() { From = Stack, Path = [Weir200Slow.As("F2"), Choke], Return = Return.OfResistance(0.Ohms()) };
}
