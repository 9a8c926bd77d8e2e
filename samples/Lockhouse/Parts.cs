using RailRules;

namespace Lockhouse;

/// <summary>The parts of the cabin. All invented, not for use.</summary>
public static class Parts
{
    private const string Invented = "invented, not for use";

    /// <summary>Fuses for the 54 V plant: 80 V DC, UL style ratings at 25 °C.</summary>
    public static class Fuses
    {
        /// <summary>25 A, soldered, the second source of Reed25: a little more resistance, a little less melting I²t.</summary>
        public static readonly Fuse Sedge25 = new()
        {
            PartNumber = "Sedge25",
            Citation = Invented,
            RatedCurrent = 25.Amperes(),
            DcVoltageRating = 80.Volts(),
            InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
            MeltingIntegral = 300.AmpereSquaredSeconds(),
            ClearingIntegrals = [new() { Value = 850.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
            Curve =
            [
                new(33.8.Amperes(), 50.Seconds(), 3600.Seconds()), new(50.Amperes(), 0.9.Seconds(), 50.Seconds()), new(75.Amperes(), 0.14.Seconds(), 1.4.Seconds()),
                new(125.Amperes(), 28.Milliseconds(), 230.Milliseconds()), new(250.Amperes(), 5.5.Milliseconds(), 23.Milliseconds()), new(1.Kiloamperes(), 0.33.Milliseconds(), 1.4.Milliseconds()),
            ],
            RatingBasis = RatingBasis.CarriesThreeQuarters,
            ReferenceAmbient = 25.Celsius(),
            Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.86), new(85.Celsius(), 0.71)],
            ColdResistance = Band.Of(2.3.Milliohms(), 2.8.Milliohms(), 3.4.Milliohms()),
            OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
            Flammability = Flammability.V0,
            Joint = Joint.Soldered,
        };

        /// <summary>25 A, soldered, one a sled.</summary>
        public static readonly Fuse Reed25 = new()
        {
            PartNumber = "Reed25",
            Citation = Invented,
            RatedCurrent = 25.Amperes(),
            DcVoltageRating = 80.Volts(),
            InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
            MeltingIntegral = 320.AmpereSquaredSeconds(),
            ClearingIntegrals = [new() { Value = 900.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
            Curve =
            [
                new(33.8.Amperes(), 60.Seconds(), 3600.Seconds()), new(50.Amperes(), 1.Seconds(), 60.Seconds()), new(75.Amperes(), 0.15.Seconds(), 1.5.Seconds()),
                new(125.Amperes(), 30.Milliseconds(), 250.Milliseconds()), new(250.Amperes(), 6.Milliseconds(), 25.Milliseconds()), new(1.Kiloamperes(), 0.35.Milliseconds(), 1.5.Milliseconds()),
            ],
            RatingBasis = RatingBasis.CarriesThreeQuarters,
            ReferenceAmbient = 25.Celsius(),
            Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.86), new(85.Celsius(), 0.71)],
            ColdResistance = Band.Of(2.1.Milliohms(), 2.6.Milliohms(), 3.1.Milliohms()),
            VoltageDrop = Band.Of(85.Millivolts(), 110.Millivolts()),
            TemperatureRise = 65.Kelvins(),
            BodyTemperatureLimit = 125.Celsius(),
            OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
            Flammability = Flammability.V0,
            Joint = Joint.Soldered,
            Alternates = [Sedge25], // purchasing may fit either: both are checked in every place
        };

        /// <summary>200 A, bolted, feeds the whole cabin.</summary>
        public static readonly Fuse Weir200 = new()
        {
            PartNumber = "Weir200",
            Citation = Invented,
            RatedCurrent = 200.Amperes(),
            DcVoltageRating = 80.Volts(),
            InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
            MeltingIntegral = 21000.AmpereSquaredSeconds(),
            ClearingIntegrals = [new() { Value = 64000.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
            Curve =
            [
                new(270.Amperes(), 300.Seconds(), 3600.Seconds()), new(400.Amperes(), 20.Seconds(), 400.Seconds()), new(800.Amperes(), 1.Seconds(), 15.Seconds()),
                new(1.5.Kiloamperes(), 60.Milliseconds(), 600.Milliseconds()), new(4.Kiloamperes(), 1.5.Milliseconds(), 10.Milliseconds()),
            ],
            RatingBasis = RatingBasis.CarriesThreeQuarters,
            ReferenceAmbient = 25.Celsius(),
            Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.86), new(85.Celsius(), 0.71)],
            ColdResistance = Band.Of(0.28.Milliohms(), 0.35.Milliohms(), 0.42.Milliohms()),
            VoltageDrop = Band.Of(80.Millivolts(), 110.Millivolts()),
            TemperatureRise = 60.Kelvins(),
            BodyTemperatureLimit = 130.Celsius(),
            OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
            Flammability = Flammability.NonCombustible,
            Joint = Joint.BoltedLocked,
        };
    }
}
