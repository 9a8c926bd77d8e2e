using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// An electronic fuse or hot-swap switch: a transistor that limits and opens. It is no isolation.
/// </summary>
public sealed record ElectronicFuse : Element
{
    /// <summary>Makes an electronic fuse.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public ElectronicFuse([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Level at which it trips after <see cref="TripDelay"/> (A). Data sheet: "current limit", "overcurrent threshold".</summary>
    public Band<ElectricCurrent>? TripLevel { get; init; }

    /// <summary>Delay of the trip (s).</summary>
    public Band<Duration>? TripDelay { get; init; }

    /// <summary>Level of the fast trip (A).</summary>
    public Band<ElectricCurrent>? ShortCircuitLevel { get; init; }

    /// <summary>Time the fast trip needs (s).</summary>
    public Band<Duration>? ShortCircuitResponse { get; init; }

    /// <summary>Highest fault current shown for it (A), where stated.</summary>
    public ElectricCurrent? MaxFaultCurrent { get; init; }

    /// <summary>Current limit while starting (A).</summary>
    public Band<ElectricCurrent>? StartCurrent { get; init; }

    /// <summary>Power limit while starting (W).</summary>
    public Band<Power>? StartPower { get; init; }

    /// <summary>Time after which a start that has not ended is given up (s).</summary>
    public Band<Duration>? StartTimer { get; init; }

    /// <summary>Resistance when on (Ω). Data sheet: "R on".</summary>
    public Band<ElectricResistance>? OnResistance { get; init; }

    /// <summary>Safe operating area of the pass transistor.</summary>
    public SafeOperatingArea? SafeOperatingArea { get; init; }

    /// <summary>Highest junction temperature (°C).</summary>
    public Temperature? JunctionTemperatureLimit { get; init; }

    /// <summary>
    /// Highest temperature of the case in use, its own heat included (°C); null: the hottest air around it is taken. Not the limit of the part.
    /// </summary>
    public Temperature? CaseTemperature { get; init; }

    /// <summary>Power it dissipates for ever at a case of 25 °C (W). Data sheet: "power dissipation", "P D".</summary>
    public Power? MaxDissipation { get; init; }

    /// <summary>Highest voltage, input to ground, steady (V). Data sheet: "absolute maximum".</summary>
    public ElectricPotential? MaxVoltage { get; init; }

    /// <summary>Energy of a single avalanche (J).</summary>
    public Energy? AvalancheEnergy { get; init; }

    /// <summary>What it does after a trip.</summary>
    public Retry? Retry { get; init; }

    /// <summary>Time from giving up to the next try, where it tries again (s). Data sheet: "retry delay", "auto-retry interval", "cooling time".</summary>
    public Band<Duration>? RetryInterval { get; init; }

    /// <summary>Whether it blocks current from load to source.</summary>
    public bool? ReverseBlocking { get; init; }

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }

    /// <summary>Flammability class of the body (UL 94, IEC 60695-11-10).</summary>
    public Flammability? Flammability { get; init; }

    /// <summary>How the part is joined to the circuit.</summary>
    public Joint? Joint { get; init; }

    /// <summary>Qualifications of the part, by exact name; null: not stated.</summary>
    public ImmutableArray<string>? Qualifications { get; init; }
}

/// <summary>What an electronic fuse does after a trip.</summary>
public enum Retry
{
    /// <summary>It stays off until it is reset.</summary>
    LatchOff,

    /// <summary>It tries again for ever.</summary>
    Forever,
}

/// <summary>The safe operating area of a transistor: currents it bears at a voltage for a time.</summary>
public sealed record SafeOperatingArea
{
    /// <summary>The points read from the data sheet's diagram.</summary>
    public ImmutableArray<SafeOperatingPoint> Points { get; init; } = [];

    /// <summary>Whether the diagram is guaranteed or typical; null: not stated.</summary>
    public bool? Guaranteed { get; init; }
}

/// <summary>One point of a safe operating area.</summary>
/// <param name="Voltage">Voltage across the transistor (V).</param>
/// <param name="Current">Current it bears (A).</param>
/// <param name="Width">For this long (s).</param>
/// <param name="CaseTemperature">At this case temperature (°C); null: 25 °C.</param>
public sealed record SafeOperatingPoint(ElectricPotential Voltage, ElectricCurrent Current, Duration Width, Temperature? CaseTemperature = null);
