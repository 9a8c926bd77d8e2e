namespace RailRules.Tests.Cases.Boards;

/// <summary>case-007: Regeneration into a 6-cell pack with no disconnect in the path. Invented, not for use.</summary>
[Board]
public static class Case007
{
    /// <summary>Six cells, no switch in series: the pack takes the regenerated 25 A and rises by its resistance, pack and leads 30 mΩ.</summary>
    public static readonly Battery Pack = new()
    {
        OpenCircuitVoltage = Band.Of((6 * 3.0).Volts(), 25.2.Volts()),
        InternalResistance = 30.Milliohms(),
        TransientMax = (25.2 + (25 * 0.030)).Volts(),
    };

    public static readonly Rail Drive = new()
    {
        From = Pack,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 60.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                Curve = [new(81.Amperes(), null, 3600.Seconds()), new(600.Amperes(), null, 0.3.Seconds()), new(1.Kiloamperes(), null, 50.Milliseconds())], // assumed here; the case is silent
                DcVoltageRating = 32.Volts(),
                InterruptingRatings = [new() { Current = 2.Kiloamperes(), Voltage = 32.Volts() }],
                ReferenceAmbient = 25.Celsius(),
                ColdResistance = 0.Ohms(), // the case counts pack and leads only
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
            new Wire { Name = "Lead", Section = 16.SquareMillimeters(), Ampacity = 80.Amperes(), Resistance = 0.Ohms() }, // in the pack's 30 mΩ
        ],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 25.Celsius() },
        Capacitors = [new() { Name = "BusCapacitor", VoltageRating = 35.Volts() }],
        Loads = [new() { Name = "Motor", Current = 40.Amperes(), Regenerates = true, RegeneratedCurrent = 25.Amperes(), MaxVoltage = 35.Volts() }],
    };
}
