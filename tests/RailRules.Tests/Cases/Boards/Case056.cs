namespace RailRules.Tests.Cases.Boards;

/// <summary>case-056: Suppressor starts to conduct at 17 V on a rail specified to 18 V. Invented, not for use.</summary>
[Board]
public static class Case056
{
    public static readonly Supply Unit = new() { Voltage = Band.Of(12.Volts(), 18.Volts()) };

    /// <summary>It is known by the voltage from which it conducts.</summary>
    public static readonly Rail Fitted = new()
    {
        From = Unit,
        Clamps = [new() { Name = "D1", BreakdownVoltage = Band.Of(17.Volts(), 19.Volts()) }],
        Loads = [new() { Name = "Display", Current = 0.2.Amperes(), MaxVoltage = 36.Volts() }],
    };

    public static readonly Rail Replaced = new()
    {
        From = Unit,
        Clamps = [new() { Name = "D2", StandOffVoltage = 20.Volts(), ClampingVoltage = new() { Voltage = 32.4.Volts() } }],
        Loads = [new() { Name = "Display", Current = 0.2.Amperes(), MaxVoltage = 36.Volts() }],
    };
}
