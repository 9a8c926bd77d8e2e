using System.Collections.Immutable;

namespace Programs.Functions.ParamsCollections;

/// <summary>Params of lists, enumerables and immutable arrays.</summary>
public static class P
{
    public static readonly int List = Count(1, 2, 3);
    public static readonly double Sequence = Mean(1, 2.5, 'a' - 'a');
    public static readonly ImmutableArray<string> Immutable = Labels("F1", "F2");
    public static readonly ImmutableArray<string> None = Labels();
    public static readonly ImmutableArray<string> Spread = Labels([.. Labels("a"), "b"]);
    public static readonly int ReadOnly = Longest("a", "abc", "ab");

    private static int Count(params List<int> values)
    {
        values.Add(0);
        return values.Count;
    }

    private static double Mean(params IEnumerable<double> values) => values.Average();

    private static ImmutableArray<string> Labels(params ImmutableArray<string> labels) => labels.Add("end");

    private static int Longest(params IReadOnlyList<string> texts) => texts.Max(t => t.Length);
}
