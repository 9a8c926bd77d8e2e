namespace RailRules.Tests.Cases.Boards;

/// <summary>case-003: 32 V automotive fuse on a 5 V rail: do the amps have to be converted?. Invented, not for use.</summary>
[Board]
public static class Case003
{
    /// <summary>20 A unit that limits at 110 %.</summary>
    public static readonly Supply Unit = new() { Voltage = 5.Volts(), CurrentLimit = new() { Level = 22.Amperes() } };

    public static readonly Rail Strip = new()
    {
        From = Unit,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 15.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                DcVoltageRating = 32.Volts(),
                InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts() }],
                ReferenceAmbient = 25.Celsius(),
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
            new Wire { Name = "Lead", Section = 2.5.SquareMillimeters(), Ampacity = 24.Amperes() },
        ],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Leds", Current = 10.Amperes(), MaxVoltage = 6.Volts() }], // the highest input voltage is assumed here; the case is silent
    };
}
