using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.RiseTimes;

/// <summary>Times to reach a share of the final current.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Milliseconds = [.. new[] { 0.5, 0.9, 0.99 }.Select(share => Math.Round(-1.5 * Math.Log(1 - share), 6))];
    public static readonly Duration Ninety = (-1.5 * Math.Log(0.1)).Milliseconds();
    public static readonly bool Later = (-1.5 * Math.Log(0.01)).Milliseconds() > (-1.5 * Math.Log(0.1)).Milliseconds();
}
