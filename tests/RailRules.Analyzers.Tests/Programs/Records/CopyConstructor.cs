namespace Programs.Records.CopyConstructor;

/// <summary>A copy constructor of one's own is what with calls.</summary>
public static class P
{
    public static readonly string Text = (new Counted(5) with { Name = "n" }).Note;
}

public record Counted
{
    public Counted(int count) => Count = count;

    protected Counted(Counted other)
    {
        Count = other.Count + 1;
        Name = other.Name;
    }

    public int Count { get; init; }

    public string Name { get; init; } = "";

    public string Note => Name + Count;
}
