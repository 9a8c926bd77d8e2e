namespace Programs.Arithmetic.CompoundWithWider;

/// <summary>The right side of a compound assignment may be wider where a cast would do.</summary>
public static class P
{
    public static readonly int FromDouble = Scale(10, 1.75);
    public static readonly int Truncated = Divide(7, 2.0);
    public static readonly long FromDecimalFreeMix = Mix(3, 2.9f);

    private static int Scale(int value, double factor)
    {
        value = (int)(value * factor);
        return value;
    }

    private static int Divide(int value, double by)
    {
        var copy = value;
        copy -= (int)by;
        copy <<= 1;
        return copy;
    }

    private static long Mix(long value, float with)
    {
        float f = value;
        f *= with;
        return (long)f;
    }
}
