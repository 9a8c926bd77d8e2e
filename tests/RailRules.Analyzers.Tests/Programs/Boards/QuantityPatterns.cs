using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.QuantityPatterns;

/// <summary>Quantities tested with when and comparisons.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Words = [.. new[] { 5.Volts(), 48.Volts(), 400.Volts() }.Select(Class)];
    public static readonly ImmutableArray<Joint> Joints = [.. new[] { 3.Amperes(), 90.Amperes(), 250.Amperes() }.Select(For)];

    private static string Class(ElectricPotential voltage) => voltage switch
    {
        var v when v < 10.Volts() => "logic",
        { Volts: >= 10 and < 60 } => "low",
        _ => "hazardous",
    };

    private static Joint For(ElectricCurrent current)
    {
        if (current < 30.Amperes())
            return Joint.Soldered;
        return current.Amperes > 100 ? Joint.BoltedLocked : Joint.Bolted;
    }
}
