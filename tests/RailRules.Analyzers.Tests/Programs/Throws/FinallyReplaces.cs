namespace Programs.Throws.FinallyReplaces;

/// <summary>An exception in finally replaces the first.</summary>
public static class P
{
    public static int Value => Run(0);

    private static int Run(int zero)
    {
        try
        {
            throw new InvalidOperationException("first");
        }
        finally
        {
            zero = 1 / zero;
        }
    }
}
