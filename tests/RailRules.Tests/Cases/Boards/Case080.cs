namespace RailRules.Tests.Cases.Boards;

/// <summary>case-080: 2 A 16 V PTC not sold locally, 1.5 A 16 V fitted. Invented, not for use.</summary>
[Board]
public static class Case080
{
    /// <summary>12.6 V at rest behind 0.2 Ω of wiring: 63 A at most.</summary>
    public static readonly Battery Starter = new() { OpenCircuitVoltage = Band.Of(12.Volts(), 12.6.Volts()), ChargeVoltage = 14.4.Volts(), InternalResistance = 0.2.Ohms() };

    public static readonly Rail Sensor = new()
    {
        From = Starter,
        Path =
        [
            new ResettableFuse
            {
                Name = "F1",
                HoldCurrent = 1.5.Amperes(),
                TripCurrent = 3.Amperes(),
                ReferenceAmbient = 23.Celsius(),
                Derating = [new(23.Celsius(), 1), new(40.Celsius(), 0.88)],
                MaxVoltage = 16.Volts(),
                MaxFaultCurrent = 100.Amperes(),
                Flammability = Flammability.V0, // assumed here; the case is silent
                TimeToTrip = [new(8.Amperes(), 3.Seconds()), new(60.Amperes(), 30.Milliseconds())], // assumed here; the case is silent
            },
            new Wire { Name = "Lead", Ampacity = 3.Amperes(), Section = 0.34.SquareMillimeters() },
        ],
        Surroundings = new() { Ambient = Band.Of(23.Celsius(), 40.Celsius()) },
        Loads = [new() { Name = "Regulator", Current = 1.Amperes(), MaxVoltage = 20.Volts() }], // the highest input voltage is assumed here
    };
}
