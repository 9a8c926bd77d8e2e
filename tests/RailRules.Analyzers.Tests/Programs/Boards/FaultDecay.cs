using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.FaultDecay;

/// <summary>A fault current that rises with L/R, at a few instants.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Currents = [.. new[] { 0, 0.1, 0.5, 1, 5 }.Select(ms => Math.Round(At(ms / 1000), 3))];
    public static readonly double TimeConstant = 12e-6 / 8e-3;
    public static readonly Duration Constant = (12e-6 / 8e-3).Seconds();

    private static double At(double seconds) => 54 / 8e-3 * (1 - Math.Exp(-seconds * 8e-3 / 12e-6));
}
