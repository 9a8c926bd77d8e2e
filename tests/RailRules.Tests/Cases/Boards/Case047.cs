namespace RailRules.Tests.Cases.Boards;

/// <summary>case-047: 50 mA PTC with 40 mA worst-case load. Invented, not for use.</summary>
[Board]
public static class Case047
{
    public static readonly Supply Unit = new() { Voltage = 12.Volts(), CurrentLimit = new() { Level = 2.Amperes() } };

    public static readonly Rail Relays = new()
    {
        From = Unit,
        Path =
        [
            new ResettableFuse
            {
                Name = "F1",
                HoldCurrent = 50.Milliamperes(),
                TripCurrent = 0.1.Amperes(),
                ReferenceAmbient = 23.Celsius(),
                Derating = [new(23.Celsius(), 1), new(40.Celsius(), 0.87)],
                MaxVoltage = 60.Volts(),
                MaxFaultCurrent = 10.Amperes(),
            },
        ],
        Surroundings = new() { Ambient = Band.Of(23.Celsius(), 40.Celsius()) },
        Loads = [new() { Name = "Board", Current = 40.Milliamperes(), MaxVoltage = 16.Volts() }], // the highest input voltage is assumed here
    };

    public static readonly Rail Relays23 = new()
    {
        From = Unit,
        Path =
        [
            new ResettableFuse
            {
                Name = "F2",
                HoldCurrent = 50.Milliamperes(),
                TripCurrent = 0.1.Amperes(),
                ReferenceAmbient = 23.Celsius(),
                Derating = [new(23.Celsius(), 1), new(40.Celsius(), 0.87)],
                MaxVoltage = 60.Volts(),
                MaxFaultCurrent = 10.Amperes(),
            },
        ],
        Surroundings = new() { Ambient = 23.Celsius() },
        Loads = [new() { Name = "Board", Current = 40.Milliamperes(), MaxVoltage = 16.Volts() }], // the highest input voltage is assumed here
    };
}
