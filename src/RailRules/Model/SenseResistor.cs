using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A resistor that measures current.
/// </summary>
public sealed record SenseResistor : Element
{
    /// <summary>Makes a sense resistor.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public SenseResistor([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Resistance (Ω).</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Rated power (W).</summary>
    public Power? RatedPower { get; init; }

    /// <summary>Factor on the rated power against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }
}
