using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.ChooseFuse;

/// <summary>The first fuse of a list that carries the load after derating.</summary>
public static class P
{
    private static readonly ImmutableArray<Fuse> Stock =
    [
        new() { PartNumber = "Dock6", RatedCurrent = 6.Amperes(), DcVoltageRating = 125.Volts() },
        new() { PartNumber = "Dock10", RatedCurrent = 10.Amperes(), DcVoltageRating = 60.Volts() },
        new() { PartNumber = "Dock16", RatedCurrent = 16.Amperes(), DcVoltageRating = 80.Volts() },
        new() { PartNumber = "Dock25", RatedCurrent = 25.Amperes(), DcVoltageRating = 80.Volts() },
    ];
    public static readonly string? ForFive = Choose(5.Amperes(), 60.Volts())?.PartNumber;
    public static readonly string? ForEight = Choose(8.Amperes(), 75.Volts())?.PartNumber;
    public static readonly string? ForThirty = Choose(30.Amperes(), 60.Volts())?.PartNumber;
    public static readonly Fuse? Chosen = Choose(4.Amperes(), 100.Volts());
    public static readonly bool Same = ReferenceEquals(Chosen, Stock[0]);

    private static Fuse? Choose(ElectricCurrent load, ElectricPotential voltage) =>
        Stock.FirstOrDefault(fuse => fuse.RatedCurrent * 0.75 >= load && fuse.DcVoltageRating >= voltage);
}
