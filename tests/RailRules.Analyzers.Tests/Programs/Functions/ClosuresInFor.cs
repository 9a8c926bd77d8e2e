namespace Programs.Functions.ClosuresInFor;

/// <summary>A for loop has one variable, a foreach one per turn.</summary>
public static class P
{
    public static readonly string For = string.Join(',', FromFor().Select(f => f()));
    public static readonly string Foreach = string.Join(',', FromForeach().Select(f => f()));
    public static readonly string Copied = string.Join(',', FromCopy().Select(f => f()));
    public static readonly string While = string.Join(',', FromWhile().Select(f => f()));

    private static List<Func<int>> FromFor()
    {
        var list = new List<Func<int>>();
        for (var i = 0; i < 3; i++)
            list.Add(() => i);
        return list;
    }

    private static List<Func<int>> FromForeach()
    {
        var list = new List<Func<int>>();
        foreach (var i in Enumerable.Range(0, 3))
            list.Add(() => i);
        return list;
    }

    private static List<Func<int>> FromCopy()
    {
        var list = new List<Func<int>>();
        for (var i = 0; i < 3; i++)
        {
            var copy = i;
            list.Add(() => copy++ * 10 + i);
        }

        return list;
    }

    private static List<Func<int>> FromWhile()
    {
        var list = new List<Func<int>>();
        var n = 0;
        while (n < 3)
        {
            int inner = n;
            list.Add(() => inner + n);
            n++;
        }

        return list;
    }
}
