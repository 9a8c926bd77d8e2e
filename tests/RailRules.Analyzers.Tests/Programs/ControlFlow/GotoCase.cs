using System.Collections.Immutable;

namespace Programs.ControlFlow.GotoCase;

/// <summary>Jumping between cases.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Results = [.. Enumerable.Range(0, 5).Select(Run)];
    public static readonly string Text = Words("b");

    private static string Run(int level)
    {
        var log = "";
        switch (level)
        {
            case 3:
                log += "three ";
                goto case 2;
            case 2:
                log += "two ";
                goto case 1;
            case 1:
                log += "one";
                break;
            case 0:
                goto default;
            default:
                log += "default";
                break;
        }

        return log;
    }

    private static string Words(string word)
    {
        switch (word)
        {
            case "a":
                return "end";
            case "b":
                goto case "a";
            default:
                return "none";
        }
    }
}
