namespace Programs.Throws.NullableValue;

/// <summary>The value of an absent number.</summary>
public static class P
{
    private static readonly int? None = null;
    public static int Value => None!.Value;
    public static int Cast => (int)None!;
}
