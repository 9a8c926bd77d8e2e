using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.OptionalDesignators;

/// <summary>Designators given, made or absent.</summary>
public static class P
{
    public static readonly ImmutableArray<string?> Designators = [Place("F7").Designator, Place().Designator, Place(number: 3).Designator];
    public static readonly Fuse Both = Place("F9", 2);

    private static Fuse Place(string? designator = null, int? number = null)
    {
        var fuse = new Fuse { RatedCurrent = 5.Amperes() };
        return (designator ?? (number is { } n ? "F" + n : null)) is { } name ? fuse.As(name) : fuse;
    }
}
