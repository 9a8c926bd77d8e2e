namespace RailRules.Tests.Cases.Boards;

/// <summary>case-058: Clamp value at full pulse current exceeds the limit, real surge does not reach it. Invented, not for use.</summary>
[Board]
public static class Case058
{
    /// <summary>Its limit and that of the drive are assumed here; the case is silent.</summary>
    public static readonly Supply Unit = new()
    {
        Voltage = Band.Of(24.Volts(), 30.Volts()),
        ContinuousCurrent = 5.Amperes(),
        CurrentLimit = new() { Level = 6.Amperes(), Style = CurrentLimitStyle.ConstantCurrent, LimitedBy = LimitedBy.Hardware },
    };

    /// <summary>The surge comes from freewheeling through the wiring: 60 V behind 20 Ω for 1 ms.</summary>
    public static readonly Rail Actuators = new()
    {
        From = Unit,
        Surges = [new() { Voltage = 60.Volts(), SourceResistance = 20.Ohms(), HalfValue = 1.Milliseconds() }],
        Clamps =
        [
            new()
            {
                Name = "D1",
                StandOffVoltage = 33.Volts(),
                BreakdownVoltage = Band.Of(36.7.Volts(), 40.6.Volts()), // the lowest is assumed here
                BreakdownVoltageHot = 40.6.Volts(),
                ClampingVoltage = new() { Voltage = 53.3.Volts(), Current = 11.3.Amperes() },
            },
        ],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Drive", Current = 2.Amperes(), OverloadLimit = 6.Amperes(), MaxVoltage = 45.Volts(), SurgeWithstand = 45.Volts() }],
    };
}
