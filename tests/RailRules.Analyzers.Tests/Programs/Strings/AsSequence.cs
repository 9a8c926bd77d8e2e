using System.Collections.Immutable;

namespace Programs.Strings.AsSequence;

/// <summary>A string is a sequence of characters.</summary>
public static class P
{
    private static readonly string Text = "48V0-12V5";
    public static readonly int Digits = Text.Count(char.IsDigit);
    public static readonly string Reversed = new([.. Text.Reverse()]);
    public static readonly string Distinct = string.Concat(Text.Distinct());
    public static readonly string Where = string.Concat(Text.Where(c => c != '-'));
    public static readonly char[] Characters = Text.ToCharArray();
    public static readonly Dictionary<char, int> Counts = Text.GroupBy(c => c).ToDictionary(g => g.Key, g => g.Count());
    public static readonly int Sum = Loop();
    public static readonly ImmutableArray<string> Chunks = [.. Text.Chunk(3).Select(c => new string(c))];

    private static int Loop()
    {
        var sum = 0;
        foreach (var c in Text)
            sum = sum * 3 + c;
        return sum;
    }
}
