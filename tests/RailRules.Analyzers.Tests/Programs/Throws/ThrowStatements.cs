namespace Programs.Throws.ThrowStatements;

/// <summary>Exceptions that the program throws itself.</summary>
public static class P
{
    public static int Plain => Check(-1);
    public static int Argument => Named(0);
    public static int Expression => "" is { Length: > 0 } ? 1 : throw new InvalidOperationException("nothing there");
    public static int Coalesced => ((int?)null) ?? throw new ArgumentNullException("value");
    public static int Arrow => Never();

    private static int Check(int value)
    {
        if (value < 0)
            throw new ArgumentException("must not be negative");
        return value;
    }

    private static int Named(int count)
    {
        if (count == 0)
            throw new ArgumentOutOfRangeException(nameof(count), "at least one");
        return count;
    }

    private static int Never() => throw new NotSupportedException();
}
