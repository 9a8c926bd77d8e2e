using System.Collections.Immutable;

namespace Programs.Queries.LetAndOrder;

/// <summary>Let, orderby with several keys, into.</summary>
public static class P
{
    private static readonly string[] Words = ["wire", "fuse", "lug", "ptc", "clamp"];
    public static readonly ImmutableArray<string> Ordered = [.. from w in Words orderby w.Length, w[0] descending select w];
    public static readonly ImmutableArray<string> Let = [.. from w in Words let length = w.Length let doubled = length * 2 where doubled > 6 orderby doubled descending, w[1] select $"{w}{doubled}"];
    public static readonly ImmutableArray<string> Into = [.. from w in Words select w.ToUpperInvariant() into upper where upper.Contains('U') orderby upper.Length select upper + "!"];
}
