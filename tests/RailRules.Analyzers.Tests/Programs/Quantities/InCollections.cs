using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Quantities.InCollections;

/// <summary>Quantities in arrays, dictionaries, tuples and records.</summary>
public static class P
{
    private static readonly (ElectricPotential Volts, ElectricCurrent Amperes)[] Points = [(12.Volts(), 2.Amperes()), (5.Volts(), 1.5.Amperes())];
    public static readonly decimal Total = Points.Sum(p => (p.Volts * p.Amperes).Watts);
    public static readonly Dictionary<string, ElectricResistance> Table = new() { ["lug"] = 0.1.Milliohms(), ["trace"] = 1.5.Milliohms() };
    public static readonly ElectricResistance Found = Table["trace"];
    public static readonly Sample Record = new("s", 5.Volts()) { Current = 2.Amperes() };
    public static readonly Power FromRecord = Record.Level * Record.Current;
    public static readonly ImmutableArray<Duration> Durations = [1.Seconds(), 10.Milliseconds()];
}

public sealed record Sample(string Name, ElectricPotential Level)
{
    public ElectricCurrent Current { get; init; }
}
