using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace RailRules;

/// <summary>
/// A DC rail: what feeds it, the elements in series from the source on, and what hangs on it.
/// All voltages are magnitudes between the two poles; currents count from source to load.
/// </summary>
public sealed record Rail : Source
{
    /// <summary>Makes a rail named after the member that declares it.</summary>
    /// <param name="member">Filled in by the compiler: the declaring member, which gives the default name.</param>
    public Rail([CallerMemberName] string? member = null)
        : base(member)
    {
    }

    /// <summary>The one source: supply, battery, converter or the rail above. Use <see cref="Feeds"/> for more than one.</summary>
    public Source? From { get; init; }

    /// <summary>Redundant feeds, each with a path of its own that ends where <see cref="Path"/> begins.</summary>
    public ImmutableArray<Feed> Feeds { get; init; } = [];

    /// <summary>Feeds that must be alive for the rail to run; null: one.</summary>
    public int? FeedsNeeded { get; init; }

    /// <summary>The live conductor: elements in series, source first.</summary>
    public ImmutableArray<Element> Path { get; init; } = [];

    /// <summary>The other conductor: elements, <see cref="Return.Mirrored"/>, or a stated resistance. Null: unknown, not zero.</summary>
    public Return? Return { get; init; }

    /// <summary>Resistance from the live pole through the chassis back to the source (Ω), for faults to chassis.</summary>
    public Band<ElectricResistance>? ChassisReturn { get; init; }

    /// <summary>Clamps across the rail, at its end.</summary>
    public ImmutableArray<TransientSuppressor> Clamps { get; init; } = [];

    /// <summary>Capacitors across the rail, at its end.</summary>
    public ImmutableArray<Capacitor> Capacitors { get; init; } = [];

    /// <summary>Loads at the end of the rail.</summary>
    public ImmutableArray<Load> Loads { get; init; } = [];

    /// <summary>Highest voltage for 1 ms or longer that the rail itself can take (V): regeneration, load dump. Not below the highest steady voltage.</summary>
    public ElectricPotential? TransientMax { get; init; }

    /// <summary>Surges shorter than 1 ms that reach the rail.</summary>
    public ImmutableArray<Surge> Surges { get; init; } = [];

    /// <summary>Which pole is live. Negative: with earthed positive, as in telecom.</summary>
    public Polarity Polarity { get; init; }

    /// <summary>Air, altitude, vibration; inherited from the rail above where null.</summary>
    public Surroundings? Surroundings { get; init; }

    /// <summary>Margins; inherited from the rail above where null.</summary>
    public DesignPolicy? Policy { get; init; }

    /// <summary>Shortest interruption of the supply that occurs (s); it decides whether an inrush limiter has cooled.</summary>
    public Duration? ShortestOutage { get; init; }

    /// <summary>Whether resettable devices must reset while the load stays connected.</summary>
    public bool? RequiresSelfReset { get; init; }

    /// <summary>Budgets for drop and dissipation.</summary>
    public Budgets? Budgets { get; init; }

    /// <inheritdoc/>
    public bool Equals(Rail? other) => ReferenceEquals(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => base.GetHashCode();
}

/// <summary>One of several feeds of a rail.</summary>
public sealed record Feed
{
    /// <summary>Where this feed comes from.</summary>
    public Source? From { get; init; }

    /// <summary>The feed's own elements in series, source first.</summary>
    public ImmutableArray<Element> Path { get; init; } = [];

    /// <summary>The feed's own return; null: unknown.</summary>
    public Return? Return { get; init; }
}

/// <summary>Which pole of a rail is live.</summary>
public enum Polarity
{
    /// <summary>The positive pole is live.</summary>
    Positive,

    /// <summary>The negative pole is live; the positive one is earthed.</summary>
    Negative,
}

/// <summary>What a rail may cost in voltage and heat.</summary>
public sealed record Budgets
{
    /// <summary>Largest drop from source to load (V).</summary>
    public ElectricPotential? Drop { get; init; }

    /// <summary>Largest drop as a share of the lowest source voltage.</summary>
    public Ratio? DropShare { get; init; }

    /// <summary>Largest dissipation of the path (W).</summary>
    public Power? Dissipation { get; init; }
}
