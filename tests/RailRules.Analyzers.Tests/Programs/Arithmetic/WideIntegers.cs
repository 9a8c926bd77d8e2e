namespace Programs.Arithmetic.WideIntegers;

/// <summary>Products beyond 32 bits need a cast at the right place.</summary>
public static class P
{
    private static readonly int Rows = 70_000;
    private static readonly int Columns = 70_000;
    public static readonly long TooLate = (long)(Rows * Columns);
    public static readonly long InTime = (long)Rows * Columns;
    public static readonly long Mixed = Rows * 1L * Columns;
    public static readonly double AsDouble = (double)Rows * Columns;
    public static readonly double AlsoTooLate = Rows * Columns;
}
