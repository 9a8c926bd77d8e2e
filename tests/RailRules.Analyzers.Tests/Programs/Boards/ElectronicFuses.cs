using RailRules;
using UnitsNet;

namespace Programs.Boards.ElectronicFuses;

/// <summary>Data of an electronic fuse from its resistors.</summary>
public static class P
{
    public static readonly ElectronicFuse Hot = Make(sense: 2.Milliohms(), timer: 10.Nanofarads());
    public static readonly ElectronicFuse Twice = Make(sense: 1.Milliohms(), timer: 22.Nanofarads());
    public static readonly Rail Slot = new() { Path = [Hot.As("U1")] };

    private static ElectronicFuse Make(ElectricResistance sense, ElectricCapacitance timer)
    {
        var level = 25.Millivolts() / sense;
        return new ElectronicFuse
        {
            TripLevel = Band.Of(level * 0.92, level, level * 1.08),
            TripDelay = (timer.Nanofarads * 0.123).Milliseconds(),
            ShortCircuitLevel = level * 2.2,
            SafeOperatingArea = new()
            {
                Points = [new(60.Volts(), 4.Amperes(), 1.Milliseconds()), new(60.Volts(), 0.9.Amperes(), 10.Milliseconds(), 85.Celsius())],
                Guaranteed = false,
            },
            Retry = Retry.LatchOff,
        };
    }
}
