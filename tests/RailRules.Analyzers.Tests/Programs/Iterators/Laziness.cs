namespace Programs.Iterators.Laziness;

/// <summary>The body runs between the steps of the consumer.</summary>
public static class P
{
    public static readonly string Log = Run();
    public static readonly string Twice = RunTwice();
    public static readonly string Unused = RunUnused();

    private static string Run()
    {
        var log = new List<string>();
        foreach (var n in Numbers(log).Select(n =>
        {
            log.Add("select" + n);
            return n * 10;
        }))
        {
            log.Add("got" + n);
            if (n == 20)
                break;
        }

        return string.Join(' ', log);
    }

    private static string RunTwice()
    {
        var log = new List<string>();
        var numbers = Numbers(log);
        var sum = numbers.Sum() + numbers.Sum();
        return string.Join(' ', log) + sum;
    }

    private static string RunUnused()
    {
        var log = new List<string>();
        var numbers = Numbers(log);
        log.Add("never started");
        return string.Join(' ', log) + (numbers is null);
    }

    private static IEnumerable<int> Numbers(List<string> log)
    {
        log.Add("start");
        for (var i = 1; i <= 3; i++)
        {
            log.Add("yield" + i);
            yield return i;
        }

        log.Add("end");
    }
}
