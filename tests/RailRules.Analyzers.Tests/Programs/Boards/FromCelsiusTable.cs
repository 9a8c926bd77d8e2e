using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Boards.FromCelsiusTable;

/// <summary>Temperatures in a table with gaps.</summary>
public static class P
{
    private static readonly double?[] Measured = [21.5, null, 38.25, null, null, 55];
    public static readonly ImmutableArray<double> Filled = [.. Fill(Measured)];
    public static readonly Band<Temperature> Range = Band.Of(Measured.Min()!.Value.Celsius(), Measured.Max()!.Value.Celsius());

    private static IEnumerable<double> Fill(double?[] values)
    {
        var last = 0.0;
        foreach (var value in values)
        {
            last = value ?? last;
            yield return last;
        }
    }
}
