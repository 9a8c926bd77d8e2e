namespace Programs.Iterators.DuckTyped;

/// <summary>Foreach over a type with GetEnumerator by pattern.</summary>
public static class P
{
    public static readonly int Sum = Add();
    public static readonly string Extension = Letters();

    private static int Add()
    {
        var sum = 0;
        foreach (var n in new Upto(4))
            sum += n * n;
        return sum;
    }

    private static string Letters()
    {
        var text = "";
        foreach (var n in 3)
            text += n;
        return text;
    }
}

public sealed class Upto(int limit)
{
    public Cursor GetEnumerator() => new(limit);

    public sealed class Cursor(int limit)
    {
        public int Current { get; private set; }

        public bool MoveNext() => ++Current <= limit;
    }
}

public static class IntExtensions
{
    public static IEnumerator<int> GetEnumerator(this int count) => Enumerable.Range(0, count).GetEnumerator();
}
