namespace Programs.Throws.DivideByZero;

/// <summary>Integer division and remainder by zero.</summary>
public static class P
{
    private static readonly int Zero = 0;
    public static int Quotient => 5 / Zero;
    public static long Remainder => 5L % Zero;
    public static decimal Decimal => 5m / Zero;
    public static int Compound
    {
        get
        {
            var x = 7;
            x /= Zero;
            return x;
        }
    }
}
