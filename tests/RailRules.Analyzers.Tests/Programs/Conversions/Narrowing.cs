namespace Programs.Conversions.Narrowing;

/// <summary>Explicit conversions cut bits outside checked contexts.</summary>
public static class P
{
    private static readonly int Int = 300;
    private static readonly long Long = 0x1_0000_0005;
    private static readonly int Negative = -1;
    public static readonly byte ToByte = (byte)Int;
    public static readonly sbyte ToSignedByte = (sbyte)Int;
    public static readonly sbyte ToSignedByteHigh = (sbyte)(Int - 100);
    public static readonly short ToShort = (short)70_000L.CompareTo(0L);
    public static readonly int ToInt = (int)Long;
    public static readonly uint ToUint = (uint)Negative;
    public static readonly ulong ToUlong = (ulong)Negative;
    public static readonly ushort ToUshort = (ushort)Negative;
    public static readonly char ToChar = (char)Negative;
    public static readonly long BackToLong = (uint)Negative;
    public static readonly long SignExtended = (int)(uint)Negative;
}
