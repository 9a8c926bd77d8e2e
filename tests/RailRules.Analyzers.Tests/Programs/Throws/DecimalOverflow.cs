namespace Programs.Throws.DecimalOverflow;

/// <summary>Decimals overflow in every context.</summary>
public static class P
{
    private static readonly decimal Big = 10_000_000_000m;
    private static readonly decimal Max = decimal.MaxValue;
    public static decimal Product => Max * 2;
    public static int ToInt => (int)Big;
    public static decimal FromDouble => (decimal)Math.Pow(10, 40);
}
