namespace Programs.Floating.MixedFloatDouble;

/// <summary>Float with double is double, int with float is float.</summary>
public static class P
{
    private static readonly int Int = 3;
    private static readonly float Float = 0.1f;
    private static readonly double Double = 0.1;
    private static readonly long Long = 123_456_789_123;
    public static readonly object IntFloat = Int * Float;
    public static readonly object FloatDouble = Float + Double;
    public static readonly object LongFloat = Long * 1f;
    public static readonly object IntDouble = Int / Double;
    public static readonly object Conditional = Int > 0 ? Float : Double;
    public static readonly object CharDouble = 'a' + Double;
    public static readonly bool Comparison = Float > Double;
}
