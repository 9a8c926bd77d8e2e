using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A wire or cable core. Length is one way; the return is stated by the rail.
/// </summary>
public sealed record Wire : Element
{
    /// <summary>Makes a wire.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Wire([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Length one way (m).</summary>
    public Length? Length { get; init; }

    /// <summary>Section of finished copper (mm²).</summary>
    public Area? Section { get; init; }

    /// <summary>Resistance one way at 20 °C (Ω); null: worked out from length and section.</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Conductor material; null counts as copper.</summary>
    public ConductorMaterial? Material { get; init; }

    /// <summary>Continuous current as installed (A): ambient, grouping and altitude taken into account. IEC: I_z; North America: ampacity.</summary>
    public ElectricCurrent? Ampacity { get; init; }

    /// <summary>Highest temperature in service (°C): insulation or laminate.</summary>
    public Temperature? TemperatureLimit { get; init; }

    /// <summary>Highest temperature at the end of a short circuit (°C).</summary>
    public Temperature? ShortTimeLimit { get; init; }

    /// <summary>Loaded conductors in the same bundle, this one included.</summary>
    public int? Grouping { get; init; }
}

/// <summary>What a conductor is made of.</summary>
public enum ConductorMaterial
{
    /// <summary>Annealed copper.</summary>
    Copper,

    /// <summary>Aluminium.</summary>
    Aluminium,
}
