namespace Programs.Enums.UnderlyingTypes;

/// <summary>Enumerations over other integer types.</summary>
public static class P
{
    public static readonly Small Wrapped = (Small)unchecked((byte)(300 + (int)Small.Min));
    public static readonly int Size = (byte)Small.Max;
    public static readonly Wide Large = Wide.Top;
    public static readonly ulong Bits = (ulong)Wide.Top;
    public static readonly long Negative = (long)Signed.Below;
    public static readonly string Text = Wide.Top.ToString("X");
    public static readonly string SignedText = Signed.Below.ToString("D");
    public static readonly bool Order = Signed.Below < Signed.Zero && Wide.Top > Wide.Bottom;
    public static readonly Signed Next = Signed.Below + 1;
    public static readonly int Distance = Signed.Above - Signed.Below;
}

public enum Small : byte
{
    Min,
    Max = 255,
}

public enum Wide : ulong
{
    Bottom,
    Top = 0x8000_0000_0000_0000,
}

public enum Signed : sbyte
{
    Below = -1,
    Zero,
    Above,
}
