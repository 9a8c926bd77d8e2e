using System.Collections.Immutable;
using System.Globalization;
using RailRules;

namespace Programs.Boards.Margins;

/// <summary>Margins as ratios with three digits.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Texts = [.. new[] { (14.1, 12.9), (8.0, 12.9), (0.5, 100) }.Select(pair => Text(pair.Item1, pair.Item2))];

    private static string Text(double demand, double capacity)
    {
        var margin = capacity / demand;
        var digits = margin >= 100 ? 0 : margin >= 10 ? 1 : 2;
        return margin.ToString("F" + digits, CultureInfo.InvariantCulture) + " × " + (margin >= 1 ? "holds" : "fails");
    }
}
