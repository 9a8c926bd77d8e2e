namespace RailRules.Tests.Cases.Boards;

/// <summary>case-017: 10 mA counter behind the smallest blade fuse available, 1 A. Invented, not for use.</summary>
[Board]
public static class Case017
{
    /// <summary>500 A prospective.</summary>
    public static readonly Battery Starter = new()
    {
        OpenCircuitVoltage = Band.Of(12.Volts(), 12.8.Volts()),
        ChargeVoltage = 14.4.Volts(),
        InternalResistance = (12.8 / 500).Ohms(), // a battery's fault starts from its open-circuit voltage
    };

    public static readonly Rail Counter = new()
    {
        From = Starter,
        Path =
        [
            new Fuse // no derating curve is supplied
            {
                Name = "F1",
                RatedCurrent = 1.Amperes(),
                RatingBasis = RatingBasis.CarriesThreeQuarters,
                DcVoltageRating = 32.Volts(),
                InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts() }],
                Flammability = Flammability.V0, // assumed here; the case is silent
                OperatingTemperature = Band.Of((-40).Celsius(), 125.Celsius()), // assumed here; the case is silent
            },
            new Wire { Name = "Lead", Section = 0.5.SquareMillimeters(), Ampacity = 7.Amperes() },
        ],
        Loads = [new() { Name = "Meter", Current = 10.Milliamperes(), MaxVoltage = 20.Volts() }], // the highest input voltage is assumed here
    };
}
