namespace RailRules.Tests.Cases.Boards;

/// <summary>case-030: 3 A electronic breaker on 60 m of 0.75 mm2. Invented, not for use.</summary>
[Board]
public static class Case030
{
    /// <summary>20 A unit with 150 % peak.</summary>
    public static readonly Supply Unit = new()
    {
        Voltage = Band.Of(24.Volts(), 24.5.Volts()),
        ContinuousCurrent = 20.Amperes(),
        CurrentLimit = new() { Level = Band.Of(20.Amperes(), 30.Amperes()) },
    };

    public static readonly Rail Field = new()
    {
        From = Unit,
        Path =
        [
            new CircuitBreaker // electronic, set to 3 A
            {
                Name = "CB1",
                RatedCurrent = 3.Amperes(),
                ConventionalTripMultiple = 1.45,
                Resistance = 0.Ohms(), // the case counts no drop of it
                Curve = [new((1.45 * 3).Amperes(), null, 0.8.Seconds())],
                DcVoltageRating = 30.Volts(),
                InterruptingRatings = [new() { Current = 100.Amperes(), Voltage = 30.Volts() }],
                ReferenceAmbient = 25.Celsius(),
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
            new Wire { Name = "Cable", Length = 60.Meters(), Section = 0.75.SquareMillimeters(), Ampacity = 6.Amperes(), TemperatureLimit = 70.Celsius(), Surroundings = new() { Ambient = 40.Celsius() } },
        ],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Actuator", Current = 0.8.Amperes(), MinVoltage = 20.4.Volts(), MaxVoltage = 30.Volts() }], // the highest input voltage is assumed here
    };
}
