namespace Programs.Arithmetic.CheckedFits;

/// <summary>A checked context does nothing as long as the result fits.</summary>
public static class P
{
    private static readonly int Big = 2_000_000_000;
    public static readonly int Sum = checked(Big + 147_483_647);
    public static readonly long Product = checked((long)Big * Big);
    public static readonly byte Narrow = checked((byte)(Big / 10_000_000));
    public static readonly int Block = Compute(5);

    private static int Compute(int value)
    {
        checked
        {
            var result = 1;
            for (var i = 1; i <= value; i++)
                result *= i;
            return result;
        }
    }
}
