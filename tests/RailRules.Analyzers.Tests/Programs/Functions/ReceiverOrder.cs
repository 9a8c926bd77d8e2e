namespace Programs.Functions.ReceiverOrder;

/// <summary>The receiver comes before the arguments, the index before the value.</summary>
public static class P
{
    public static readonly string Result = Run();

    private static string Run()
    {
        var log = "";
        T Tell<T>(string name, T value)
        {
            log += name;
            return value;
        }

        var array = new int[3];
        Tell("a", array)[Tell("i", 1)] = Tell("v", 5);
        Tell("a", array)[Tell("j", 1)] += Tell("w", 2);
        var text = Tell("s", "abc").Substring(Tell("x", 1), Tell("y", 1));
        var list = Tell("l", new List<int>());
        list.Add(Tell("m", 4));
        return $"{log} {array[1]} {text} {list[0]}";
    }
}
