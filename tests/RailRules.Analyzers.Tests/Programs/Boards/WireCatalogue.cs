using RailRules;

namespace Programs.Boards.WireCatalogue;

/// <summary>A catalogue class with an indexer.</summary>
public static class P
{
    private static readonly Catalogue Wires = new((1.5, 17), (2.5, 24), (4, 32));
    public static readonly Wire Thin = Wires[1.5, 2];
    public static readonly Wire Next = Wires[3, 0.5];
    public static readonly int Count = Wires.Count;
}

public sealed class Catalogue(params (double Section, double Amperes)[] rows)
{
    public int Count => rows.Length;

    public Wire this[double atLeast, double meters]
    {
        get
        {
            foreach (var (section, amperes) in rows)
            {
                if (section >= atLeast)
                    return new() { Section = section.SquareMillimeters(), Ampacity = amperes.Amperes(), Length = meters.Meters() };
            }

            return new();
        }
    }
}
