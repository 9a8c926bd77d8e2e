namespace Programs.Records.Structs;

/// <summary>Record structs, mutable and readonly.</summary>
public static class P
{
    private static readonly Point Start = new(1, 2);
    public static readonly Point Moved = Start with { X = 10 };
    public static readonly string Text = Start.ToString();
    public static readonly bool Equal = Start == new Point(1, 2);
    public static readonly Point Default = default;
    public static readonly Mutable Changed = Change();
    public static readonly (int, int) Pair = Split(Start);
    public static readonly bool EqualsObject = Start.Equals((object)new Point(1, 2));
    public static readonly Mutable WithBody = new(3) { Extra = 4 };

    private static Mutable Change()
    {
        var m = new Mutable(1);
        var copy = m;
        m.Value += 5;
        m.Extra = copy.Value * 100;
        return m;
    }

    private static (int X, int Y) Split(Point p)
    {
        var (x, y) = p;
        return (y, x);
    }
}

public readonly record struct Point(int X, int Y);

public record struct Mutable(int Value)
{
    public int Extra { get; set; } = 2;
}
