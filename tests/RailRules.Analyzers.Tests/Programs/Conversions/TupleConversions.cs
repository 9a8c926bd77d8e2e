namespace Programs.Conversions.TupleConversions;

/// <summary>Tuples convert item by item.</summary>
public static class P
{
    private static readonly int Big = 300;
    private static readonly (int, byte) Small = (1, 2);
    public static readonly (long, double) Wide = Small;
    public static readonly (double A, decimal B) Named = Small;
    public static readonly (byte, int) Narrow = ((byte, int))(Big, 2.9);
    public static readonly (object, string?) Boxed = (5, null);
    public static readonly (int, (double, string)) Nested = (1, (2, "three"));
    public static readonly (long?, int?) Lifted = Small;
}
