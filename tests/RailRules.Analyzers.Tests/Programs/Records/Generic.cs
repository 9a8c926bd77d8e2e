namespace Programs.Records.Generic;

/// <summary>Generic records with constraints and static members.</summary>
public static class P
{
    public static readonly Range<int> Whole = Range<int>.Of(3, 1);
    public static readonly string Text = Range<double>.Of(0.5, 2).ToString();
    public static readonly bool Contains = Whole.Contains(2) && !Whole.Contains(4);
    public static readonly Range<char> Letters = Range<char>.Of('b', 'a');
    public static readonly Range<int> Wider = Whole with { High = 10 };
}

public sealed record Range<T>(T Low, T High)
    where T : IComparable<T>
{
    public static Range<T> Of(T a, T b) => a.CompareTo(b) <= 0 ? new(a, b) : new(b, a);

    public bool Contains(T value) => Low.CompareTo(value) <= 0 && value.CompareTo(High) <= 0;
}
