namespace RailRules.Tests.Cases.Boards;

/// <summary>case-021: Fuse with 40 A interrupting rating downstream of supply output capacitors. Invented, not for use.</summary>
[Board]
public static class Case021
{
    /// <summary>Short-circuit-proof switching supply.</summary>
    public static readonly Supply Unit = new()
    {
        Voltage = Band.Of(5.Volts(), 5.25.Volts()),
        CurrentLimit = new() { Level = 14.Amperes(), Style = CurrentLimitStyle.ConstantCurrent, LimitedBy = LimitedBy.Hardware },
        OutputCapacitance = 2200.Microfarads(),
        OutputCapacitorEsr = 40.Milliohms(),
    };

    public static readonly Rail Lead = new()
    {
        From = Unit,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 5.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                DcVoltageRating = 63.Volts(),
                InterruptingRatings = [new() { Current = 40.Amperes(), Voltage = 63.Volts() }],
                MeltingIntegral = 2.AmpereSquaredSeconds(),
                ColdResistance = 10.Milliohms(),
                ReferenceAmbient = 25.Celsius(),
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
            new Wire { Name = "Cord", Length = 1.5.Meters(), Section = 0.75.SquareMillimeters(), Ampacity = 9.Amperes() },
        ],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Board", Current = 3.Amperes(), MaxVoltage = 5.5.Volts() }], // the highest input voltage is assumed here
    };
}
