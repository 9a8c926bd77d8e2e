namespace Programs.Throws.ArgumentOutOfRange;

/// <summary>Indexes outside a list, a text and an immutable array.</summary>
public static class P
{
    private static readonly int Five = 5;
    public static int List => new List<int> { 1 }[Five];
    public static string Substring => "abc".Substring(Five);
    public static string Range => "abc"[Five..];
    public static string Remove => "abc".Remove(Five);
    public static int ElementAt => new[] { 1 }.ElementAt(Five);
}
