namespace Programs.Throws.ReadonlyField;

/// <summary>The initialiser of a field throws.</summary>
public static class P
{
    public static readonly int Value = Compute(0);

    private static int Compute(int divisor) => 100 / divisor;
}
