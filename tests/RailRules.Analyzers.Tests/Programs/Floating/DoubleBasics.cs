using System.Globalization;

namespace Programs.Floating.DoubleBasics;

/// <summary>Binary doubles are not decimals.</summary>
public static class P
{
    private static readonly double Tenth = 0.1;
    public static readonly double Sum = Tenth + 0.2;
    public static readonly bool NotEqual = Tenth + 0.2 == 0.3;
    public static readonly double Third = 1 / 3.0;
    public static readonly double Remainder = 5.5 % 2.25;
    public static readonly double NegativeRemainder = -5.5 % 2.25;
    public static readonly double Big = 1e308 * 10;
    public static readonly double NegativeZero = -0.0;
    public static readonly double Accumulated = Enumerable.Repeat(0.1, 10).Aggregate(0.0, (a, b) => a + b);
    public static readonly string Text = (Tenth + 0.2).ToString("R", CultureInfo.InvariantCulture);
}
