using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.SenseResistors;

/// <summary>Shunts from power and voltage drop.</summary>
public static class P
{
    public static readonly ImmutableArray<SenseResistor> Shunts = [.. new[] { 10, 50, 100.0 }.Select(Shunt)];
    public static readonly double Loss = 100 * 100 * 0.0005;

    private static SenseResistor Shunt(double amperes)
    {
        var ohms = 0.05 / amperes;
        return new() { Resistance = ohms.Ohms(), RatedPower = Math.Ceiling(2 * amperes * amperes * ohms).Watts(), Derating = [new(70.Celsius(), 1), new(155.Celsius(), 0)] };
    }
}
