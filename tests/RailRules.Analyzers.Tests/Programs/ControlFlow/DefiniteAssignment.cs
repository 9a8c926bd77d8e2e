using System.Collections.Immutable;

namespace Programs.ControlFlow.DefiniteAssignment;

/// <summary>Variables that get their value on every path.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Results = [.. Enumerable.Range(-1, 3).Select(Sign)];

    private static string Sign(int n)
    {
        string text;
        int weight;
        if (n > 0)
        {
            text = "positive";
            weight = 1;
        }
        else if (n < 0)
        {
            (text, weight) = ("negative", -1);
        }
        else
        {
            text = "zero";
            weight = default;
        }

        return text + weight;
    }
}
