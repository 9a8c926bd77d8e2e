using UnitsNet;

namespace RailRules.Tests.Cases.Boards;

/// <summary>case-035: 24 AWG sensor branch longer than 150 mm under a 5 A fuse, fed by a limited regulator. Invented, not for use.</summary>
[Board]
public static class Case035
{
    /// <summary>15 mΩ with its leads.</summary>
    public static readonly Battery House = new() { OpenCircuitVoltage = Band.Of(12.Volts(), 13.2.Volts()), ChargeVoltage = 14.6.Volts(), InternalResistance = 15.Milliohms() };

    public static readonly Rail Feed = new()
    {
        From = House,
        Path =
        [
            new Fuse
            {
                Name = "F_UP",
                RatedCurrent = 5.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                DcVoltageRating = 32.Volts(),
                InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts() }],
                ReferenceAmbient = 25.Celsius(),
                Flammability = Flammability.V0, // assumed here; the case is silent
            },
        ],
        Return = Return.OfResistance(0.Ohms()), // the leads are in the battery's 15 mΩ
        Surroundings = new() { Ambient = 25.Celsius() },
    };

    /// <summary>Its limit does not depend on software. Output, efficiency (linear, 5 V of 14.6 V) and its input voltages are assumed here; the case is silent.</summary>
    public static readonly Converter Regulator = new()
    {
        Input = Feed,
        Output = 5.Volts(),
        Efficiency = Ratio.FromDecimalFractions(5 / 14.6),
        CurrentLimit = new() { Level = 0.6.Amperes(), Style = CurrentLimitStyle.ConstantCurrent, LimitedBy = LimitedBy.Hardware },
        InputMinVoltage = 7.Volts(),
        InputMaxVoltage = 40.Volts(),
    };

    public static readonly Rail Sensor = new()
    {
        From = Regulator,
        Path = [new Wire { Name = "Lead", Length = 1.2.Meters(), Section = 0.205.SquareMillimeters(), Ampacity = 2.1.Amperes() }],
        Return = Return.Mirrored,
        Surroundings = new() { Ambient = 25.Celsius() },
        Loads = [new() { Name = "Probe", Current = 50.Milliamperes(), MaxVoltage = 6.Volts() }],
    };
}
