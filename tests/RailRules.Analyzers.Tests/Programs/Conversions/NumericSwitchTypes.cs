namespace Programs.Conversions.NumericSwitchTypes;

/// <summary>Natural types of conditional, switch and collection expressions.</summary>
public static class P
{
    private static readonly bool Yes = true;
    private static readonly int Int = 1;
    private static readonly long Long = 2;
    private static readonly byte Byte = 3;
    public static readonly object Conditional = Yes ? Int : Long;
    public static readonly object ConditionalConstant = Yes ? Byte : 4;
    public static readonly object Switch = Int switch { 1 => Byte, _ => Long };
    public static readonly object SwitchTarget = Int switch { 1 => (double)Byte, _ => Long };
    public static readonly double TargetTyped = Yes ? Int : Long;
    public static readonly object ArrayElement = new[] { Int, Long, Byte }[0];
    public static readonly object NullConditional = Yes ? Int : null!;
    public static readonly int? TargetNullable = Yes ? null : 5;
}
