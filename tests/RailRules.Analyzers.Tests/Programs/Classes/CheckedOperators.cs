namespace Programs.Classes.CheckedOperators;

/// <summary>A type with checked and unchecked operators of its own.</summary>
public static class P
{
    public static readonly int Unchecked = (new Tiny(100) + new Tiny(100)).Value;
    public static readonly int Checked = checked(new Tiny(100) + new Tiny(100)).Value;
    public static readonly int Cast = ((Tiny)300).Value;
    public static readonly int CastChecked = checked((Tiny)300).Value;
}

public readonly record struct Tiny(int Value)
{
    public static Tiny operator +(Tiny a, Tiny b) => new((a.Value + b.Value) % 128);

    public static Tiny operator checked +(Tiny a, Tiny b) => new(Math.Min(127, a.Value + b.Value));

    public static explicit operator Tiny(int value) => new(value % 128);

    public static explicit operator checked Tiny(int value) => new(127);
}
