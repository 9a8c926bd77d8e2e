namespace RailRules.Tests.Documentation.Examples;

/// <summary>Invented, not for use.</summary>
[Board]
public static class Rail0403
{
    static readonly Supply Plant = new()
    {
        Voltage = Band.Of(43.Volts(), 54.Volts(), 60.Volts()),
        SourceResistance = 5.Milliohms(),
        SourceInductance = 2.Microhenries(),
    };

    static readonly ElectronicFuse Heron = new()
    {
        MaxVoltage = 80.Volts(),
        TripLevel = Band.Of(18.Amperes(), 22.Amperes()),
        ShortCircuitLevel = Band.Of(45.Amperes(), 55.Amperes()),
        ShortCircuitResponse = Band.Of(0.4.Microseconds(), 1.Microseconds()),
        StartCurrent = Band.Of(2.Amperes(), 2.4.Amperes()),
        StartTimer = Band.Of(18.Milliseconds(), 28.Milliseconds()),
        SafeOperatingArea = new()
        {
            Guaranteed = true,
            Points =
            [
                new(60.Volts(), 300.Amperes(), 1.Microseconds()),
                new(60.Volts(), 120.Amperes(), 10.Microseconds()),
                new(60.Volts(), 12.Amperes(), 1.Milliseconds()),
                new(60.Volts(), 4.Amperes(), 10.Milliseconds()),
                new(60.Volts(), 1.Amperes(), 100.Milliseconds()),
            ],
        },
        JunctionTemperatureLimit = 150.Celsius(),
        CaseTemperature = 85.Celsius(),
        MaxDissipation = 2.5.Watts(),
        Retry = Retry.Forever,
        RetryInterval = Band.Of(1.5.Seconds(), 2.Seconds()),
        AvalancheEnergy = 40.Millijoules(),
    };

    static readonly Rail Sled = new()
    {
        From = Plant,
        Path = [Heron.As("U1")],
        Return = Return.OfResistance(1.Milliohms()),
        Loads = [new() { Name = "Blade", Power = 600.Watts(), InputCapacitance = 470.Microfarads(), EnablesAt = EnablesAt.PowerGood }],
    };

    static readonly Switch Relay = new() { RatedCurrent = 40.Amperes(), MakingCurrent = 120.Amperes(), BreakingCurrent = 10.Amperes(), OnResistance = 1.Milliohms() };

    static readonly Rail Heater = new()
    {
        From = Plant,
        Path = [Relay.As("K1")],
        Return = Return.OfResistance(1.Milliohms()),
        Loads = [new() { Name = "Element", Resistance = 4.Ohms() }],
    };
}
