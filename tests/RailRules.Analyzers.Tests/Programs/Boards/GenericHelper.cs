using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.GenericHelper;

/// <summary>A generic helper that puts designators on any part.</summary>
public static class P
{
    public static readonly ImmutableArray<Fuse> Fuses = Number("F", new Fuse(), new Fuse { RatedCurrent = 5.Amperes() });
    public static readonly ImmutableArray<Connector> Plugs = Number("J", 10, [new Connector { Contacts = 2 }]);
    public static readonly T1 Wrapped = new(Number("R", 1, [new SenseResistor()])[0]);

    private static ImmutableArray<T> Number<T>(string letter, params T[] parts)
        where T : Element => Number(letter, 1, parts);

    private static ImmutableArray<T> Number<T>(string letter, int first, T[] parts)
        where T : Element => [.. parts.Select((part, i) => part.As(letter + (first + i)))];
}

public sealed record T1(SenseResistor Resistor);
