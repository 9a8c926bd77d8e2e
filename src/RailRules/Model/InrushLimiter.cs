using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// An inrush limiter: an NTC thermistor, or a resistor that is bypassed when charged.
/// </summary>
public sealed record InrushLimiter : Element
{
    /// <summary>Makes an inrush limiter.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public InrushLimiter([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Resistance when cold (Ω).</summary>
    public Band<ElectricResistance>? ColdResistance { get; init; }

    /// <summary>Resistance when hot or bypassed (Ω).</summary>
    public Band<ElectricResistance>? HotResistance { get; init; }

    /// <summary>Time to cool down (s).</summary>
    public Duration? RecoveryTime { get; init; }

    /// <summary>Largest energy of one charge (J).</summary>
    public Energy? MaxEnergy { get; init; }

    /// <summary>Largest continuous current at its reference ambient (A).</summary>
    public ElectricCurrent? MaxCurrent { get; init; }

    /// <summary>Factor on <see cref="MaxCurrent"/> against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Whether a bypass closes after charging and opens when power is lost.</summary>
    public bool? Bypass { get; init; }
}
