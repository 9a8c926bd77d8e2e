using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A diode in series that lets current flow from source to load only; also an ideal-diode controller with its transistor.
/// </summary>
public sealed record BlockingDiode : Element
{
    /// <summary>Makes a blocking diode.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public BlockingDiode([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Continuous forward current (A).</summary>
    public ElectricCurrent? RatedCurrent { get; init; }

    /// <summary>Forward drop at working current (V).</summary>
    public Band<ElectricPotential>? ForwardDrop { get; init; }

    /// <summary>Resistance on top of the drop (Ω).</summary>
    public Band<ElectricResistance>? Resistance { get; init; }

    /// <summary>Highest reverse voltage (V).</summary>
    public ElectricPotential? ReverseVoltage { get; init; }

    /// <summary>Joule integral it withstands (A²s). Data sheet: "I²t for fusing".</summary>
    public JouleIntegral? SurgeIntegral { get; init; }

    /// <summary>Time to block (s).</summary>
    public Duration? TurnOffTime { get; init; }

    /// <summary>Air temperatures at which the part works (°C). Data sheet: "operating temperature".</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }
}
