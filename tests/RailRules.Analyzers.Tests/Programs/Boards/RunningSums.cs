using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.RunningSums;

/// <summary>Cumulated lengths of a harness.</summary>
public static class P
{
    private static readonly double[] Sections = [0.4, 1.25, 0.8, 2.1];
    public static readonly ImmutableArray<double> Cumulated = [.. Accumulate(Sections)];
    public static readonly ImmutableArray<Wire> Wires = [.. Accumulate(Sections).Select((meters, i) => new Wire { Name = "W" + (i + 1), Length = meters.Meters() })];

    private static IEnumerable<double> Accumulate(IEnumerable<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            yield return sum += value;
    }
}
