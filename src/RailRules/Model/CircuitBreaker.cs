using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A circuit breaker: opens by a thermal, a magnetic or both trips, and is closed again by hand.
/// </summary>
public sealed record CircuitBreaker : Element
{
    /// <summary>Makes a circuit breaker.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public CircuitBreaker([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Rated current (A). IEC: rated current I_n; North America: ampere rating, trip rating.</summary>
    public ElectricCurrent? RatedCurrent { get; init; }

    /// <summary>DC voltage rating as wired, with its poles in series (V).</summary>
    public ElectricPotential? DcVoltageRating { get; init; }

    /// <summary>AC voltage rating (V). It says nothing of DC.</summary>
    public ElectricPotential? AcVoltageRating { get; init; }

    /// <summary>Interrupting ratings. IEC: rated breaking capacity I_cu, I_cn.</summary>
    public ImmutableArray<InterruptingRating> InterruptingRatings { get; init; } = [];

    /// <summary>Current at which the magnetic part trips at once (A).</summary>
    public Band<ElectricCurrent>? MagneticTrip { get; init; }

    /// <summary>Factor on <see cref="MagneticTrip"/> on DC where it is calibrated on AC; about 1.4 (common practice).</summary>
    public double? MagneticTripDcFactor { get; init; }

    /// <summary>Multiple of the rated current that trips it within its conventional time. IEC: I_2/I_n.</summary>
    public double? ConventionalTripMultiple { get; init; }

    /// <summary>Time-current curve, ordered by current.</summary>
    public ImmutableArray<CurvePoint> Curve { get; init; } = [];

    /// <summary>What the rated current means.</summary>
    public RatingBasis? RatingBasis { get; init; }

    /// <summary>Air temperature at which the rating holds (°C).</summary>
    public Temperature? ReferenceAmbient { get; init; }

    /// <summary>Factor on the rated current against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Factor on the rated current against altitude.</summary>
    public ImmutableArray<AltitudePoint> AltitudeDerating { get; init; } = [];

    /// <summary>Joule integral let through (A²s), with conditions.</summary>
    public ImmutableArray<ClearingIntegral> ClearingIntegrals { get; init; } = [];

    /// <summary>Resistance of all poles in series (Ω).</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Voltage drop at rated current, all poles (V).</summary>
    public Band<ElectricPotential>? VoltageDrop { get; init; }

    /// <summary>Poles wired in series.</summary>
    public int? Poles { get; init; }

    /// <summary>Whether it breaks in one direction only.</summary>
    public bool? Polarized { get; init; }

    /// <summary>Whether current may flow from load to source.</summary>
    public bool? ReverseAllowed { get; init; }

    /// <summary>Where the maker allows this breaker in parallel with its like: the citation; null: not allowed.</summary>
    public string? ParallelAllowed { get; init; }

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }

    /// <summary>Flammability class of the body (UL 94, IEC 60695-11-10).</summary>
    public Flammability? Flammability { get; init; }

    /// <summary>How the part is joined to the circuit.</summary>
    public Joint? Joint { get; init; }

    /// <summary>Qualifications of the part, by exact name; null: not stated.</summary>
    public ImmutableArray<string>? Qualifications { get; init; }
}
