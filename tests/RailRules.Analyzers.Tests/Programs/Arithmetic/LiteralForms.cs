namespace Programs.Arithmetic.LiteralForms;

/// <summary>Every way to write a number.</summary>
public static class P
{
    public static readonly int Binary = 0b1111_0000;
    public static readonly int Hex = 0xDEAD;
    public static readonly uint Unsigned = 4_000_000_000;
    public static readonly object UnsignedByItself = 4_000_000_000;
    public static readonly object LongByItself = 5_000_000_000;
    public static readonly object UlongByItself = 10_000_000_000_000_000_000;
    public static readonly object HexUnsigned = 0xFFFF_FFFF;
    public static readonly long Negative = -9_223_372_036_854_775_808;
    public static readonly int NegativeInt = -2147483648;
    public static readonly object Suffixes = (1u, 1L, 1UL, 1f, 1d, 1m);
    public static readonly double Exponent = 6.02e23;
    public static readonly float Small = 1e-40f;
    public static readonly decimal Money = 1_000.10m;
}
