namespace Programs.Linq.EvaluationOrder;

/// <summary>Elements flow one by one through the steps.</summary>
public static class P
{
    public static readonly string Flow = Run();
    public static readonly string Ordered = RunOrdered();

    private static string Run()
    {
        var log = "";
        var result = Enumerable.Range(1, 5)
            .Where(n =>
            {
                log += "w" + n;
                return n % 2 == 1;
            })
            .Select(n =>
            {
                log += "s" + n;
                return n * n;
            })
            .First(n => n > 5);
        return log + " " + result;
    }

    private static string RunOrdered()
    {
        var log = "";
        var first = new[] { 2, 1 }
            .Select(n =>
            {
                log += "s" + n;
                return n;
            })
            .OrderBy(n =>
            {
                log += "k" + n;
                return n;
            })
            .Take(1)
            .ToArray();
        return log + " " + first[0];
    }
}
