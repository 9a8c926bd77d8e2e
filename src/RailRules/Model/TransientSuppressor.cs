using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>A clamp across the rail: transient suppressor diode, varistor. IEC: surge protective component; North America: TVS.</summary>
public sealed record TransientSuppressor
{
    /// <summary>Makes a clamp.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public TransientSuppressor([CallerMemberName] string? member = null) => Member = member;

    /// <summary>The name people see; null: part number, declaring member or place.</summary>
    public string? Name { get; init; }

    /// <summary>The reference designator of this place.</summary>
    public string? Designator { get; init; }

    /// <summary>The number for the type of part.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Where the data come from.</summary>
    public string? Citation { get; init; }

    /// <summary>Highest voltage at which it does not conduct (V). Data sheet: "stand-off voltage", "V WM", "V RWM".</summary>
    public ElectricPotential? StandOffVoltage { get; init; }

    /// <summary>Breakdown voltage at its test current (V) at 25 °C. Data sheet: "V BR".</summary>
    public Band<ElectricPotential>? BreakdownVoltage { get; init; }

    /// <summary>Lowest breakdown voltage in the cold (V).</summary>
    public ElectricPotential? BreakdownVoltageCold { get; init; }

    /// <summary>Highest breakdown voltage in the heat (V).</summary>
    public ElectricPotential? BreakdownVoltageHot { get; init; }

    /// <summary>Clamping voltage with its current and wave. Data sheet: "V C at I PP".</summary>
    public ClampingVoltage? ClampingVoltage { get; init; }

    /// <summary>Dynamic resistance (Ω); null: from breakdown and clamping voltage.</summary>
    public ElectricResistance? DynamicResistance { get; init; }

    /// <summary>Peak pulse power with its width.</summary>
    public PulseReference? PeakPulsePower { get; init; }

    /// <summary>Factor on the pulse power against air temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Highest junction temperature (°C).</summary>
    public Temperature? JunctionTemperatureLimit { get; init; }

    /// <summary>Inductance of its leads (H).</summary>
    public ElectricInductance? LeadInductance { get; init; }

    /// <summary>Air temperatures at which it works (°C).</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }

    internal string? Member { get; }
}

/// <summary>A clamping voltage with its conditions.</summary>
public sealed record ClampingVoltage
{
    /// <summary>The voltage (V).</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>The pulse current (A). Data sheet: "I PP".</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>Front time of the wave (s).</summary>
    public Duration? Front { get; init; }

    /// <summary>Time to half value of the wave (s).</summary>
    public Duration? HalfValue { get; init; }
}

/// <summary>A pulse power with the width at which it holds.</summary>
public sealed record PulseReference
{
    /// <summary>The power (W).</summary>
    public Power? Power { get; init; }

    /// <summary>The width (s), e.g. 1 ms of 10/1000.</summary>
    public Duration? Width { get; init; }
}
