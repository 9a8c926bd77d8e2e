using System.Collections.Immutable;
using UnitsNet;

namespace RailRules;

/// <summary>
/// Whatever stands in series in a path. The set is closed: nothing outside this library derives from it.
/// A record says what a type of part is; one part may stand in many places. A place is identified by its path and, where given, its designator.
/// </summary>
public abstract record Element
{
    private protected Element(string? member) => Member = member;

    /// <summary>The name people see; null: part number, declaring member or place.</summary>
    public string? Name { get; init; }

    /// <summary>The reference designator of this place on drawings and boards, e.g. F1. One designator stands for one place.</summary>
    public string? Designator { get; init; }

    /// <summary>The maker's or the team's number for the type of part.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Where the data come from: data sheet and line, measurement, standard and section.</summary>
    public string? Citation { get; init; }

    /// <summary>Parts that may be fitted instead.</summary>
    public ImmutableArray<Element> Alternates { get; init; } = [];

    /// <summary>Surroundings of this place where they differ from the rail's.</summary>
    public Surroundings? Surroundings { get; init; }

    /// <summary>Margins for this place where they differ from the rail's.</summary>
    public DesignPolicy? Policy { get; init; }

    /// <summary>Series inductance (H).</summary>
    public Band<ElectricInductance>? Inductance { get; init; }

    /// <summary>Joule integral that the element withstands (A²s). IEC: I²t withstand; for conductors it is else worked out from the section.</summary>
    public JouleIntegral? Withstand { get; init; }

    /// <summary>Voltage rating, DC, where one is stated (V).</summary>
    public ElectricPotential? VoltageRating { get; init; }

    /// <summary>Longest side of the body (m); it decides how much thermal cycling strains soldered joints.</summary>
    public Length? BodyLength { get; init; }

    /// <summary>Whether the element is proof against short circuits (so laid or enclosed that none can occur).</summary>
    public bool? ShortCircuitProof { get; init; }

    /// <summary>The member in which the part was made, as the compiler gave it.</summary>
    internal string? Member { get; init; }
}

/// <summary>Puts parts in places.</summary>
public static class Placement
{
    /// <summary>The same part with a reference designator: <c>Parts.Fuses.Weir200.As("F1")</c>.</summary>
    public static T As<T>(this T part, string designator)
        where T : Element => (T)(part with { Designator = designator });

    /// <summary>The same clamp with a reference designator: <c>SledClamp.As("Z1")</c>.</summary>
    public static TransientSuppressor As(this TransientSuppressor part, string designator) => part with { Designator = designator };

    /// <summary>The same capacitor with a reference designator: <c>BulkCapacitor.As("C1")</c>.</summary>
    public static Capacitor As(this Capacitor part, string designator) => part with { Designator = designator };
}
