namespace Programs.Arithmetic.ShiftAssignment;

/// <summary>Shifts with assignment on small types convert back.</summary>
public static class P
{
    public static readonly byte Byte = Shift(0b1100_0011);
    public static readonly sbyte Signed = ShiftSigned(-3);
    public static readonly ulong Wide = ShiftWide(0xF000_0000_0000_000F);

    private static byte Shift(byte value)
    {
        value <<= 3;
        value >>= 1;
        return value;
    }

    private static sbyte ShiftSigned(sbyte value)
    {
        value >>>= 1;
        return value;
    }

    private static ulong ShiftWide(ulong value)
    {
        value >>= 4;
        value ^= value << 60;
        return value;
    }
}
