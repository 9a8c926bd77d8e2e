using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A fuse holder, in series with its fuse: two contacts and a body with limits of their own.
/// </summary>
public sealed record FuseHolder : Element
{
    /// <summary>Makes a fuse holder.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public FuseHolder([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Rated current (A).</summary>
    public ElectricCurrent? RatedCurrent { get; init; }

    /// <summary>Dissipation of a fuse that it accepts (W). IEC: rated power acceptance.</summary>
    public Power? AcceptedPower { get; init; }

    /// <summary>Factor on the accepted power against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Highest temperature of its contacts and body (°C).</summary>
    public Temperature? TemperatureLimit { get; init; }

    /// <summary>Resistance of both contacts (Ω).</summary>
    public Band<ElectricResistance>? ContactResistance { get; init; }

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }

    /// <summary>Flammability class of the body (UL 94, IEC 60695-11-10).</summary>
    public Flammability? Flammability { get; init; }

    /// <summary>How the part is joined to the circuit.</summary>
    public Joint? Joint { get; init; }

    /// <summary>Qualifications of the part, by exact name; null: not stated.</summary>
    public ImmutableArray<string>? Qualifications { get; init; }
}
