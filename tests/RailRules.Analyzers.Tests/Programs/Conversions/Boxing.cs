namespace Programs.Conversions.Boxing;

/// <summary>Boxed values keep their exact type.</summary>
public static class P
{
    private static readonly object Int = 1;
    private static readonly object Byte = (byte)1;
    private static readonly object Nullable = (int?)5;
    private static readonly object? Nothing = (int?)null;
    public static readonly bool SameValueOtherType = Int.Equals(Byte);
    public static readonly int Unboxed = (int)Int;
    public static readonly int? UnboxedNullable = (int?)Int;
    public static readonly bool IsInt = Nullable is int;
    public static readonly bool IsNothing = Nothing is null;
    public static readonly bool EqualsBoxed = Nullable.Equals(5);
    public static readonly int? AsInt = Byte as int?;
    public static readonly long Converted = (byte)Byte;
    public static readonly string Text = Int.ToString() + Byte;
}
