namespace Programs.Arrays.IndexAndRangeValues;

/// <summary>Index and Range as values.</summary>
public static class P
{
    public static readonly Index Second = 1;
    public static readonly Index Last = ^1;
    public static readonly int Offset = Last.GetOffset(10);
    public static readonly bool FromEnd = Last.IsFromEnd && !Second.IsFromEnd;
    public static readonly string Text = (2..^3).ToString();
    public static readonly string IndexText = Last.ToString();
    public static readonly bool Equal = (1..2).Equals(new Range(1, 2));
    public static readonly int Value = (^4).Value;
}
