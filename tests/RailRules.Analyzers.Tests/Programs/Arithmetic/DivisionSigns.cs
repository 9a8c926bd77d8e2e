namespace Programs.Arithmetic.DivisionSigns;

/// <summary>Integer division goes towards zero; the remainder has the sign of the dividend.</summary>
public static class P
{
    private static readonly int One = 1;
    private static readonly int Two = 2;
    private static readonly int Three = 3;
    private static readonly long Long = 4;
    public static readonly int[] Quotients = [7 / Two, -7 / Two, 7 / -Two, -7 / -Two];
    public static readonly int[] Remainders = [7 % Three, -7 % Three, 7 % -Three, -7 % -Three];
    public static readonly long[] LongRemainders = [10L % Long, -10L % Long];
    public static readonly int Rebuilt = -7 / Two * Two + -7 % Two;
    public static readonly uint Unsigned = 7u / (uint)Two;
    public static readonly int ByOne = int.MinValue / One;
    public static readonly int Euclidean = ((-7 % Three) + Three) % Three;
}
