namespace Programs.Conversions.ArrayCovariance;

/// <summary>Arrays of references convert, what they hold is kept.</summary>
public static class P
{
    private static readonly string[] Strings = ["b", "a"];
    private static readonly object[] Objects = Strings;
    public static readonly object First = Objects[0];
    public static readonly int Length = Objects.Length;
    public static readonly IEnumerable<object> Sequence = Strings;
    public static readonly IReadOnlyList<object> List = Strings;
    public static readonly string Sorted = string.Concat(Strings.OrderBy(s => s, StringComparer.Ordinal));
    public static readonly bool StillStrings = Objects is string[];
}
