using System.Collections.Immutable;
using RailRules;

namespace Lockhouse;

/// <summary>River-lock control cabin: one 54 V plant and eight compute sleds. All data invented, not for use.</summary>
[Board]
public static partial class LockhouseShelf
{
    // Static members are initialised in the order in which they stand: what a rail uses comes before the rail.
    private static readonly Connector MainLug = new() { ContactRating = 250.Amperes(), ContactResistance = Band.Of(0.05.Milliohms(), 0.2.Milliohms()), Flammability = Flammability.V0 };
    private static readonly Busbar MainBusbar = new() { Resistance = 0.2.Milliohms(), Ampacity = 300.Amperes(), TemperatureLimit = 90.Celsius() };
    private static readonly Trace SledTrace = new() { Resistance = 1.5.Milliohms(), Width = 8.Millimeters(), Thickness = 105.Micrometers(), Inner = false, TemperatureLimit = 105.Celsius() };
    private static readonly Connector SledConnector = new() { ContactRating = 30.Amperes(), ContactResistance = Band.Of(0.5.Milliohms(), 2.Milliohms()), Flammability = Flammability.V0 };
    private static readonly TransientSuppressor SledClamp = new() { StandOffVoltage = 64.Volts() };

    /// <summary>The air in the cabin; holds for every rail below the one that names it.</summary>
    public static readonly Surroundings Cabin = new()
    {
        Ambient = Band.Of((-5).Celsius(), 25.Celsius(), 55.Celsius()), // -5.Celsius() would be -(5.Celsius()): CS0023
        Altitude = 850.Meters(),
    };

    /// <summary>Battery-backed plant: nothing limits its fault current but resistance; measured at its terminals.</summary>
    public static readonly Supply Plant = new()
    {
        Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()),
        TransientMax = 60.Volts(),
        SourceResistance = Band.Of(5.Milliohms(), 6.Milliohms(), 9.Milliohms()),
        SourceInductance = 5.Microhenries(),
        OutputCapacitance = 22.Millifarads(),
        OutputCapacitorEsr = 8.Milliohms(),
        ProspectiveFault = new() { Current = Band.Of(6.3.Kiloamperes(), 11.4.Kiloamperes()), TimeConstant = 1.Milliseconds() },
        ContinuousCurrent = 250.Amperes(),
        Earthing = Earthing.Negative,
    };

    /// <summary>Feeds everything.</summary>
    public static readonly Rail Bus = new()
    {
        From = Plant,
        Path = [MainLug, Parts.Fuses.Weir200.As("F1"), MainBusbar],
        Return = Return.Mirrored,
        Surroundings = Cabin,
        Budgets = new() { Drop = 500.Millivolts(), Dissipation = 30.Watts() },
    };

    /// <summary>One rail a sled.</summary>
    public static readonly ImmutableArray<Rail> Sleds =
    [
        .. Enumerable.Range(1, 8).Select(slot => new Rail
        {
            Name = $"Sled {slot}",
            From = Bus,
            Path = [Parts.Fuses.Reed25.As($"F{10 + slot}"), SledTrace, SledConnector],
            Return = Return.Mirrored,
            Budgets = new() { Drop = 750.Millivolts() },
            Clamps = [SledClamp],
            Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 940.Microfarads(), InputCapacitorEsr = 60.Milliohms(), StartsInLife = 5000 }],
        }),
    ];
}
