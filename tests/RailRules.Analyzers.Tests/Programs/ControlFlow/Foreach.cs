namespace Programs.ControlFlow.Foreach;

/// <summary>Over arrays, lists, strings, dictionaries, and nested.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        foreach (var n in new[] { 3, 1, 2 })
        {
            if (n == 1)
                continue;
            foreach (var c in "ab")
            {
                if (c == 'b' && n == 2)
                    break;
                log += $"{n}{c} ";
            }
        }

        foreach (long wide in new List<int> { 1, 2 })
            log += wide / 2.0;
        foreach (var (key, value) in new Dictionary<string, int> { ["k"] = 7 })
            log += key + value;
        foreach (object item in new[] { "x", "y" })
            log += item;
        foreach (var _ in Enumerable.Range(0, 3))
            log += ".";
        return log;
    }
}
