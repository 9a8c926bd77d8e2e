namespace Programs.Floating.ToIntegers;

/// <summary>Conversions to integers cut towards zero.</summary>
public static class P
{
    private static readonly double Positive = 2.9;
    private static readonly double Negative = -2.9;
    public static readonly int Cut = (int)Positive;
    public static readonly int CutNegative = (int)Negative;
    public static readonly long Long = (long)-0.5;
    public static readonly byte Byte = (byte)Positive;
    public static readonly uint Uint = (uint)Positive;
    public static readonly char Letter = (char)(65.9 + Positive - Positive);
    public static readonly int Rounded = (int)Math.Round(Positive);
    public static readonly short FromFloat = (short)-1.99f;
    public static readonly int Halves = (int)Math.Round(2.5) + (int)Math.Round(3.5);
}
