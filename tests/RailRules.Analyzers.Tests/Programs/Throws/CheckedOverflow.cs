namespace Programs.Throws.CheckedOverflow;

/// <summary>Overflow in checked contexts.</summary>
public static class P
{
    private static readonly int Max = int.MaxValue;
    private static readonly long Long = long.MaxValue;
    private static readonly int Negative = -1;
    public static int Sum => checked(Max + 1);
    public static int Product => checked(Max * 2);
    public static long LongSum => checked(Long + Max);
    public static int Minus => checked(-(-Max - 1));
    public static uint Unsigned => checked((uint)Negative);
    public static byte Narrow => checked((byte)Max);
    public static int FromDouble => checked((int)(1e10 * -Negative));
    public static int Increment
    {
        get
        {
            checked
            {
                var x = Max;
                x++;
                return x;
            }
        }
    }

    public static sbyte Compound
    {
        get
        {
            checked
            {
                sbyte x = 100;
                x += 100;
                return x;
            }
        }
    }
}
