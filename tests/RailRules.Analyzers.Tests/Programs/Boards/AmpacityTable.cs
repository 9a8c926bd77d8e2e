using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.AmpacityTable;

/// <summary>A lookup with the next smaller row.</summary>
public static class P
{
    private static readonly SortedDictionary<double, int> Ampacity = new() { [1.5] = 17, [2.5] = 24, [4] = 32, [6] = 41, [10] = 57 };
    public static readonly ImmutableArray<int> Found = [.. new[] { 1.5, 3, 6, 16 }.Select(Lookup)];
    public static readonly double SectionFor = Ampacity.First(row => row.Value >= 30).Key;
    public static readonly Wire Chosen = new() { Section = SectionFor.SquareMillimeters(), Ampacity = Ampacity[SectionFor].Amperes() };

    private static int Lookup(double section)
    {
        var found = 0;
        foreach (var (size, amperes) in Ampacity)
        {
            if (size > section)
                break;
            found = amperes;
        }

        return found;
    }
}
