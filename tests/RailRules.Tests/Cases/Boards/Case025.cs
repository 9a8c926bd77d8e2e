namespace RailRules.Tests.Cases.Boards;

/// <summary>case-025: 10 uF behind a 3.5 A fast fuse. Invented, not for use.</summary>
[Board]
public static class Case025
{
    public static readonly Supply Unit = new() { Voltage = Band.Of(12.Volts(), 12.6.Volts()), CurrentLimit = new() { Level = 30.Amperes() } };

    public static readonly Rail Branch = new()
    {
        From = Unit,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 3.5.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                Curve = [new(4.7.Amperes(), null, 3600.Seconds()), new(7.Amperes(), null, 5.Seconds()), new(14.Amperes(), null, 0.2.Seconds()), new(35.Amperes(), null, 10.Milliseconds())], // assumed here; the case is silent
                DcVoltageRating = 63.Volts(),
                InterruptingRatings = [new() { Current = 50.Amperes(), Voltage = 63.Volts() }],
                MeltingIntegral = 4.AmpereSquaredSeconds(),
                ReferenceAmbient = 25.Celsius(),
                ColdResistance = 0.Ohms(), // in the 0.2 Ω of the return
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
            new Trace { Name = "Copper", Width = 3.Millimeters(), Thickness = 35.Micrometers(), Ampacity = 4.Amperes(), Resistance = 0.Ohms() },
        ],
        Return = Return.OfResistance(0.2.Ohms()), // leads and fuse
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Sensor", Current = 0.3.Amperes(), InputCapacitance = 10.Microfarads(), InputCapacitorEsr = 0.Ohms(), StartsInLife = 100_000, MaxVoltage = 16.Volts() }], // the highest input voltage is assumed here
    };

    /// <summary>The live supply at its nominal voltage: what limits it acts later than the capacitor is full. Half of the 0.2 Ω of leads and fuse is in it, half in the capacitor.</summary>
    public static readonly Supply Live = new() { Voltage = 12.Volts(), SourceResistance = 0.1.Ohms(), CurrentLimit = new() { Level = 30.Amperes(), Response = 0.1.Milliseconds() } };

    public static readonly Rail PlugIn = new()
    {
        From = Live,
        Path =
        [
            new Fuse
            {
                Name = "F1",
                RatedCurrent = 3.5.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                Curve = [new(4.7.Amperes(), null, 3600.Seconds()), new(7.Amperes(), null, 5.Seconds()), new(14.Amperes(), null, 0.2.Seconds()), new(35.Amperes(), null, 10.Milliseconds())], // assumed here; the case is silent
                DcVoltageRating = 63.Volts(),
                InterruptingRatings = [new() { Current = 50.Amperes(), Voltage = 63.Volts() }],
                MeltingIntegral = 4.AmpereSquaredSeconds(),
                ReferenceAmbient = 25.Celsius(),
                ColdResistance = 0.Ohms(), // in the 0.2 Ω of the return
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
            new Trace { Name = "Copper", Width = 3.Millimeters(), Thickness = 35.Micrometers(), Ampacity = 4.Amperes(), Resistance = 0.Ohms() },
        ],
        Return = Return.OfResistance(0.Ohms()), // half in the source, half in the capacitor
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Sensor", Current = 0.3.Amperes(), InputCapacitance = 10.Microfarads(), InputCapacitorEsr = 0.1.Ohms(), StartsInLife = 100_000, MaxVoltage = 16.Volts() }], // the highest input voltage is assumed here
    };
}
