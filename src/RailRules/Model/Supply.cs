using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A power source with terminals: rectifier, power supply unit, bench supply, plant. Data as on its data sheet's output page.
/// </summary>
/// <remarks>
/// <see cref="Voltage"/> holds at the terminals anywhere within the continuous current, so <see cref="SourceResistance"/> plays no part in the
/// operating point of a supply; it counts in faults and inrush.
/// </remarks>
public sealed record Supply : Source
{
    /// <summary>Makes a supply named after the member that declares it.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the default name.</param>
    public Supply([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Output voltage at the terminals under load, steady (V): lowest, usual, highest, float and equalise included. Data sheet: "output voltage".</summary>
    public Band<ElectricPotential>? Voltage { get; init; }

    /// <summary>Highest voltage the output can take for 1 ms or longer, regulation failure and overvoltage trip included (V). Not below the highest steady voltage.</summary>
    public ElectricPotential? TransientMax { get; init; }

    /// <summary>Resistance behind the terminals in a fault (Ω). IEC: internal resistance; the inverse slope of the short-circuit characteristic.</summary>
    public Band<ElectricResistance>? SourceResistance { get; init; }

    /// <summary>Inductance behind the terminals in a fault (H), smoothing chokes and cable included.</summary>
    public Band<ElectricInductance>? SourceInductance { get; init; }

    /// <summary>The supply's own limit. Null: no limit for the largest fault, and unknown for the smallest.</summary>
    public CurrentLimit? CurrentLimit { get; init; }

    /// <summary>Capacitance at the terminals (F). It discharges into a fault besides what the supply delivers.</summary>
    public Band<ElectricCapacitance>? OutputCapacitance { get; init; }

    /// <summary>Equivalent series resistance of the output capacitance (Ω). Data sheet: "ESR".</summary>
    public Band<ElectricResistance>? OutputCapacitorEsr { get; init; }

    /// <summary>Equivalent series inductance of the output capacitance (H). Data sheet: "ESL".</summary>
    public Band<ElectricInductance>? OutputCapacitorEsl { get; init; }

    /// <summary>Fault current when it is known from elsewhere, e.g. a measurement or the plant's documents; it replaces source resistance, inductance and limit.</summary>
    public ProspectiveFault? ProspectiveFault { get; init; }

    /// <summary>Current the supply gives for ever (A). Data sheet: "rated output current".</summary>
    public ElectricCurrent? ContinuousCurrent { get; init; }

    /// <summary>Factor on <see cref="ContinuousCurrent"/> against ambient temperature. Data sheet: "output derating".</summary>
    public ImmutableArray<DeratingPoint> Derating { get; init; } = [];

    /// <summary>Which pole is earthed. IEC: earthing; North America: grounding.</summary>
    public Earthing? Earthing { get; init; }

    /// <summary>Current the supply can take in at its output (A); 0: it cannot sink.</summary>
    public ElectricCurrent? ReverseCurrent { get; init; }

    /// <summary>Voltage at which the supply shuts down because its output is too high (V). Data sheet: "OVP".</summary>
    public Band<ElectricPotential>? OvervoltageTrip { get; init; }

    /// <summary>Fewest units in parallel that the other data describe together; null: one.</summary>
    public int? UnitsMin { get; init; }

    /// <summary>Most units in parallel; null: one.</summary>
    public int? UnitsMax { get; init; }

    /// <inheritdoc/>
    public bool Equals(Supply? other) => ReferenceEquals(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => base.GetHashCode();
}
