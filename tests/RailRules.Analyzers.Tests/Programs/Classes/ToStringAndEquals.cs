namespace Programs.Classes.ToStringAndEquals;

/// <summary>Overridden ToString and Equals are what text and search use.</summary>
public static class P
{
    public static readonly string Interpolated = $"{new Tag("x")}";
    public static readonly string Concatenated = "tag: " + new Tag("y");
    public static readonly bool Equal = new Tag("a").Equals(new Tag("a"));
    public static readonly bool Contains = new List<Tag> { new("a"), new("b") }.Contains(new Tag("b"));
    public static readonly bool Operator = new Tag("a") == new Tag("a");
    public static readonly string Joined = string.Join(' ', new Tag("p"), new Tag("q"));
    public static readonly string Formatted = $"{new Tag("w"),6}|";
}

public sealed class Tag(string name)
{
    private readonly string name = name;

    public override string ToString() => "#" + name;

    public override bool Equals(object? obj) => obj is Tag other && other.name == name;

    public override int GetHashCode() => name.Length;
}
