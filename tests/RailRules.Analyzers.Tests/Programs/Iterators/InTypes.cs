using System.Collections.Immutable;

namespace Programs.Iterators.InTypes;

/// <summary>Iterators as GetEnumerator, properties and generic extension methods.</summary>
public static class P
{
    public static readonly ImmutableArray<int> Own = [.. new Steps(1, 10, 3)];
    public static readonly string Loop = Join();
    public static readonly ImmutableArray<int> Property = [.. new Steps(0, 4, 2).Halves];
    public static readonly ImmutableArray<(int, int)> Pairs = [.. new[] { 1, 2, 3, 4 }.Pairwise()];

    private static string Join()
    {
        var text = "";
        foreach (var n in new Steps(5, 8, 1))
            text += n;
        return text;
    }
}

public sealed class Steps(int from, int to, int by) : IEnumerable<int>
{
    public IEnumerable<int> Halves
    {
        get
        {
            foreach (var n in this)
                yield return n / 2;
        }
    }

    public IEnumerator<int> GetEnumerator()
    {
        for (var n = from; n <= to; n += by)
            yield return n;
    }

    System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
}

public static class Sequences
{
    public static IEnumerable<(T, T)> Pairwise<T>(this IEnumerable<T> items)
    {
        T? last = default;
        var first = true;
        foreach (var item in items)
        {
            if (!first)
                yield return (last!, item);
            last = item;
            first = false;
        }
    }
}
