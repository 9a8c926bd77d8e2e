namespace RailRules.Tests.Cases.Boards;

/// <summary>case-005: Braking pumps a 12 V bus to 34 V because the supply cannot sink current. Invented, not for use.</summary>
[Board]
public static class Case005
{
    /// <summary>An ordinary switching supply: it cannot sink current.</summary>
    public static readonly Supply Bench = new() { Voltage = 12.Volts(), ReverseCurrent = 0.Amperes() };

    /// <summary>The drive pumps its bus to 34 V when it brakes.</summary>
    public static readonly Rail DriveBus = new()
    {
        From = Bench,
        TransientMax = 34.Volts(),
        Capacitors = [new() { Name = "BulkCapacitor", Capacitance = 1000.Microfarads(), VoltageRating = 25.Volts() }],
    };

    public static readonly Rail Auxiliaries = new()
    {
        From = DriveBus,
        Path = [new Fuse { Name = "F1", RatedCurrent = 30.Amperes(), DcVoltageRating = 32.Volts() }],
    };
}
