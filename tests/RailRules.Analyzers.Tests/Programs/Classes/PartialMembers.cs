namespace Programs.Classes.PartialMembers;

/// <summary>Partial types, methods and properties.</summary>
public static class P
{
    public static readonly string Text = new Part { Rated = 5 }.Describe();
    public static readonly int Value = new Part { Rated = 400 }.Rated;
    public static readonly string Indexed = new Part()[2];
}

public sealed partial class Part
{
    public partial int Rated { get; set; }

    public partial string this[int index] { get; }

    public partial string Describe();

    partial void Note(string text);
}

public sealed partial class Part
{
    private int rated;
    private string notes = "";

    public partial int Rated
    {
        get => rated;
        set
        {
            rated = Math.Min(value, 100);
            Note("set " + rated);
        }
    }

    public partial string this[int index] => new('*', index);

    public partial string Describe() => $"{Rated} {notes}";

    partial void Note(string text) => notes += text;
}
