using System.Collections.Immutable;

namespace Programs.Iterators.Infinite;

/// <summary>Endless iterators, of which a part is taken.</summary>
public static class P
{
    public static readonly ImmutableArray<long> Fibonacci = [.. Fib().Take(15)];
    public static readonly ImmutableArray<int> Powers = [.. Doubling(1).TakeWhile(n => n < 1000)];
    public static readonly int FirstBig = Doubling(3).First(n => n > 500);
    public static readonly ImmutableArray<int> Primes = [.. Numbers(2).Where(n => Numbers(2).TakeWhile(d => d * d <= n).All(d => n % d != 0)).Take(8)];
    public static readonly bool Any = Numbers(0).Any(n => n == 100);
    public static readonly string Zipped = string.Join(' ', new[] { "a", "b" }.Zip(Numbers(1), (t, n) => t + n));

    private static IEnumerable<long> Fib()
    {
        var (a, b) = (0L, 1L);
        while (true)
        {
            yield return a;
            (a, b) = (b, a + b);
        }
    }

    private static IEnumerable<int> Doubling(int start)
    {
        for (var n = start; ; n *= 2)
            yield return n;
    }

    private static IEnumerable<int> Numbers(int from)
    {
        while (true)
            yield return from++;
    }
}
