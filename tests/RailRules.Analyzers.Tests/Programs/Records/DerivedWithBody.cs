namespace Programs.Records.DerivedWithBody;

/// <summary>Base record with a property body that overrides the positional one.</summary>
public static class P
{
    public static readonly string Text = new Named("abc", 2).ToString();
    public static readonly Named Changed = new Named("abc", 2) with { Name = "x" };
    public static readonly string Name = new Named("abc", 2).Name;
}

public record Named(string Name, int Count)
{
    public string Name { get; init; } = Name.ToUpperInvariant();

    public int Twice => Count * 2;
}
