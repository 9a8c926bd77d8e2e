using System.Collections.Immutable;

namespace Programs.Patterns.Positional;

/// <summary>Positional patterns on records, tuples and Deconstruct.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Quadrants = [.. new[] { new Point(0, 0), new Point(1, 5), new Point(-2, 3), new Point(0, 4) }.Select(Where)];
    public static readonly ImmutableArray<string> Game = [.. from a in "RPS" from b in "RPS" select Play(a, b)];
    public static readonly bool Named = new Point(3, 4) is (X: 3, Y: var y) && y == 4;
    public static readonly bool Mixed = new Point(3, 4) is (_, 4) { X: > 2 } point && point.X == 3;
    public static readonly bool Nested = (new Point(1, 2), "a") is ((1, _), "a");

    private static string Where(Point point) => point switch
    {
        (0, 0) => "origin",
        ( > 0, > 0) => "first",
        (var x, _) when x < 0 => "left",
        (0, var y) => "axis " + y,
        _ => "else",
    };

    private static string Play(char first, char second) => (first, second) switch
    {
        ('R', 'S') or ('P', 'R') or ('S', 'P') => "first",
        var (a, b) when a == b => "draw",
        _ => "second",
    };
}

public readonly record struct Point(int X, int Y);
