using System.Collections;

namespace Programs.Iterators.Disposal;

/// <summary>Foreach disposes of an enumerator, also when it is left early.</summary>
public static class P
{
    public static readonly string Whole = Walk(9);
    public static readonly string Early = Walk(2);

    private static string Walk(int limit)
    {
        var log = new List<string>();
        foreach (var n in new Source(log))
        {
            log.Add("n" + n);
            if (n == limit)
                break;
        }

        return string.Join(' ', log);
    }
}

public sealed class Source(List<string> log) : IEnumerable<int>
{
    public IEnumerator<int> GetEnumerator() => new Walker(log);

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

public sealed class Walker(List<string> log) : IEnumerator<int>
{
    public int Current { get; private set; }

    object IEnumerator.Current => Current;

    public bool MoveNext()
    {
        log.Add("m");
        return ++Current < 4;
    }

    public void Reset() => Current = 0;

    public void Dispose() => log.Add("d");
}
