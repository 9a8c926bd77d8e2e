namespace Programs.Floating.Rounding;

/// <summary>The ways to round.</summary>
public static class P
{
    public static readonly double[] ToEven = [Math.Round(0.5), Math.Round(1.5), Math.Round(2.5), Math.Round(-0.5), Math.Round(-1.5)];
    public static readonly double[] Away = [.. new[] { 0.5, 1.5, 2.5, -0.5, -1.5 }.Select(x => Math.Round(x, MidpointRounding.AwayFromZero))];
    public static readonly double Digits = Math.Round(3.14159, 3);
    public static readonly double DigitsHalf = Math.Round(2.675, 2);
    public static readonly double DigitsAway = Math.Round(1.005, 2, MidpointRounding.AwayFromZero);
    public static readonly double Up = Math.Ceiling(-1.1);
    public static readonly double Down = Math.Floor(-1.1);
    public static readonly double Cut = Math.Truncate(-1.9);
    public static readonly double ToZero = Math.Round(-1.7, MidpointRounding.ToZero);
    public static readonly double ToPositive = Math.Round(1.1, MidpointRounding.ToPositiveInfinity);
    public static readonly decimal Decimal = Math.Round(2.675m, 2);
    public static readonly decimal DecimalAway = decimal.Round(2.665m, 2, MidpointRounding.AwayFromZero);
}
