using System.Globalization;

namespace RailRules;

/// <summary>Numbers for people: three significant digits, SI prefixes, invariant culture. UnitsNet's own text is not used: its first call is slow.</summary>
public static class Figures
{
    private static readonly (double Factor, string Prefix)[] Prefixes =
    [
        (1e9, "G"), (1e6, "M"), (1e3, "k"), (1, ""), (1e-3, "m"), (1e-6, "µ"), (1e-9, "n"), (1e-12, "p"),
    ];

    /// <summary>The value with its unit. Temperatures, ratios and squared units take no prefix.</summary>
    public static string Text(double value, string unit)
    {
        if (double.IsNaN(value))
        {
            return "not a number";
        }

        if (double.IsInfinity(value))
        {
            return value > 0 ? "unlimited" : "minus unlimited";
        }

        if (unit.Length == 0)
        {
            return Digits(value);
        }

        if (unit is "×" or "°C" or "K" or "A²s" or "mm²" or "m/s²" or "h" or "%")
        {
            return Digits(value) + " " + unit;
        }

        var magnitude = Math.Abs(RoundToThree(value));
        foreach (var (factor, prefix) in Prefixes)
        {
            if (magnitude >= factor * (1 - 1e-12))
            {
                return unit == "s" && factor > 1 ? Digits(value) + " s" : Digits(value / factor) + " " + prefix + unit;
            }
        }

        return magnitude == 0 ? "0 " + unit : Digits(value / 1e-12) + " p" + unit;
    }

    /// <summary>Three significant digits, without exponent up to a million, trailing zeros dropped.</summary>
    public static string Digits(double value)
    {
        if (double.IsNaN(value) || double.IsInfinity(value))
        {
            return Text(value, "");
        }

        var rounded = RoundToThree(value);
        var magnitude = Math.Abs(rounded);
        return magnitude is 0 or (>= 1e-4 and < 1e7)
            ? rounded.ToString("0.#######", CultureInfo.InvariantCulture)
            : rounded.ToString("0.##E+0", CultureInfo.InvariantCulture);
    }

    private static double RoundToThree(double value)
    {
        if (value == 0 || double.IsNaN(value) || double.IsInfinity(value))
        {
            return value;
        }

        // Through text, so that 1.005 rounds as its decimal digits say and not as a power of ten divides.
        return double.Parse(value.ToString("E2", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
