using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.CurrentSharing;

/// <summary>Unequal sharing of parallel fuses.</summary>
public static class P
{
    private static readonly double[] Milliohms = [0.9, 1.0, 1.1];
    public static readonly ImmutableArray<double> Shares = [.. Share(120)];
    public static readonly double Worst = Share(120).Max() / 40;

    private static IEnumerable<double> Share(double amperes)
    {
        var conductance = Milliohms.Sum(r => 1 / r);
        return Milliohms.Select(r => Math.Round(amperes / r / conductance, 6));
    }
}
