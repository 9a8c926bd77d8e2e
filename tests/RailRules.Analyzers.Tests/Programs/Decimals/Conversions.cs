namespace Programs.Decimals.Conversions;

/// <summary>To and from decimal.</summary>
public static class P
{
    private static readonly double Double = 0.1;
    private static readonly int Int = 7;
    public static readonly decimal FromInt = Int;
    public static readonly decimal FromLong = 1L << 50;
    public static readonly decimal FromDouble = (decimal)Double;
    public static readonly decimal FromFloat = (decimal)0.1f;
    public static readonly decimal FromLongDouble = (decimal)(1 / 3.0);
    public static readonly double ToDouble = (double)0.1m;
    public static readonly int ToInt = (int)2.99m;
    public static readonly int ToIntNegative = (int)-2.99m;
    public static readonly byte ToByte = (byte)200.7m;
    public static readonly float ToFloat = (float)1.1m;
    public static readonly decimal FromChar = 'A';
    public static readonly char ToChar = (char)66m;
}
