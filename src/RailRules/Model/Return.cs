using System.Collections.Immutable;
using UnitsNet;

namespace RailRules;

/// <summary>The conductor by which a rail's current comes back.</summary>
public sealed record Return
{
    private Return()
    {
    }

    /// <summary>The conductors and contacts of the path once more, without its devices.</summary>
    public static Return Mirrored { get; } = new() { IsMirrored = true };

    /// <summary>Whether the return repeats the conductors of the path.</summary>
    public bool IsMirrored { get; private init; }

    /// <summary>The return's elements in series, load first.</summary>
    public ImmutableArray<Element> Elements { get; private init; } = [];

    /// <summary>The return's resistance as a whole (Ω), where it is not described by elements.</summary>
    public Band<ElectricResistance>? Resistance { get; private init; }

    /// <summary>A return made of elements of its own, load first.</summary>
    public static Return Of(params ImmutableArray<Element> elements) => new() { Elements = elements };

    /// <summary>A return known by its resistance only (Ω): chassis, plane, shared cable.</summary>
    public static Return OfResistance(Band<ElectricResistance> resistance) => new() { Resistance = resistance };
}
