using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.ArrayOfArrays;

/// <summary>A grid of rails, cabinet by slot.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = 54.Volts() };
    public static readonly ImmutableArray<ImmutableArray<Rail>> Grid = [.. Enumerable.Range(1, 2).Select(cabinet => Row(cabinet, 3))];
    public static readonly string Names = string.Join(' ', Grid.SelectMany(row => row).Select(rail => rail.Name));

    private static ImmutableArray<Rail> Row(int cabinet, int slots) =>
        [.. Enumerable.Range(1, slots).Select(slot => new Rail { Name = $"{(char)('A' + cabinet - 1)}{slot}", From = Plant })];
}
