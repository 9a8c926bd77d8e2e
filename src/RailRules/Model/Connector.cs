using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A connector: one or several contacts in parallel in this pole.
/// </summary>
public sealed record Connector : Element
{
    /// <summary>Makes a connector.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Connector([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Contacts in parallel in this pole; null: one.</summary>
    public int? Contacts { get; init; }

    /// <summary>Rating of one contact with all of them loaded (A).</summary>
    public ElectricCurrent? ContactRating { get; init; }

    /// <summary>Factor on the contact rating against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Resistance of one contact (Ω).</summary>
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
