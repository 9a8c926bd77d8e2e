using System.Collections.Immutable;

namespace Programs.Arrays.Sieve;

/// <summary>Primes by a sieve.</summary>
public static class P
{
    public static readonly ImmutableArray<int> Primes = [.. Below(60)];
    public static readonly int Count = Below(300).Count;

    private static List<int> Below(int limit)
    {
        var composite = new bool[limit];
        var primes = new List<int>();
        for (var n = 2; n < limit; n++)
        {
            if (composite[n])
                continue;
            primes.Add(n);
            for (var m = n * n; m < limit; m += n)
                composite[m] = true;
        }

        return primes;
    }
}
