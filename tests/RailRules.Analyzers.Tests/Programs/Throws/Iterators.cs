namespace Programs.Throws.Iterators;

/// <summary>An iterator that throws when it is reached.</summary>
public static class P
{
    public static int Sum => Numbers().Sum();
    public static int First => Numbers().Skip(1).First();

    private static IEnumerable<int> Numbers()
    {
        yield return 1;
        throw new InvalidOperationException("no second number");
    }
}
