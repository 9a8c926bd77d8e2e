namespace Programs.Iterators.Finally;

/// <summary>Finally in an iterator runs when the consumer stops or finishes.</summary>
public static class P
{
    public static readonly string Finished = Run(10);
    public static readonly string Stopped = Run(2);

    private static string Run(int limit)
    {
        var log = "";
        IEnumerable<int> Numbers()
        {
            try
            {
                for (var i = 0; i < 4; i++)
                {
                    log += i;
                    yield return i;
                }
            }
            finally
            {
                log += "F";
            }

            log += "E";
        }

        foreach (var n in Numbers())
        {
            if (n == limit)
                break;
        }

        return log;
    }
}
