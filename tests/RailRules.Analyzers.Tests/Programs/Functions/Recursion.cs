using System.Collections.Immutable;

namespace Programs.Functions.Recursion;

/// <summary>Recursion of every shape.</summary>
public static class P
{
    public static readonly int Ackermann = A(2, 3);
    public static readonly string Hanoi = Move(3, 'a', 'b', 'c');
    public static readonly int Tribonacci = T(12);
    public static readonly ImmutableArray<string> Permutations = [.. Permute("abc")];
    public static readonly int Partitions = Count(10, 10);

    private static int A(int m, int n) => m == 0 ? n + 1 : n == 0 ? A(m - 1, 1) : A(m - 1, A(m, n - 1));

    private static string Move(int n, char from, char over, char to) =>
        n == 0 ? "" : Move(n - 1, from, to, over) + $"{from}{to} " + Move(n - 1, over, from, to);

    private static int T(int n) => n < 3 ? n / 2 : T(n - 1) + T(n - 2) + T(n - 3);

    private static IEnumerable<string> Permute(string text) =>
        text.Length <= 1 ? [text] : text.SelectMany((c, i) => Permute(text.Remove(i, 1)).Select(rest => c + rest));

    private static int Count(int n, int max) => n == 0 ? 1 : n < 0 || max == 0 ? 0 : Count(n - max, max) + Count(n, max - 1);
}
