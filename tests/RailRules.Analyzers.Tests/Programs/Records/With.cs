using System.Collections.Immutable;

namespace Programs.Records.With;

/// <summary>With copies, and leaves the original.</summary>
public static class P
{
    private static readonly Part Base = new("F0", 10) { Note = "base", Tags = ["a"] };
    public static readonly Part Changed = Base with { Rated = 16, Note = "changed" };
    public static readonly Part Copy = Base with { };
    public static readonly bool CopyEqual = Copy == Base;
    public static readonly bool SameList = ReferenceEquals(Copy.Tags, Base.Tags);
    public static readonly string Original = Base.ToString();
    public static readonly Part Chained = (Base with { Rated = 1 }) with { Name = "F9" };
    public static readonly ImmutableArray<Part> Series = [.. new[] { 6, 10, 16 }.Select(a => Base with { Name = "F" + a, Rated = a })];
}

public sealed record Part(string Name, int Rated)
{
    public string Note { get; init; } = "";

    public List<int> Lengths { get; } = [1];

    public string[] Tags { get; init; } = [];

    public override string ToString() => $"{Name} {Rated} {Note} {Tags.Length}";
}
