using RailRules;

namespace Lockhouse.Unsafe;

/// <summary>The parts of the cabin, one of them with a slip of the pen. All invented, not for use.</summary>
public static class Parts
{
    private const string Invented = "invented, not for use";

    /// <summary>A sound part for the places where something else is wrong.</summary>
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
        OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
        Flammability = Flammability.V0,
        Qualifications = ["Lock-1"],
    };

    /// <summary>Too small for a sled.</summary>
    public static readonly Fuse Reed20 = Reed25 with { PartNumber = "Reed20", RatedCurrent = 20.Amperes() };

    /// <summary>Made for 58 V systems, which this is not.</summary>
    public static readonly Fuse Reed25Low = Reed25 with { PartNumber = "Reed25Low", DcVoltageRating = 58.Volts() };

    /// <summary>Breaks no more than 1 kA.</summary>
    public static readonly Fuse Reed25Weak = Reed25 with
    {
        PartNumber = "Reed25Weak",
        InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
    };

    /// <summary>Proven on a bench without inductance.</summary>
    public static readonly Fuse Reed25Quick = Reed25 with
    {
        PartNumber = "Reed25Quick",
        InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 100.Microseconds() }],
    };

    /// <summary>Sound itself; purchasing may fit the one for 58 V instead.</summary>
    public static readonly Fuse Reed25OrLow = Reed25 with { PartNumber = "Reed25OrLow", Alternates = [Reed25Low] };

    /// <summary>Nobody wrote down where its data come from.</summary>
    public static readonly Fuse Hearsay25 = Reed25 with { PartNumber = "Hearsay25", Citation = null };

    /// <summary>A fuse for the mains.</summary>
    public static readonly Fuse Mains25 = Reed25 with { PartNumber = "Mains25", DcVoltageRating = null, AcVoltageRating = 250.Volts(), InterruptingRatings = [] };

    /// <summary>Its data sheet gives no derating curve.</summary>
    public static readonly Fuse Rush25 = Reed25 with { PartNumber = "Rush25", Derating = [] };

    /// <summary>Not for the cold.</summary>
    public static readonly Fuse Moss25 = Reed25 with { PartNumber = "Moss25", OperatingTemperature = Band.Of(0.Celsius(), 70.Celsius()) };

    /// <summary>Only a preliminary data sheet: no voltage rating at all.</summary>
    public static readonly Fuse Alder25 = Reed25 with { PartNumber = "Alder25", DcVoltageRating = null };

    /// <summary>Its body burns.</summary>
    public static readonly Fuse Tinder25 = Reed25 with { PartNumber = "Tinder25", Flammability = Flammability.HB };

    /// <summary>Held by a clip.</summary>
    public static readonly Fuse Clip25 = Reed25 with { PartNumber = "Clip25", Joint = Joint.Clip };

    /// <summary>Takes its time.</summary>
    public static readonly Fuse Lag25 = Reed25 with
    {
        PartNumber = "Lag25",
        MeltingIntegral = 3500.AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = 6000.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 2.Milliseconds() }],
        Curve = [new(33.8.Amperes(), 120.Seconds(), 3600.Seconds()), new(75.Amperes(), 10.Seconds(), 90.Seconds()), new(150.Amperes(), 1.Seconds(), 8.Seconds()), new(600.Amperes(), 12.Milliseconds(), 60.Milliseconds())],
    };

    /// <summary>Opens in time at both ends of its curve, and takes its time between them.</summary>
    public static readonly Fuse Idle63 = Reed25 with
    {
        PartNumber = "Idle63",
        RatedCurrent = 63.Amperes(),
        MeltingIntegral = 3000.AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = 9000.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
        Curve = [new(101.Amperes(), 600.Seconds(), 3600.Seconds()), new(200.Amperes(), 60.Seconds(), 600.Seconds()), new(400.Amperes(), 1.Seconds(), 30.Seconds()), new(1.Kiloamperes(), 5.Milliseconds(), 500.Milliseconds())],
    };

    /// <summary>A diode that lets nothing back from the bus; the fuse before it is slow for it.</summary>
    public static readonly BlockingDiode Sluice300 = new()
    {
        PartNumber = "Sluice300",
        Citation = Invented,
        RatedCurrent = 300.Amperes(),
        ForwardDrop = 0.6.Volts(),
        ReverseVoltage = 100.Volts(),
        SurgeIntegral = 20000.AmpereSquaredSeconds(),
        OperatingTemperature = Band.Of((-40).Celsius(), 125.Celsius()),
    };

    /// <summary>A breaker that breaks in one direction only.</summary>
    public static readonly CircuitBreaker Lock25 = new()
    {
        PartNumber = "Lock25",
        Citation = Invented,
        RatedCurrent = 25.Amperes(),
        DcVoltageRating = 80.Volts(),
        InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
        ReferenceAmbient = 25.Celsius(),
        Derating = [new(25.Celsius(), 1.00), new(55.Celsius(), 0.90)],
        Resistance = 4.Milliohms(),
        MagneticTrip = Band.Of(150.Amperes(), 250.Amperes()),
        Curve = [new(36.3.Amperes(), 20.Seconds(), 3600.Seconds()), new(75.Amperes(), 1.Seconds(), 10.Seconds()), new(90.Amperes(), 0.2.Seconds(), 1.Seconds()), new(125.Amperes(), 50.Milliseconds(), 300.Milliseconds()), new(250.Amperes(), null, 15.Milliseconds())],
        ClearingIntegrals = [new() { Value = 4000.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
        Polarized = true,
        Flammability = Flammability.V0,
        OperatingTemperature = Band.Of((-25).Celsius(), 70.Celsius()),
    };

    /// <summary>A resettable fuse that holds the load at room temperature only.</summary>
    public static readonly ResettableFuse Fern15 = new()
    {
        PartNumber = "Fern15",
        Citation = Invented,
        HoldCurrent = 15.Amperes(),
        TripCurrent = 30.Amperes(),
        ReferenceAmbient = 25.Celsius(),
        Derating = [new((-20).Celsius(), 1.20), new(25.Celsius(), 1.00), new(55.Celsius(), 0.75)],
        MaxVoltage = 80.Volts(),
        MaxFaultCurrent = 20.Kiloamperes(),
        TimeToTrip = [new(30.Amperes(), 5.Seconds()), new(60.Amperes(), 0.5.Seconds()), new(500.Amperes(), 5.Milliseconds()), new(2.Kiloamperes(), 50.Microseconds())],
        Resistance = 4.Milliohms(),
        Flammability = Flammability.V0,
        OperatingTemperature = Band.Of((-40).Celsius(), 85.Celsius()),
    };

    /// <summary>A thermistor that limits only while it is cold.</summary>
    public static readonly InrushLimiter Warm20 = new()
    {
        PartNumber = "Warm20",
        Citation = Invented,
        ColdResistance = Band.Of(0.8.Ohms(), 1.2.Ohms()),
        HotResistance = Band.Of(20.Milliohms(), 30.Milliohms()),
        RecoveryTime = 90.Seconds(),
        MaxEnergy = 40.Joules(),
        MaxCurrent = 20.Amperes(),
        Derating = [new(25.Celsius(), 1.00), new(65.Celsius(), 1.00), new(125.Celsius(), 0.40)],
    };

    /// <summary>200 A, feeds the whole cabin.</summary>
    public static readonly Fuse Weir200 = Reed25 with
    {
        PartNumber = "Weir200",
        RatedCurrent = 200.Amperes(),
        InterruptingRatings = [new() { Current = 20.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
        MeltingIntegral = 21000.AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = 64000.AmpereSquaredSeconds(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }],
        Curve =
        [
            new(270.Amperes(), 300.Seconds(), 3600.Seconds()), new(400.Amperes(), 20.Seconds(), 400.Seconds()), new(800.Amperes(), 1.Seconds(), 15.Seconds()),
            new(1.5.Kiloamperes(), 60.Milliseconds(), 600.Milliseconds()), new(4.Kiloamperes(), 1.5.Milliseconds(), 10.Milliseconds()),
        ],
        ColdResistance = Band.Of(0.28.Milliohms(), 0.35.Milliohms(), 0.42.Milliohms()),
    };

    /// <summary>The highest resistance was typed where the lowest belongs.</summary>
    public static readonly Trace SwappedTrace = new()
    {
        Resistance = Band.Of(1.5.Milliohms(), 0.5.Milliohms()), // RAIL0003
        Ampacity = 40.Amperes(),
    };

    /// <summary>A hot-swap switch whose timer is made for a quarter of the capacitance.</summary>
    public static readonly ElectronicFuse Heron20 = new()
    {
        PartNumber = "Heron20",
        Citation = Invented,
        MaxVoltage = 80.Volts(),
        TripLevel = Band.Of(18.Amperes(), 20.Amperes(), 22.Amperes()),
        TripDelay = Band.Of(0.8.Milliseconds(), 1.Milliseconds(), 1.3.Milliseconds()),
        ShortCircuitLevel = Band.Of(45.Amperes(), 50.Amperes(), 55.Amperes()),
        ShortCircuitResponse = Band.Of(0.4.Microseconds(), 0.8.Microseconds(), 1.2.Microseconds()),
        MaxFaultCurrent = 15.Kiloamperes(),
        StartCurrent = Band.Of(2.Amperes(), 2.2.Amperes(), 2.4.Amperes()),
        StartTimer = Band.Of(18.Milliseconds(), 22.Milliseconds(), 28.Milliseconds()),
        OnResistance = Band.Of(2.Milliohms(), 3.Milliohms(), 5.Milliohms()),
        SafeOperatingArea = new()
        {
            Guaranteed = true,
            Points =
            [
                new(20.Volts(), 400.Amperes(), 1.Microseconds()),
                new(60.Volts(), 300.Amperes(), 1.Microseconds()),
                new(20.Volts(), 300.Amperes(), 10.Microseconds()),
                new(60.Volts(), 120.Amperes(), 10.Microseconds()),
                new(20.Volts(), 40.Amperes(), 1.Milliseconds()),
                new(60.Volts(), 15.Amperes(), 1.Milliseconds()),
                new(20.Volts(), 18.Amperes(), 10.Milliseconds()),
                new(60.Volts(), 6.Amperes(), 10.Milliseconds()),
                new(20.Volts(), 12.Amperes(), 100.Milliseconds()),
                new(60.Volts(), 4.Amperes(), 100.Milliseconds()),
            ],
        },
        JunctionTemperatureLimit = 150.Celsius(),
        AvalancheEnergy = 120.Millijoules(),
        Retry = Retry.LatchOff,
        ReverseBlocking = false,
        OperatingTemperature = Band.Of((-40).Celsius(), 125.Celsius()),
        Flammability = Flammability.V0,
    };

    /// <summary>Its transistor is good for its starts, but not for one into a short circuit until the timer ends.</summary>
    public static readonly ElectronicFuse Egret20 = Heron20 with
    {
        PartNumber = "Egret20",
        SafeOperatingArea = new()
        {
            Guaranteed = true,
            Points =
            [
                new(20.Volts(), 400.Amperes(), 1.Microseconds()),
                new(60.Volts(), 300.Amperes(), 1.Microseconds()),
                new(20.Volts(), 300.Amperes(), 10.Microseconds()),
                new(60.Volts(), 120.Amperes(), 10.Microseconds()),
                new(20.Volts(), 36.Amperes(), 1.Milliseconds()),
                new(60.Volts(), 12.Amperes(), 1.Milliseconds()),
                new(20.Volts(), 6.Amperes(), 10.Milliseconds()),
                new(60.Volts(), 2.Amperes(), 10.Milliseconds()),
                new(20.Volts(), 2.4.Amperes(), 100.Milliseconds()),
                new(60.Volts(), 0.8.Amperes(), 100.Milliseconds()),
            ],
        },
    };
}
