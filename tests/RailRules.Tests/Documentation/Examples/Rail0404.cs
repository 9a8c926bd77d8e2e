namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0404
{
    static readonly Supply Unit = new() { Voltage = 5.Volts(), CurrentLimit = new() { Level = 3.Amperes(), Style = CurrentLimitStyle.ConstantCurrent } };

    static readonly ResettableFuse Moss50 = new()
    {
        HoldCurrent = 0.5.Amperes(),
        TripCurrent = 1.Amperes(),
        ReferenceAmbient = 23.Celsius(),
        Derating = [new(0.Celsius(), 1.17), new(23.Celsius(), 1), new(40.Celsius(), 0.84), new(60.Celsius(), 0.7)],
        TrippedPower = 0.6.Watts(),
        Resistance = 0.3.Ohms(),
    };

    static readonly Rail Port = new()
    {
        From = Unit,
        Path = [Moss50.As("F1")],
        Return = Return.OfResistance(0.Ohms()),
        Surroundings = new() { Ambient = Band.Of(0.Celsius(), 60.Celsius()) },
        RequiresSelfReset = true,
        Loads = [new() { Name = "Board", Current = 0.4.Amperes() }],
    };
}
