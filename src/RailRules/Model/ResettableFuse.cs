using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A resettable fuse (PTC): its resistance rises steeply when it is warm. It leaks when tripped and is no isolation.
/// </summary>
public sealed record ResettableFuse : Element
{
    /// <summary>Makes a resettable fuse.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public ResettableFuse([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Current it carries for ever at its reference ambient (A). Data sheet: "I hold".</summary>
    public ElectricCurrent? HoldCurrent { get; init; }

    /// <summary>Current that surely trips it at its reference ambient (A). Data sheet: "I trip".</summary>
    public ElectricCurrent? TripCurrent { get; init; }

    /// <summary>Air temperature at which hold and trip current hold (°C), usually 20 to 25.</summary>
    public Temperature? ReferenceAmbient { get; init; }

    /// <summary>Factor on the hold current against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Factor on the trip current against air temperature; where empty, <see cref="Derating"/> serves.</summary>
    public ImmutableArray<DeratingPoint> TripDerating { get; init; } = [];

    /// <summary>Highest voltage it bears when tripped (V). Data sheet: "V max".</summary>
    public ElectricPotential? MaxVoltage { get; init; }

    /// <summary>Highest fault current it bears (A). Data sheet: "I max".</summary>
    public ElectricCurrent? MaxFaultCurrent { get; init; }

    /// <summary>Longest times to trip.</summary>
    public ImmutableArray<TripPoint> TimeToTrip { get; init; } = [];

    /// <summary>Resistance before the first trip (Ω). Data sheet: "R min", "R max".</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Highest resistance one hour after a trip (Ω). Data sheet: "R1 max".</summary>
    public ElectricResistance? ResistanceAfterTrip { get; init; }

    /// <summary>Power it dissipates when tripped (W). Data sheet: "P d".</summary>
    public Power? TrippedPower { get; init; }

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }

    /// <summary>Flammability class of the body (UL 94, IEC 60695-11-10).</summary>
    public Flammability? Flammability { get; init; }

    /// <summary>How the part is joined to the circuit.</summary>
    public Joint? Joint { get; init; }

    /// <summary>Qualifications of the part, by exact name; null: not stated.</summary>
    public ImmutableArray<string>? Qualifications { get; init; }
}

/// <summary>One point of a time-to-trip curve.</summary>
/// <param name="Current">Current (A).</param>
/// <param name="Time">Longest time to trip at it (s).</param>
public sealed record TripPoint(ElectricCurrent Current, Duration Time);
