namespace Programs.Strings.Searching;

/// <summary>Finding and testing parts of a text.</summary>
public static class P
{
    private static readonly string Text = "Reed20-Reed25";
    public static readonly int First = Text.IndexOf("Reed", StringComparison.Ordinal);
    public static readonly int Last = Text.LastIndexOf("Reed", StringComparison.Ordinal);
    public static readonly int Char = Text.IndexOf('-');
    public static readonly int From = Text.IndexOf('e', 3);
    public static readonly int Missing = Text.IndexOf("Weir", StringComparison.Ordinal);
    public static readonly bool Contains = Text.Contains("20", StringComparison.Ordinal);
    public static readonly bool IgnoreCase = Text.Contains("REED", StringComparison.OrdinalIgnoreCase);
    public static readonly bool Starts = Text.StartsWith("Reed", StringComparison.Ordinal) && Text.StartsWith('R');
    public static readonly bool Ends = Text.EndsWith("25", StringComparison.Ordinal);
    public static readonly int Any = Text.IndexOfAny(['2', '-']);
    public static readonly int Empty = Text.IndexOf("", StringComparison.Ordinal);
}
