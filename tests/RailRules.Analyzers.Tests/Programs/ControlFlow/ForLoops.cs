namespace Programs.ControlFlow.ForLoops;

/// <summary>Every part of a for loop, with several variables.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        for (int i = 0, j = 10; i < j; i += 2, j--)
            log += $"{i}-{j} ";
        var k = 0;
        for (; ; )
        {
            if (++k > 3)
                break;
            if (k == 2)
                continue;
            log += k;
        }

        for (var x = 1.0; x > 0.1; x /= 2)
            log += "h";
        for (var c = 'a'; c <= 'e'; c++)
            log += c;
        return log;
    }
}
