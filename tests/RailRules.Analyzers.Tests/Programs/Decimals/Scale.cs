using System.Globalization;

namespace Programs.Decimals.Scale;

/// <summary>Decimals keep their trailing zeros.</summary>
public static class P
{
    private static readonly decimal A = 1.10m;
    private static readonly decimal B = 2.200m;
    public static readonly decimal Sum = A + B;
    public static readonly decimal Product = A * B;
    public static readonly decimal Quotient = B / A;
    public static readonly decimal Third = 1m / 3m;
    public static readonly string SumText = (A + B).ToString(CultureInfo.InvariantCulture);
    public static readonly string ProductText = (A * B).ToString(CultureInfo.InvariantCulture);
    public static readonly string ZeroText = (A - A).ToString(CultureInfo.InvariantCulture);
    public static readonly bool Equal = 1.10m == 1.1m;
    public static readonly string Difference = $"{1.10m} {1.1m}";
    public static readonly decimal Remainder = 7.5m % 2m;
    public static readonly decimal Negative = -A % 0.3m;
}
