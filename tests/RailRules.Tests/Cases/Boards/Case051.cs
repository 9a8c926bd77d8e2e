namespace RailRules.Tests.Cases.Boards;

/// <summary>case-051: Limit set to 2.52 A, yet restart with 2.5 A connected retries for ever. Invented, not for use.</summary>
[Board]
public static class Case051
{
    public static readonly Supply Bench = new() { Voltage = 12.Volts() }; // the case does not state the voltage

    public static readonly Rail Load = new()
    {
        From = Bench,
        Path =
        [
            new ElectronicFuse { Name = "U1", TripLevel = 2.52.Amperes(), StartCurrent = 2.4.Amperes(), Retry = Retry.Forever },
        ],
        Loads = [new() { Name = "Constant", Current = 2.5.Amperes(), EnablesAt = EnablesAt.Zero }],
    };
}
