using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.HarnessSegments;

/// <summary>A harness as a list of segments with their own section.</summary>
public static class P
{
    private static readonly Segment[] Harness = [new("plant to shelf", 4.5, 35), new("shelf to slot", 0.6, 4), new("slot to board", 0.15, 2.5)];
    public static readonly ImmutableArray<Element> Path = [.. Harness.Select(segment => segment.ToWire())];
    public static readonly ElectricResistance Total = Harness.Select(segment => segment.Resistance).Aggregate((a, b) => a + b);
    public static readonly string Thinnest = Harness.MinBy(segment => segment.Section)!.Name;
}

public sealed record Segment(string Name, double Meters, double Section)
{
    private const double Resistivity = 0.0178;

    public ElectricResistance Resistance => (Resistivity * Meters / Section).Ohms();

    public Wire ToWire() => new() { Name = Name, Length = Meters.Meters(), Section = Section.SquareMillimeters(), Resistance = Resistance };
}
