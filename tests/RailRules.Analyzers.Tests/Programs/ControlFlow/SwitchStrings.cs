using System.Collections.Immutable;

namespace Programs.ControlFlow.SwitchStrings;

/// <summary>Switch on text, with fall through of empty labels.</summary>
public static class P
{
    public static readonly ImmutableArray<int> Results = [.. new[] { "fuse", "FUSE", "breaker", "", "ptc" }.Select(Rank)];

    private static int Rank(string kind)
    {
        switch (kind)
        {
            case "fuse":
            case "FUSE":
                return 1;
            case "breaker":
                {
                    var rank = 2;
                    return rank;
                }

            case "":
                break;
            default:
                return 99;
        }

        return 0;
    }
}
