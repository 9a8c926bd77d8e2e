namespace RailRules.Tests.Cases.Boards;

/// <summary>case-053: Suppressor breakdown (86 V) above the converter's absolute maximum (85 V). Invented, not for use.</summary>
[Board]
public static class Case053
{
    public static readonly Battery Pack = new() { OpenCircuitVoltage = Band.Of((16 * 2.8).Volts(), 58.4.Volts()), InternalResistance = 20.Milliohms() };

    /// <summary>The fitted part; lowest breakdown voltages are assumed here.</summary>
    public static readonly Rail Fitted = new()
    {
        From = Pack,
        Return = Return.OfResistance(0.Ohms()),
        Clamps =
        [
            new()
            {
                Name = "D1",
                StandOffVoltage = 70.Volts(),
                BreakdownVoltage = Band.Of(77.8.Volts(), 86.Volts()),
                ClampingVoltage = new() { Voltage = 113.Volts(), Current = 13.3.Amperes() },
            },
        ],
        Loads = [new() { Name = "Converter", Current = 1.Amperes(), MaxVoltage = 85.Volts() }],
    };

    public static readonly Rail Alternative = new()
    {
        From = Pack,
        Return = Return.OfResistance(0.Ohms()),
        Clamps =
        [
            new()
            {
                Name = "D2",
                StandOffVoltage = 64.Volts(),
                BreakdownVoltage = Band.Of(71.1.Volts(), 78.6.Volts()),
                ClampingVoltage = new() { Voltage = 103.Volts(), Current = 14.6.Amperes() },
            },
        ],
        Loads = [new() { Name = "Converter", Current = 1.Amperes(), MaxVoltage = 85.Volts() }],
    };
}
