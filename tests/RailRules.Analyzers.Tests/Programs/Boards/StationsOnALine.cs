using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.StationsOnALine;

/// <summary>Rails that hang on each other in a line.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = 110.Volts() };
    public static readonly ImmutableArray<Rail> Line = Build(5);
    public static readonly int Depth = Above(Line[^1]).Count();
    public static readonly string Names = string.Join(" < ", Above(Line[^1]).Select(rail => rail.Name));

    private static ImmutableArray<Rail> Build(int stations)
    {
        var rails = new List<Rail>();
        Source from = Plant;
        for (var station = 1; station <= stations; station++)
        {
            var rail = new Rail { Name = $"S{station}", From = from, Path = [new Wire { Length = (100 * station).Meters() }] };
            rails.Add(rail);
            from = rail;
        }

        return [.. rails];
    }

    private static IEnumerable<Rail> Above(Rail rail)
    {
        yield return rail;
        if (rail.From is Rail next)
        {
            foreach (var further in Above(next))
                yield return further;
        }
    }
}
