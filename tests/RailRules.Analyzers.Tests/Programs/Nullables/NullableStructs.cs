namespace Programs.Nullables.NullableStructs;

/// <summary>User structs and tuples that may be absent.</summary>
public static class P
{
    private static readonly Point? Some = new Point(1, 2);
    private static readonly Point? None = null;
    public static readonly int? X = Some?.X;
    public static readonly int? NoX = None?.X;
    public static readonly Point? Sum = Some + new Point(10, 10);
    public static readonly Point? NoSum = Some + None;
    public static readonly bool Equal = Some == new Point(1, 2);
    public static readonly bool NoneEqual = None == null && None != Some;
    public static readonly (int, string)? Pair = (1, "a");
    public static readonly (int, string)? NoPair = null;
    public static readonly string? Second = Pair?.Item2;
    public static readonly Point Coalesced = None ?? new Point(9, 9);
    public static readonly string Text = $"{Some} [{None}]";
}

public readonly record struct Point(int X, int Y)
{
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);
}
