namespace Programs.Arithmetic.WrapAround;

/// <summary>Outside a checked context integer arithmetic wraps round.</summary>
public static class P
{
    private static readonly int Max = int.MaxValue;
    private static readonly int Min = int.MinValue;
    private static readonly long LongMax = long.MaxValue;
    private static readonly uint UintMax = uint.MaxValue;
    private static readonly ulong UlongMax = ulong.MaxValue;
    public static readonly int Sum = Max + 1;
    public static readonly int Difference = Min - 1;
    public static readonly int Product = Max * 2;
    public static readonly int Negated = -Min;
    public static readonly long LongSum = LongMax + 1;
    public static readonly long LongProduct = LongMax * 3;
    public static readonly uint UintSum = UintMax + 2;
    public static readonly uint UintDifference = 0u - (uint)Max - 5u;
    public static readonly ulong UlongSum = UlongMax + 10;
    public static readonly ulong UlongProduct = UlongMax * UlongMax;
}
