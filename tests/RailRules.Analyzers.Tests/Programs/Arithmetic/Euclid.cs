using System.Collections.Immutable;

namespace Programs.Arithmetic.Euclid;

/// <summary>Greatest common divisor and least common multiple.</summary>
public static class P
{
    public static readonly int Divisor = Gcd(1071, 462);
    public static readonly long Multiple = Lcm(21, 6);
    public static readonly ImmutableArray<int> Table = [.. from a in Enumerable.Range(1, 6) from b in Enumerable.Range(1, 4) select Gcd(a * 6, b * 4)];

    private static int Gcd(int a, int b)
    {
        while (b != 0)
            (a, b) = (b, a % b);
        return a;
    }

    private static long Lcm(long a, long b) => a / Gcd((int)a, (int)b) * b;
}
