using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>A capacitor or bank across the rail.</summary>
public sealed record Capacitor
{
    /// <summary>Makes a capacitor.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the name where no part number is stated.</param>
    public Capacitor([CallerMemberName] string? member = null) => Member = member;

    /// <summary>The name people see; null: part number, declaring member or place.</summary>
    public string? Name { get; init; }

    /// <summary>The reference designator of this place.</summary>
    public string? Designator { get; init; }

    /// <summary>The number for the type of part.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Where the data come from.</summary>
    public string? Citation { get; init; }

    /// <summary>Capacitance (F).</summary>
    public Band<ElectricCapacitance>? Capacitance { get; init; }

    /// <summary>Equivalent series resistance (Ω). Data sheet: "ESR".</summary>
    public Band<ElectricResistance>? Esr { get; init; }

    /// <summary>Equivalent series inductance (H). Data sheet: "ESL".</summary>
    public Band<ElectricInductance>? Esl { get; init; }

    /// <summary>Voltage rating (V).</summary>
    public ElectricPotential? VoltageRating { get; init; }

    /// <summary>Highest voltage it withstands for less than 1 ms (V).</summary>
    public ElectricPotential? SurgeWithstand { get; init; }

    /// <summary>Ripple current it bears, root mean square (A).</summary>
    public ElectricCurrent? RippleCurrent { get; init; }

    /// <summary>Air temperatures at which it works (°C).</summary>
    public Band<Temperature>? OperatingTemperature { get; init; }

    internal string? Member { get; }
}
