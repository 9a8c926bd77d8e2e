namespace RailRules.Tests.Cases.Boards;

/// <summary>case-001: Low-voltage blade fuse supplied for a 13-cell traction pack. Invented, not for use.</summary>
[Board]
public static class Case001
{
    /// <summary>13 cells of 4.2 V full; 40 mΩ a cell, five in parallel.</summary>
    public static readonly Battery Pack = new()
    {
        OpenCircuitVoltage = Band.Of((13 * 3.0).Volts(), 48.Volts(), (13 * 4.2).Volts()),
        InternalResistance = (13 * 0.040 / 5).Ohms(),
    };

    public static readonly Rail Drive = new()
    {
        From = Pack,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 35.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                DcVoltageRating = 32.Volts(),
                InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts() }],
                ReferenceAmbient = 25.Celsius(),
            },
        ],
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Controller", Current = 30.Amperes() }],
    };
}
