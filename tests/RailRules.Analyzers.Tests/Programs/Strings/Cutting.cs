namespace Programs.Strings.Cutting;

/// <summary>Substrings, trimming, padding, removing and inserting.</summary>
public static class P
{
    private static readonly string Text = "  F1, F2 ;";
    public static readonly string Trimmed = Text.Trim();
    public static readonly string TrimmedChars = Text.Trim(' ', ';');
    public static readonly string TrimmedStart = Text.TrimStart() + "|";
    public static readonly string Sub = "abcdef".Substring(2, 3) + "abcdef".Substring(4);
    public static readonly string Ranges = "abcdef"[1..^1] + "abcdef"[^2..] + "abcdef"[..2];
    public static readonly string Padded = "7".PadLeft(3, '0') + "7".PadRight(3) + "|";
    public static readonly string Removed = "abcdef".Remove(1, 2) + "abcdef".Remove(3);
    public static readonly string Inserted = "ad".Insert(1, "bc");
    public static readonly string Replaced = "a-b-c".Replace("-", "+", StringComparison.Ordinal).Replace('+', '/');
    public static readonly char Indexed = "abc"[1];
    public static readonly char FromEnd = "abc"[^1];
    public static readonly string Repeated = new('-', 5);
}
