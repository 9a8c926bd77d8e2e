namespace Programs.Throws.UnboxNull;

/// <summary>Unboxing nothing.</summary>
public static class P
{
    private static readonly object? Nothing = null;
    public static int Value => (int)Nothing!;
}
