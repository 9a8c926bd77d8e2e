namespace Programs.Strings.Comparing;

/// <summary>Ordinal comparison and equality.</summary>
public static class P
{
    private static readonly string A = "alpha";
    private static readonly string B = "Alpha";
    public static readonly bool Equal = A == B.ToLowerInvariant();
    public static readonly bool SameValue = "al" + "pha" == A;
    public static readonly bool IgnoreCase = string.Equals(A, B, StringComparison.OrdinalIgnoreCase);
    public static readonly int Ordinal = Math.Sign(string.CompareOrdinal(A, B));
    public static readonly int ByComparison = Math.Sign(string.Compare(A, B, StringComparison.Ordinal));
    public static readonly string[] Sorted = [.. new[] { "b", "B", "a", "_", "10", "9" }.OrderBy(s => s, StringComparer.Ordinal)];
    public static readonly string[] SortedIgnoringCase = [.. new[] { "b", "A", "a", "B" }.OrderBy(s => s, StringComparer.OrdinalIgnoreCase)];
    public static readonly bool NullEqual = (string?)null == null;
    public static readonly bool Empty = string.IsNullOrEmpty("") && string.IsNullOrWhiteSpace(" \t");
    public static readonly bool Different = A != B;
}
