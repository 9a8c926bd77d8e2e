namespace Programs.Arithmetic.BitOperators;

/// <summary>And, or, exclusive or and complement on every width.</summary>
public static class P
{
    private static readonly int A = 0b1010_1100;
    private static readonly int B = 0b0110_1010;
    private static readonly long L = 0x0F0F_0F0F_0F0F_0F0F;
    private static readonly byte Byte = 0x5A;
    public static readonly int And = A & B;
    public static readonly int Or = A | B;
    public static readonly int Xor = A ^ B;
    public static readonly int Not = ~A;
    public static readonly long LongNot = ~L;
    public static readonly int ByteNot = ~Byte;
    public static readonly byte ByteNotBack = (byte)~Byte;
    public static readonly uint UintNot = ~0u;
    public static readonly long MixedAnd = L & A;
    public static readonly long SignExtended = L & -A;
    public static readonly ulong UlongXor = 0xFFFF_FFFF_FFFF_FFFF ^ (ulong)L;
}
