using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A fuse: opens once by melting. IEC: fuse-link; North America: fuse.
/// </summary>
public sealed record Fuse : Element
{
    /// <summary>Makes a fuse.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Fuse([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Rated current (A). IEC: rated current I_n; North America: ampere rating.</summary>
    public ElectricCurrent? RatedCurrent { get; init; }

    /// <summary>DC voltage rating (V): the highest DC voltage at which the fuse can extinguish its arc.</summary>
    public ElectricPotential? DcVoltageRating { get; init; }

    /// <summary>AC voltage rating (V). It says nothing of DC.</summary>
    public ElectricPotential? AcVoltageRating { get; init; }

    /// <summary>Interrupting ratings. IEC: rated breaking capacity.</summary>
    public ImmutableArray<InterruptingRating> InterruptingRatings { get; init; } = [];

    /// <summary>Least current that a partial-range fuse can break (A).</summary>
    public ElectricCurrent? MinimumBreakingCurrent { get; init; }

    /// <summary>Melting I²t (A²s), nominal unless a band is given. IEC: pre-arcing I²t.</summary>
    public Band<JouleIntegral>? MeltingIntegral { get; init; }

    /// <summary>Clearing I²t with their conditions. IEC: operating I²t.</summary>
    public ImmutableArray<ClearingIntegral> ClearingIntegrals { get; init; } = [];

    /// <summary>Time-current curve, ordered by current.</summary>
    public ImmutableArray<CurvePoint> Curve { get; init; } = [];

    /// <summary>Standard family whose gates hold where no curve is stated.</summary>
    public Characteristic? Characteristic { get; init; }

    /// <summary>Which overcurrents it breaks; null counts as full range unless <see cref="MinimumBreakingCurrent"/> is stated.</summary>
    public BreakingRange? BreakingRange { get; init; }

    /// <summary>What the rated current means: carried for ever (IEC style) or three quarters of it (UL style).</summary>
    public RatingBasis? RatingBasis { get; init; }

    /// <summary>Air temperature at which the rating holds (°C), usually 20 to 25.</summary>
    public Temperature? ReferenceAmbient { get; init; }

    /// <summary>Factor on the rated current against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Factor on the rated current against altitude.</summary>
    public ImmutableArray<AltitudePoint> AltitudeDerating { get; init; } = [];

    /// <summary>Pulses borne against their share of the melting I²t.</summary>
    public ImmutableArray<PulseLifePoint> PulseLife { get; init; } = [];

    /// <summary>Resistance at no more than a tenth of the rated current (Ω). Data sheet: "cold resistance".</summary>
    public Band<ElectricResistance>? ColdResistance { get; init; }

    /// <summary>Voltage drop at rated current (V).</summary>
    public Band<ElectricPotential>? VoltageDrop { get; init; }

    /// <summary>Arc voltage while it clears (V).</summary>
    public ElectricPotential? ArcVoltage { get; init; }

    /// <summary>Rise of the body above the air at rated current (K).</summary>
    public TemperatureDelta? TemperatureRise { get; init; }

    /// <summary>Highest temperature of the body (°C), self-heating included.</summary>
    public Temperature? BodyTemperatureLimit { get; init; }

    /// <summary>Where the maker allows this fuse in parallel with its like: the citation; null: not allowed.</summary>
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
