using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// An inductor in series: filter or smoothing choke. Its value is <see cref="Element.Inductance"/>.
/// </summary>
public sealed record Inductor : Element
{
    /// <summary>Makes an inductor.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Inductor([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Winding resistance at 20 °C (Ω).</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Continuous current (A).</summary>
    public ElectricCurrent? RatedCurrent { get; init; }

    /// <summary>Current at which it has lost its inductance (A).</summary>
    public ElectricCurrent? SaturationCurrent { get; init; }
}
