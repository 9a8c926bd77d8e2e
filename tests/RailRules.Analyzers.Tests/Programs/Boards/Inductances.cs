using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.Inductances;

/// <summary>Loop inductance from length, and the time constants it makes.</summary>
public static class P
{
    public static readonly ImmutableArray<double> Microseconds = [.. new[] { 0.5, 2, 10 }.Select(meters => Math.Round(TimeConstant(meters).Microseconds, 4))];
    public static readonly Wire Cable = new() { Length = 10.Meters(), Inductance = Loop(10) };

    private static ElectricInductance Loop(double meters) => (meters * 0.8).Microhenries();

    private static Duration TimeConstant(double meters) => (Loop(meters).Henries / (meters * 2 * 0.0175 / 16 + 0.004)).Seconds();
}
