namespace Programs.ControlFlow.Finally;

/// <summary>Finally runs on every way out, and return values are taken before.</summary>
public static class P
{
    public static readonly string Normal = Run(0);
    public static readonly string Returned = Run(1);
    public static readonly string Broken = Run(2);
    public static readonly int Value = Taken();
    public static readonly string Nested = Nest();

    private static string Run(int way)
    {
        var log = new List<string>();
        Inner(way, log);
        return string.Join(' ', log);
    }

    private static void Inner(int way, List<string> log)
    {
        for (var i = 0; i < 2; i++)
        {
            try
            {
                log.Add("try" + i);
                if (way == 1)
                    return;
                if (way == 2)
                    break;
            }
            finally
            {
                log.Add("finally" + i);
            }
        }

        log.Add("end");
    }

    private static int Taken()
    {
        var x = 1;
        try
        {
            return x;
        }
        finally
        {
            x = 100;
        }
    }

    private static string Nest()
    {
        var log = "";
        try
        {
            try
            {
                log += "a";
            }
            finally
            {
                log += "b";
            }

            log += "c";
        }
        finally
        {
            log += "d";
        }

        return log;
    }
}
