namespace Programs.Collections.Memo;

/// <summary>A dictionary that remembers results.</summary>
public static class P
{
    public static readonly long Fibonacci = Fib(50, []);
    public static readonly int Entries = Count();

    private static long Fib(int n, Dictionary<int, long> known)
    {
        if (n < 2)
            return n;
        if (known.TryGetValue(n, out var value))
            return value;
        return known[n] = Fib(n - 1, known) + Fib(n - 2, known);
    }

    private static int Count()
    {
        var known = new Dictionary<int, long>();
        Fib(20, known);
        return known.Count;
    }
}
