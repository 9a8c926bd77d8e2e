using RailRules;

namespace Programs.Boards.SimpleRail;

/// <summary>One supply, one fuse, one load.</summary>
public static class P
{
    public static readonly Supply Bench = new() { Voltage = Band.Of(47.5.Volts(), 48.Volts(), 48.5.Volts()), ContinuousCurrent = 25.Amperes() };
    public static readonly Rail Main = new()
    {
        From = Bench,
        Path = [new Fuse { PartNumber = "Marl10", RatedCurrent = 10.Amperes(), DcVoltageRating = 80.Volts() }.As("F1")],
        Return = Return.Mirrored,
        Loads = [new() { Power = 200.Watts(), MinVoltage = 40.Volts() }],
    };
}
