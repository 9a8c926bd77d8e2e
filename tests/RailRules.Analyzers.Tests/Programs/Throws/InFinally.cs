using System.Globalization;

namespace Programs.Throws.InFinally;

/// <summary>An exception passes through finally blocks.</summary>
public static class P
{
    public static int Value => Run();

    private static int Run()
    {
        var log = "";
        try
        {
            log += "a";
            return int.Parse(log, CultureInfo.InvariantCulture);
        }
        finally
        {
            log += "b";
        }
    }
}
