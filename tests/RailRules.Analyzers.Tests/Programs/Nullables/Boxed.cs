namespace Programs.Nullables.Boxed;

/// <summary>Boxed absent values and casts back.</summary>
public static class P
{
    private static readonly object? Box = (double?)2.5;
    private static readonly object? Empty = (double?)null;
    public static readonly double? Back = (double?)Box;
    public static readonly double? BackEmpty = (double?)Empty;
    public static readonly double Unboxed = (double)Box!;
    public static readonly bool Is = Box is double && Empty is not double;
    public static readonly double? As = Empty as double?;
    public static readonly string Concat = "v=" + (int?)null + (int?)4;
}
