using System.Collections.Immutable;
using System.Globalization;

namespace Programs.Strings.UnitPrefixes;

/// <summary>A number with an engineering prefix.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Texts = [.. new[] { 4.7e-6, 0.022, 1, 47000, 2.2e6, 0 }.Select(v => Engineering(v, "F"))];

    private static string Engineering(double value, string unit)
    {
        string[] prefixes = ["p", "n", "µ", "m", "", "k", "M", "G"];
        if (value == 0)
            return "0 " + unit;
        var index = 4;
        while (Math.Abs(value) >= 1000 && index < prefixes.Length - 1)
        {
            value /= 1000;
            index++;
        }

        while (Math.Abs(value) < 1 && index > 0)
        {
            value *= 1000;
            index--;
        }

        return value.ToString("0.###", CultureInfo.InvariantCulture) + " " + prefixes[index] + unit;
    }
}
