namespace Programs.Throws.MinDivision;

/// <summary>The one quotient that does not fit.</summary>
public static class P
{
    private static readonly int MinusOne = -1;
    public static int Quotient => int.MinValue / MinusOne;
    public static long LongQuotient => long.MinValue / MinusOne;
}
