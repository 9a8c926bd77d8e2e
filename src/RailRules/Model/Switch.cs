using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A switch in series: relay, contactor, transistor. It is not an overcurrent device by itself.
/// </summary>
public sealed record Switch : Element
{
    /// <summary>Makes a switch.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Switch([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Continuous current (A).</summary>
    public ElectricCurrent? RatedCurrent { get; init; }

    /// <summary>Highest DC voltage across it when open (V).</summary>
    public ElectricPotential? DcVoltageRating { get; init; }

    /// <summary>Resistance when closed (Ω).</summary>
    public Band<ElectricResistance>? OnResistance { get; init; }

    /// <summary>Current it can close onto, DC (A). IEC: making capacity.</summary>
    public ElectricCurrent? MakingCurrent { get; init; }

    /// <summary>Current it can open, DC (A). IEC: breaking capacity.</summary>
    public ElectricCurrent? BreakingCurrent { get; init; }

    /// <summary>Switching operations in its life at rated current.</summary>
    public double? Endurance { get; init; }

    /// <summary>Safe operating area, where it is a transistor.</summary>
    public SafeOperatingArea? SafeOperatingArea { get; init; }

    /// <summary>Energy of a single avalanche (J), where it is a transistor.</summary>
    public Energy? AvalancheEnergy { get; init; }

    /// <summary>Joule integral it withstands when closed (A²s).</summary>
    public JouleIntegral? SurgeIntegral { get; init; }

    /// <summary>Whether it blocks current from load to source when open.</summary>
    public bool? ReverseBlocking { get; init; }

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }
}
