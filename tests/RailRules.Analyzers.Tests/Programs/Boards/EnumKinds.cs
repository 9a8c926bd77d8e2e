using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.EnumKinds;

/// <summary>Kinds of slots decide the parts.</summary>
public static class P
{
    public static readonly ImmutableArray<Rail> Slots = [.. new[] { Kind.Compute, Kind.Fan, Kind.Compute, Kind.Spare }.Select((kind, i) => Make(kind, i + 1))];
    public static readonly int Spares = Slots.Count(rail => rail.Loads.IsEmpty);

    private static Rail Make(Kind kind, int slot) => new()
    {
        Name = $"{kind} {slot}",
        Path = [new Fuse { RatedCurrent = Rating(kind) }.As($"F{slot}")],
        Loads = kind is Kind.Spare ? [] : [new() { Power = (kind == Kind.Compute ? 600 : 60).Watts() }],
    };

    private static ElectricCurrent Rating(Kind kind) => kind switch
    {
        Kind.Compute => 20.Amperes(),
        Kind.Fan => 3.Amperes(),
        _ => 1.Amperes(),
    };
}

public enum Kind
{
    Spare,
    Fan,
    Compute,
}
