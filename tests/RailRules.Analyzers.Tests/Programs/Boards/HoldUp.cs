using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.HoldUp;

/// <summary>How long capacitors hold a load up.</summary>
public static class P
{
    public static readonly Duration HoldUp = Time(10_000, 54, 40, 150);
    public static readonly ImmutableArray<double> Milliseconds = [.. new[] { 4700, 10_000, 22_000.0 }.Select(c => Math.Round(Time(c, 54, 40, 150).Milliseconds, 3))];
    public static readonly Load Board = new() { Power = 150.Watts(), HoldUp = HoldUp };

    private static Duration Time(double microfarads, double from, double to, double watts) =>
        (0.5 * microfarads * 1e-6 * (from * from - to * to) / watts).Seconds();
}
