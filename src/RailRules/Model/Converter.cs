using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A DC-DC converter: a load on one rail and the supply of the next.
/// </summary>
public sealed record Converter : Source
{
    /// <summary>Makes a converter named after the member that declares it.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the default name.</param>
    public Converter([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>The rail that feeds the converter.</summary>
    public Rail? Input { get; init; }

    /// <summary>Output voltage at the terminals (V).</summary>
    public Band<ElectricPotential>? Output { get; init; }

    /// <summary>Highest output voltage for 1 ms or longer (V).</summary>
    public ElectricPotential? TransientMax { get; init; }

    /// <summary>Efficiency, output power over input power, between 0 and 1. The lowest decides the input current.</summary>
    public Band<Ratio>? Efficiency { get; init; }

    /// <summary>Limit of the output current. Null: no limit for the largest fault, and unknown for the smallest.</summary>
    public CurrentLimit? CurrentLimit { get; init; }

    /// <summary>Output current the converter gives for ever (A).</summary>
    public ElectricCurrent? ContinuousCurrent { get; init; }

    /// <summary>Factor on <see cref="ContinuousCurrent"/> against ambient temperature.</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Lowest input voltage at which it runs (V). Data sheet: "undervoltage lockout".</summary>
    public ElectricPotential? InputMinVoltage { get; init; }

    /// <summary>Highest input voltage it withstands (V). Data sheet: "absolute maximum input voltage".</summary>
    public ElectricPotential? InputMaxVoltage { get; init; }

    /// <summary>When the converter begins to draw from its input; null: from <see cref="InputMinVoltage"/> on at the earliest, after the rail is up at the latest.</summary>
    public EnablesAt? EnablesAt { get; init; }

    /// <summary>How long the output holds after the input is gone (s).</summary>
    public Duration? HoldUp { get; init; }

    /// <summary>Capacitance at the input (F).</summary>
    public Band<ElectricCapacitance>? InputCapacitance { get; init; }

    /// <summary>Series resistance of the input capacitance (Ω).</summary>
    public Band<ElectricResistance>? InputCapacitorEsr { get; init; }

    /// <summary>Capacitance at the output (F).</summary>
    public Band<ElectricCapacitance>? OutputCapacitance { get; init; }

    /// <summary>Series resistance of the output capacitance (Ω).</summary>
    public Band<ElectricResistance>? OutputCapacitorEsr { get; init; }

    /// <summary>Whether nothing flows from output to input.</summary>
    public bool? ReverseBlocking { get; init; }

    /// <summary>Whether input and output are galvanically isolated.</summary>
    public bool? Isolated { get; init; }

    /// <summary>Which pole of the output is earthed (grounded).</summary>
    public Earthing? Earthing { get; init; }

    /// <inheritdoc/>
    public bool Equals(Converter? other) => ReferenceEquals(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => base.GetHashCode();
}
