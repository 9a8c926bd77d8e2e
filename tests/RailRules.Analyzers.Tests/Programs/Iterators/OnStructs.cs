namespace Programs.Iterators.OnStructs;

/// <summary>An iterator of a struct works on a copy of it, each walk on its own.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var steps = new Steps();
        var sequence = steps.Three();
        steps.At = 100;
        return string.Join(',', sequence) + " " + string.Join(',', sequence) + " " + steps.At;
    }
}

public struct Steps
{
    public int At;

    public IEnumerable<int> Three()
    {
        yield return ++At;
        yield return ++At;
        yield return ++At;
    }
}
