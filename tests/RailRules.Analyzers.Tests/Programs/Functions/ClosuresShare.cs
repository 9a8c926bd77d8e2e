namespace Programs.Functions.ClosuresShare;

/// <summary>Closures see later changes, and share with each other.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var factor = 2;
        Func<int, int> scale = x => x * factor;
        var before = scale(10);
        factor = 3;
        var after = scale(10);
        var (increment, read) = Counter();
        increment();
        increment();
        var (other, readOther) = Counter();
        other();
        Action twice = () => factor *= 2;
        twice();
        twice();
        return $"{before} {after} {read()} {readOther()} {factor}";
    }

    private static (Action Increment, Func<int> Read) Counter()
    {
        var count = 0;
        return (() => count++, () => count);
    }
}
