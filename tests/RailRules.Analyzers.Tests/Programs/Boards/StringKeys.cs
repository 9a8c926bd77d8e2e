using System.Collections.Immutable;
using System.Globalization;
using RailRules;

namespace Programs.Boards.StringKeys;

/// <summary>Part numbers put together and taken apart.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Numbers = [.. from series in new[] { "MRL", "SDG" } from amperes in new[] { 0.5, 10, 16 } select Code(series, amperes)];
    public static readonly double Back = Amperes("SDG-R500-S");
    public static readonly ImmutableArray<double> All = [.. new[] { "MRL-016R-S", "MRL-1R25-B" }.Select(Amperes)];

    private static string Code(string series, double amperes)
    {
        var number = amperes.ToString("0.##", CultureInfo.InvariantCulture);
        return $"{series}-{(number.Contains('.') ? number.Replace('.', 'R') : number + "R"),5}-S".Replace(' ', '0');
    }

    private static double Amperes(string code)
    {
        var cell = code.Split('-')[1];
        var at = cell.IndexOf('R');
        var text = cell[..at] + "." + cell[(at + 1)..];
        return double.Parse(text.Trim('.') is "" ? "0" : text + "0", CultureInfo.InvariantCulture);
    }
}
