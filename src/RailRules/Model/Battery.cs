using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A battery: its fault current has no limit but resistance. Data per string; <see cref="Strings"/> stand in parallel.
/// </summary>
public sealed record Battery : Source
{
    /// <summary>Makes a battery named after the member that declares it.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the default name.</param>
    public Battery([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>Open-circuit voltage of a string (V): lowest at end of discharge, highest at full charge, over the temperatures met.</summary>
    public Band<ElectricPotential>? OpenCircuitVoltage { get; init; }

    /// <summary>Internal resistance of a string with its links (Ω): lowest new, warm and charged; highest aged, cold and discharged.</summary>
    public Band<ElectricResistance>? InternalResistance { get; init; }

    /// <summary>Internal inductance of a string with its links (H).</summary>
    public Band<ElectricInductance>? InternalInductance { get; init; }

    /// <summary>Voltage at the terminals while charging: float and equalise (V). It is the highest steady voltage of the rail.</summary>
    public Band<ElectricPotential>? ChargeVoltage { get; init; }

    /// <summary>Largest charging current the battery accepts (A).</summary>
    public ElectricCurrent? ChargeCurrent { get; init; }

    /// <summary>Current that may be drawn for ever from a string (A).</summary>
    public ElectricCurrent? ContinuousCurrent { get; init; }

    /// <summary>Highest voltage for 1 ms or longer (V): regeneration, load dump, charger failure.</summary>
    public ElectricPotential? TransientMax { get; init; }

    /// <summary>Strings in parallel; null: one.</summary>
    public int? Strings { get; init; }

    /// <summary>Which pole is earthed (grounded).</summary>
    public Earthing? Earthing { get; init; }

    /// <inheritdoc/>
    public bool Equals(Battery? other) => ReferenceEquals(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => base.GetHashCode();
}
