namespace Programs.Throws.NegativeSize;

/// <summary>An array of negative size.</summary>
public static class P
{
    private static readonly int Minus = -3;
    public static int[] Array => new int[Minus];
}
