namespace Programs.Iterators.ByHand;

/// <summary>An enumerator driven by hand.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        IEnumerable<int> Numbers()
        {
            log += "<";
            yield return 1;
            log += "|";
            yield return 2;
            log += ">";
        }

        var e = Numbers().GetEnumerator();
        log += e.MoveNext();
        log += e.Current;
        log += e.MoveNext();
        log += e.Current;
        log += e.MoveNext();
        return log;
    }
}
