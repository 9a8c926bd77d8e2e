namespace Programs.Strings.Nameof;

/// <summary>Names by nameof.</summary>
public static class P
{
    public static string Member => nameof(Member);
    public static readonly string Type = nameof(List<int>);
    public static readonly string Qualified = nameof(System.Collections.Generic);
    public static readonly string Parameter = Of(5);
    public static readonly string Method = nameof(Of);
    public static readonly string Nested = nameof(P.Type.Length);

    private static string Of(int rated) => nameof(rated) + rated;
}
