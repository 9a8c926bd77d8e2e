namespace Programs.Arithmetic.MixedSigns;

/// <summary>Int with uint gives long, int with long gives long.</summary>
public static class P
{
    private static readonly int Negative = -1;
    private static readonly uint One = 1;
    private static readonly long Big = 1L << 40;
    public static readonly long MixedSum = Negative + One;
    public static readonly object MixedType = Negative + One;
    public static readonly bool MixedComparison = Negative < One;
    public static readonly long WithLong = Negative * Big;
    public static readonly object WithLongType = Negative - Big;
    public static readonly object UnsignedWithLiteral = One + 1;
    public static readonly object ByteWithUint = (byte)3 * One;
    public static readonly object Negation = -One;
}
