using RailRules;
using UnitsNet;

namespace Programs.Boards.InterruptingRatings;

/// <summary>Ratings at several voltages, the best for a rail.</summary>
public static class P
{
    private static readonly InterruptingRating[] Ratings =
    [
        new() { Current = 20.Kiloamperes(), Voltage = 60.Volts(), TimeConstant = 5.Milliseconds() },
        new() { Current = 2.Kiloamperes(), Voltage = 125.Volts(), TimeConstant = 2.Milliseconds() },
        new() { Current = 50.Kiloamperes(), Voltage = 250.Volts(), Kind = CurrentKind.Ac },
    ];
    public static readonly InterruptingRating? At57 = Best(57.Volts());
    public static readonly InterruptingRating? At100 = Best(100.Volts());
    public static readonly bool None = Best(200.Volts()) is null;
    public static readonly Fuse Part = new() { InterruptingRatings = [.. Ratings.OrderBy(rating => rating.Voltage!.Value.Volts)] };

    private static InterruptingRating? Best(ElectricPotential voltage) => Ratings
        .Where(rating => rating is { Kind: CurrentKind.Dc, Voltage: { } proven } && proven >= voltage)
        .MaxBy(rating => rating.Current!.Value.Amperes);
}
