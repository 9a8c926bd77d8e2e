namespace RailRules.Tests.Cases.Boards;

/// <summary>case-009: 7.5 A blade fuse for a 50 W heater plus fans at 60 C. Invented, not for use.</summary>
[Board]
public static class Case009
{
    public static readonly Supply Unit = new() { Voltage = Band.Of(12.Volts(), 12.6.Volts()), CurrentLimit = new() { Level = 20.Amperes() } };

    public static readonly Rail Tool = new()
    {
        From = Unit,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 7.5.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                Characteristic = Characteristic.Iso8820Blade,
                DcVoltageRating = 32.Volts(),
                InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts() }],
                ReferenceAmbient = 25.Celsius(),
                Derating = [new(25.Celsius(), 1), new(60.Celsius(), 0.90)],
                OperatingTemperature = Band.Of((-40).Celsius(), 125.Celsius()), // assumed here; the case is silent
                Flammability = Flammability.V0, // assumed here; the case is silent
                ColdResistance = 0.Ohms(), // the case counts no drop
            },
            new Wire { Name = "Lead", Section = 0.75.SquareMillimeters(), Ampacity = 9.Amperes(), Resistance = 0.Ohms() },
        ],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = Band.Of(25.Celsius(), 60.Celsius()) },
        Loads =
        [
            new() { Name = "Heater", Power = 50.Watts(), MinVoltage = 10.Volts(), MaxVoltage = 15.Volts() }, // lowest and highest input voltages are assumed here
            new() { Name = "Fans", Current = 0.6.Amperes(), MaxVoltage = 15.Volts() },
        ],
    };
}
