using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.PowersOfTwo;

/// <summary>Bits of a configuration word choose what is fitted.</summary>
public static class P
{
    private const int Word = 0b1011_0110;
    public static readonly ImmutableArray<int> Fitted = [.. Enumerable.Range(0, 8).Where(bit => (Word >> bit & 1) == 1)];
    public static readonly ImmutableArray<Rail> Rails = [.. Fitted.Select(slot => new Rail { Name = $"Slot {slot}" })];
    public static readonly Options Chosen = (Options)(Word & 7);
    public static readonly string Text = $"{(Options)(Word & 7)} {Convert(Word)}";

    private static string Convert(int value)
    {
        var text = "";
        for (; value > 0; value >>= 1)
            text = (value & 1) + text;
        return text;
    }
}

[Flags]
public enum Options
{
    None,
    Fans,
    Heaters,
    Lamps = 4,
}
