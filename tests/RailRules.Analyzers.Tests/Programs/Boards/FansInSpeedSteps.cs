using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.FansInSpeedSteps;

/// <summary>A switch over ranges gives air speeds.</summary>
public static class P
{
    public static readonly ImmutableArray<Surroundings> Places = [.. new[] { 0, 30, 75, 100 }.Select(percent => new Surroundings { AirSpeed = Speed(percent) })];
    public static readonly double Fastest = Places.Max(place => place.AirSpeed!.Value.MetersPerSecond);

    private static Speed Speed(int percent) => percent switch
    {
        <= 0 => 0.MetersPerSecond(),
        < 50 => (percent * 0.02).MetersPerSecond(),
        < 100 => 2.MetersPerSecond(),
        _ => 3.5.MetersPerSecond(),
    };
}
