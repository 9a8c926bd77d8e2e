using System.Collections.Immutable;

namespace Programs.Arrays.RangesAndIndexes;

/// <summary>Counting from the end and cutting pieces.</summary>
public static class P
{
    private static readonly int[] Numbers = [0, 1, 2, 3, 4, 5];
    private static readonly ImmutableArray<int> Immutable = [10, 20, 30, 40];
    public static readonly int Last = Numbers[^1];
    public static readonly int[] Middle = Numbers[1..^1];
    public static readonly int[] Head = Numbers[..2];
    public static readonly int[] Tail = Numbers[^2..];
    public static readonly int[] Copy = Numbers[..];
    public static readonly int[] Empty = Numbers[3..3];
    public static readonly int ImmutableLast = Immutable[^1];
    public static readonly int ListLast = new List<int> { 1, 2 }[^2];
    public static readonly string Text = "abcdef"[2..4];
    public static readonly int Variable = Pick(2) + Pick(^2);
    public static readonly int[] VariableRange = Cut(1..3);

    private static int Pick(Index index) => Numbers[index];

    private static int[] Cut(Range range) => Numbers[range];
}
