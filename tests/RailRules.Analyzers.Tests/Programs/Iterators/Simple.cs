using System.Collections.Immutable;

namespace Programs.Iterators.Simple;

/// <summary>Yield return, yield break and loops.</summary>
public static class P
{
    public static readonly ImmutableArray<int> Countdown = [.. Down(4)];
    public static readonly ImmutableArray<int> Stopped = [.. Until(3)];
    public static readonly ImmutableArray<int> None = [.. Down(-1)];
    public static readonly string Letters = string.Concat(Range('a', 'e'));
    public static readonly int Count = Down(9).Count();

    private static IEnumerable<int> Down(int from)
    {
        for (var i = from; i >= 0; i--)
            yield return i;
    }

    private static IEnumerable<int> Until(int limit)
    {
        var i = 0;
        while (true)
        {
            if (i == limit)
                yield break;
            yield return i++;
        }
    }

    private static IEnumerable<char> Range(char from, char to)
    {
        while (from <= to)
            yield return from++;
    }
}
