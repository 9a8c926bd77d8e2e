namespace Programs.Floating.LargeIntegersLosePrecision;

/// <summary>Integers beyond 2^53 lose bits as doubles.</summary>
public static class P
{
    private static readonly long Exact = 9_007_199_254_740_993;
    private static readonly int Int = 16_777_217;
    public static readonly double AsDouble = Exact;
    public static readonly long Back = (long)(double)Exact;
    public static readonly float AsFloat = Int;
    public static readonly int IntBack = (int)(float)Int;
    public static readonly double Sum = Exact + 1.0;
    public static readonly ulong Unsigned = ulong.MaxValue;
    public static readonly double UnsignedAsDouble = ulong.MaxValue;
    public static readonly bool Comparison = Exact == 9_007_199_254_740_992.0;
}
