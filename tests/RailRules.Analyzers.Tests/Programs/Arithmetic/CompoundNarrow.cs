namespace Programs.Arithmetic.CompoundNarrow;

/// <summary>Compound assignment to a small type converts back silently.</summary>
public static class P
{
    public static readonly byte Added = Add(200, 100);
    public static readonly byte Multiplied = Multiply(20, 20);
    public static readonly short Subtracted = Subtract(short.MinValue, 1);
    public static readonly char Moved = Move('a', 2);

    private static byte Add(byte value, byte more)
    {
        value += more;
        return value;
    }

    private static byte Multiply(byte value, byte factor)
    {
        value *= factor;
        return value;
    }

    private static short Subtract(short value, short less)
    {
        value -= less;
        return value;
    }

    private static char Move(char value, int by)
    {
        value += (char)by;
        return value;
    }
}
