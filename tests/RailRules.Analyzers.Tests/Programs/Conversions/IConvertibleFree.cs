namespace Programs.Conversions.IConvertibleFree;

/// <summary>Rounding a double to every integer type by cast after Math.Round.</summary>
public static class P
{
    private static readonly double Value = 199.5;
    public static readonly byte Byte = (byte)Math.Round(Value);
    public static readonly short Short = (short)Math.Round(-Value);
    public static readonly ushort Ushort = (ushort)Math.Floor(Value);
    public static readonly int Int = (int)Math.Ceiling(Value);
    public static readonly uint Uint = (uint)Math.Truncate(Value);
    public static readonly long Long = (long)Math.Round(Value * 1e6);
    public static readonly ulong Ulong = (ulong)Math.Round(Value);
    public static readonly decimal Decimal = (decimal)Math.Round(Value);
    public static readonly float Float = (float)Value;
}
