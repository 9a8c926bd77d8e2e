using RailRules;

namespace Lockhouse.Unsafe;

/// <summary>The river-lock control cabin with one mistake a rule; the comment at the end of a line names it. All data invented, not for use.</summary>
[Board]
[Waiver("RAIL0201", On = nameof(SledWaived), Reason = "runs at half load until the larger fuse arrives", ApprovedBy = "protection engineer")]
[Waiver("RAIL0201", On = nameof(SledTwice), Reason = "was a 20 A fuse once", ApprovedBy = "protection engineer")] // RAIL0008
public static class LockhouseShelf
{
    private static readonly Connector MainLug = new() { ContactRating = 250.Amperes(), ContactResistance = Band.Of(0.05.Milliohms(), 0.2.Milliohms()), Flammability = Flammability.V0 };
    private static readonly Busbar MainBusbar = new() { Resistance = 0.2.Milliohms(), Section = 75.SquareMillimeters(), Ampacity = 300.Amperes(), TemperatureLimit = 90.Celsius() };
    private static readonly Trace SledTrace = new() { Resistance = 1.5.Milliohms(), Width = 8.Millimeters(), Thickness = 105.Micrometers(), Inner = false, TemperatureLimit = 105.Celsius() };
    private static readonly Connector SledConnector = new() { ContactRating = 30.Amperes(), ContactResistance = Band.Of(0.5.Milliohms(), 2.Milliohms()), Flammability = Flammability.V0 };
    private static readonly Wire LampCable = new() { Length = 4.Meters(), Section = 1.5.SquareMillimeters(), Ampacity = 16.Amperes(), TemperatureLimit = 70.Celsius() };
    private static readonly Load Sled = new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() };

    /// <summary>The air in the cabin.</summary>
    public static readonly Surroundings Cabin = new()
    {
        Ambient = Band.Of((-5).Celsius(), 25.Celsius(), 55.Celsius()),
        Altitude = 850.Meters(),
    };

    /// <summary>Battery-backed plant.</summary>
    public static readonly Supply Plant = new()
    {
        Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()),
        TransientMax = 60.Volts(),
        SourceResistance = Band.Of(5.Milliohms(), 6.Milliohms(), 9.Milliohms()),
        ProspectiveFault = new() { Current = Band.Of(6.3.Kiloamperes(), 11.4.Kiloamperes()), TimeConstant = 1.Milliseconds() },
        ContinuousCurrent = 900.Amperes(),
        Earthing = Earthing.Negative,
    };

    public static readonly Rail Bus = new()
    {
        From = Plant,
        Path = [MainLug, Parts.Weir200.As("F1"), MainBusbar],
        Return = Return.Mirrored,
        Surroundings = Cabin,
    };

    public static readonly Rail SledOvervoltage = new()
    {
        From = Bus,
        Path = [Parts.Reed25Low.As("F11"), SledTrace, SledConnector], // RAIL0101
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledMains = new()
    {
        From = Bus,
        Path = [Parts.Mains25.As("F12"), SledTrace, SledConnector], // RAIL0102
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledOverloaded = new()
    {
        From = Bus,
        Path = [Parts.Reed20.As("F13"), SledTrace, SledConnector], // RAIL0201
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledUnderated = new()
    {
        From = Bus,
        Path = [Parts.Rush25.As("F14"), SledTrace, SledConnector], // RAIL0202
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledFrozen = new()
    {
        From = Bus,
        Path = [Parts.Moss25.As("F15"), SledTrace, SledConnector], // RAIL0203
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledUnknown = new() // RAIL0004
    {
        From = Bus,
        Path = [Parts.Alder25.As("F16"), SledTrace, SledConnector],
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledTwice = new()
    {
        From = Bus,
        Path = [Parts.Reed25.As("F11"), SledTrace, SledConnector], // RAIL0007
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledWaived = new()
    {
        From = Bus,
        Path = [Parts.Reed20.As("F17"), SledTrace, SledConnector], // RAIL0015
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail SledSecondSource = new()
    {
        From = Bus,
        Path = [Parts.Reed25OrLow.As("F91"), SledTrace, SledConnector], // RAIL0701
        Return = Return.Mirrored,
        Loads = [Sled],
    };

    public static readonly Rail Lamps = new()
    {
        From = Plant,
        Path = [LampCable], // RAIL0307
        Return = Return.Mirrored,
        Loads = [new() { Name = "lamps", Current = 2.Amperes(), MaxVoltage = 80.Volts() }],
        Surroundings = Cabin,
    };

    public static readonly Rail SledWeak = new()
    {
        From = Bus,
        Path = [Parts.Reed25Weak.As("F18"), SledTrace, SledConnector], // RAIL0301
        Return = Return.Mirrored,
    };

    public static readonly Rail SledQuick = new()
    {
        From = Bus,
        Path = [Parts.Reed25Quick.As("F19"), SledTrace, SledConnector], // RAIL0306
        Return = Return.Mirrored,
    };

    /// <summary>A small converter that limits its own current.</summary>
    public static readonly Supply Auxiliary = new()
    {
        Voltage = 54.Volts(),
        TransientMax = 60.Volts(),
        ContinuousCurrent = 28.Amperes(),
        CurrentLimit = new() { Level = Band.Of(29.Amperes(), 32.Amperes()), Style = CurrentLimitStyle.ConstantCurrent, LimitedBy = LimitedBy.Hardware },
    };

    public static readonly Rail Signals = new()
    {
        From = Auxiliary,
        Path = [Parts.Reed25.As("F20"), LampCable with { Ampacity = 28.Amperes() }], // RAIL0302
        Return = Return.Mirrored,
        Loads = [new() { Name = "signals", Current = 2.Amperes(), MaxVoltage = 80.Volts() }],
        Surroundings = Cabin,
    };

    public static readonly Rail FarLamps = new()
    {
        From = Plant,
        Path = [Parts.Lag25.As("F81"), new Wire { Name = "LockCable", Resistance = 0.2.Ohms(), Section = 6.SquareMillimeters(), Ampacity = 30.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() }], // RAIL0303
        Return = Return.Mirrored,
        Loads = [new() { Name = "lamps", Current = 2.Amperes(), MaxVoltage = 80.Volts() }],
        Surroundings = Cabin,
    };

    public static readonly Rail Reserve = new()
    {
        From = Plant,
        Path = [Parts.Weir200.As("F82"), Parts.Sluice300, MainBusbar], // RAIL0304
        Return = Return.Mirrored,
        Loads = [new() { Name = "lamps", Current = 2.Amperes(), MaxVoltage = 80.Volts() }],
        Surroundings = Cabin,
    };

    public static readonly Rail Winch = new()
    {
        From = Plant,
        Path = [Parts.Idle63.As("F83"), new Wire { Name = "WinchCable", Length = 4.Meters(), Section = 16.SquareMillimeters(), Ampacity = 76.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() }], // RAIL0308
        Return = Return.Mirrored,
        Loads = [new() { Name = "winch", Current = 30.Amperes(), MaxVoltage = 80.Volts() }],
        Surroundings = Cabin,
    };

    public static readonly Rail SledClamped = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F21"), SledTrace],
        Return = Return.Mirrored,
        Clamps = [new() { Name = "LowClamp", Citation = "invented, not for use", StandOffVoltage = 54.Volts() }], // RAIL0104
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledSagging = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F22"), new Wire { Name = "YardCable", Resistance = 0.1.Ohms(), Section = 6.SquareMillimeters(), Ampacity = 30.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() }],
        Return = Return.Mirrored,
        Loads = [Sled], // RAIL0501
        Surroundings = Cabin,
    };

    public static readonly Rail SledStarved = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F23"), new Wire { Name = "DikeCable", Resistance = 0.5.Ohms(), Section = 6.SquareMillimeters(), Ampacity = 40.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() }],
        Return = Return.Mirrored,
        Loads = [Sled], // RAIL0504
        Surroundings = Cabin,
    };

    public static readonly Rail SledFrugal = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F80"), SledTrace],
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
        Budgets = new() { Dissipation = 1.Watts() }, // RAIL0502
    };

    public static readonly Rail SledTinder = new()
    {
        From = Plant,
        Path = [Parts.Tinder25.As("F24"), SledTrace], // RAIL0601
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledUnqualified = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F25"), SledTrace], // RAIL0602
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin with { RequiredQualifications = ["Lock-2"] },
    };

    public static readonly Rail SledShaken = new()
    {
        From = Plant,
        Path = [Parts.Clip25.As("F26"), SledTrace], // RAIL0603
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin with { Vibration = 15.MetersPerSecondSquared() },
    };

    public static readonly Rail SledEarthed = new()
    {
        From = Plant,
        Polarity = Polarity.Negative,
        Path = [Parts.Reed25.As("F60"), SledTrace], // RAIL0105
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail Gate = new()
    {
        From = Plant,
        Path = [Parts.Lock25.As("F62"), SledTrace], // RAIL0106
        Return = Return.Mirrored,
        Loads = [Sled with { Regenerates = true, RegeneratedCurrent = 5.Amperes() }],
        Surroundings = Cabin,
    };

    public static readonly Rail SledPaired = new()
    {
        From = Plant,
        Path = [new ParallelGroup { Name = "pair", Branches = [[Parts.Reed25.As("F63")], [Parts.Reed25.As("F64")]] }, SledTrace with { Width = 16.Millimeters() }], // RAIL0206
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledNextToHeatsink = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F65"), SledTrace with { Surroundings = new() { HeatOfNeighbours = 18.Kelvins() } }], // RAIL0503
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledHearsay = new()
    {
        From = Plant,
        Path = [Parts.Hearsay25.As("F92"), SledTrace], // RAIL0910
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledThinLead = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F66"), new Wire { Name = "ThinLead", Resistance = 2.Milliohms(), Section = 2.5.SquareMillimeters(), Ampacity = 20.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() }], // RAIL0204
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledWarm = new()
    {
        From = Plant,
        Path = [Parts.Fern15.As("F67"), SledTrace], // RAIL0404
        Return = Return.Mirrored,
        Loads = [Sled],
        Surroundings = Cabin,
    };

    public static readonly Rail SledShorted = new()
    {
        From = Plant with { Name = "Annex" },
        Path = [Parts.Egret20.As("U2"), SledTrace], // RAIL0403
        Return = Return.Mirrored,
        Loads = [Sled with { InputCapacitance = 100.Microfarads(), InputCapacitorEsr = 20.Milliohms(), EnablesAt = EnablesAt.PowerGood }],
        Surroundings = Cabin,
    };

    public static readonly Rail SledInrush = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F68"), SledTrace], // RAIL0401
        Return = Return.Mirrored,
        Loads = [Sled with { InputCapacitance = 4.7.Millifarads(), InputCapacitorEsr = 20.Milliohms(), StartsInLife = 5000 }],
        Surroundings = Cabin,
    };

    public static readonly Rail SledSlow = new()
    {
        From = Plant with { Name = "Yard" },
        Path = [Parts.Heron20.As("U1"), SledTrace], // RAIL0402
        Return = Return.Mirrored,
        Loads = [Sled with { InputCapacitance = 2.2.Millifarads(), InputCapacitorEsr = 20.Milliohms(), EnablesAt = EnablesAt.PowerGood }],
        Surroundings = Cabin,
    };

    public static readonly Rail SledRestarting = new()
    {
        From = Plant,
        Path = [Parts.Reed25.As("F69"), SledTrace, Parts.Warm20.As("RT1")], // RAIL0405
        Return = Return.Mirrored,
        Loads = [Sled with { InputCapacitance = 4.7.Millifarads(), InputCapacitorEsr = 20.Milliohms(), StartsInLife = 5000 }],
        Surroundings = Cabin,
        ShortestOutage = 1.Seconds(),
    };
}
