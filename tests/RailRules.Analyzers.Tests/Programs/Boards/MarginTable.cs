using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.MarginTable;

/// <summary>Currents over ratings for every slot and temperature.</summary>
public static class P
{
    private static readonly double[] Loads = [3.5, 8, 14.1];
    private static readonly double[] Celsius = [25, 55];
    public static readonly ImmutableArray<string> Rows = [.. from load in Loads from celsius in Celsius select $"{load} A at {celsius} °C: {20 * 0.75 * Factor(celsius) / load:0.00} ×"];
    public static readonly double Worst = Loads.SelectMany(load => Celsius.Select(celsius => 20 * 0.75 * Factor(celsius) / load)).Min();
    public static readonly bool Holds = Loads.All(load => 20 * 0.75 * Factor(55) >= load);

    private static double Factor(double celsius) => celsius > 25 ? 1 - (celsius - 25) * 0.0047 : 1;
}
