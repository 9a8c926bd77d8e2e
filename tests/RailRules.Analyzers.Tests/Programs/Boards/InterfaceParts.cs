using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.InterfaceParts;

/// <summary>Parts behind an interface of the team's own.</summary>
public static class P
{
    private static readonly IPart[] Parts = [new FusePart(20), new CablePart(4, 2.5)];
    public static readonly ImmutableArray<Element> Path = [.. Parts.Select(part => part.ToElement())];
    public static readonly string Text = string.Join(" + ", Parts.Select(part => part.Describe()));
}

public interface IPart
{
    Element ToElement();

    string Describe() => ToElement().GetTypeName();
}

public sealed class FusePart(double amperes) : IPart
{
    public Element ToElement() => new Fuse { RatedCurrent = amperes.Amperes() };

    public string Describe() => $"{amperes} A fuse";
}

public sealed class CablePart(double meters, double section) : IPart
{
    public Element ToElement() => new Wire { Length = meters.Meters(), Section = section.SquareMillimeters() };
}

public static class Names
{
    public static string GetTypeName(this Element element) => element switch
    {
        Fuse => "fuse",
        Wire { Length: { } length } => $"wire of {length.Meters} m",
        _ => "element",
    };
}
