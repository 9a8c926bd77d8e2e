namespace Programs.Tuples.Basics;

/// <summary>Items, names and nesting.</summary>
public static class P
{
    private static readonly (double Volts, double Amperes) Point = (48, 2.5);
    public static readonly double Power = Point.Volts * Point.Amperes;
    public static readonly double Second = Point.Item2;
    public static readonly (int, int, int, int, int, int, int, int, int) Long = (1, 2, 3, 4, 5, 6, 7, 8, 9);
    public static readonly int Eighth = Long.Item8;
    public static readonly int Ninth = (1, 2, 3, 4, 5, 6, 7, 8, N: 90).N;
    public static readonly (int A, (string B, bool C) D) Nested = (1, ("x", true));
    public static readonly string B = Nested.D.B;
    public static readonly string Text = (1, "a", 2.5, (string?)null, 'c').ToString();
    public static readonly string LongText = Long.ToString();
    public static readonly ValueTuple<int> Single = new(5);
    public static readonly ValueTuple Empty = default;
}
