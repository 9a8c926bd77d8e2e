namespace Programs.Arithmetic.Shifts;

/// <summary>Shift counts are masked to five or six bits; right shift of signed numbers keeps the sign.</summary>
public static class P
{
    private static readonly int Count33 = 33;
    private static readonly int CountMinus1 = -1;
    private static readonly int Negative = -16;
    private static readonly long NegativeLong = -16;
    public static readonly int Masked = 1 << Count33;
    public static readonly int MaskedNegative = 1 << CountMinus1;
    public static readonly long LongMasked = 1L << 65 + Count33 - Count33;
    public static readonly int Arithmetic = Negative >> 2;
    public static readonly int Logical = Negative >>> 2;
    public static readonly long LongLogical = NegativeLong >>> 60;
    public static readonly uint UnsignedRight = 0x8000_0000u >> Count33;
    public static readonly ulong UnsignedLong = 1UL << 63;
    public static readonly int ByteShift = (byte)0xFF << 4;
    public static readonly object ShortShiftType = (short)1 << 2;
}
