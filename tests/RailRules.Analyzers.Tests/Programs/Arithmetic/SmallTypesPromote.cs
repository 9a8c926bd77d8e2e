namespace Programs.Arithmetic.SmallTypesPromote;

/// <summary>Byte, sbyte, short and ushort are computed as int.</summary>
public static class P
{
    private static readonly byte Byte = 250;
    private static readonly sbyte SignedByte = -128;
    private static readonly short Short = short.MaxValue;
    private static readonly ushort UnsignedShort = ushort.MaxValue;
    public static readonly int ByteSum = Byte + Byte;
    public static readonly int ByteProduct = Byte * Byte;
    public static readonly int SignedNegated = -SignedByte;
    public static readonly int ShortSum = Short + Short;
    public static readonly int UnsignedProduct = UnsignedShort * UnsignedShort;
    public static readonly byte BackToByte = (byte)(Byte + 10);
    public static readonly sbyte BackToSigned = (sbyte)(-SignedByte);
    public static readonly short BackToShort = (short)(Short + 1);
    public static readonly object Boxed = Byte + 1;
    public static readonly object BoxedConditional = Byte > 3 ? Byte : Short;
}
