namespace Programs.Enums.Basics;

/// <summary>Names, values and casts.</summary>
public static class P
{
    public static readonly Rating One = Rating.Medium;
    public static readonly int Value = (int)Rating.High;
    public static readonly Rating FromInt = (Rating)1;
    public static readonly Rating Undefined = (Rating)42;
    public static readonly string Text = Rating.High.ToString();
    public static readonly string UndefinedText = ((Rating)42).ToString();
    public static readonly string Interpolated = $"rated {Rating.Low}, {Rating.High:D}, {Rating.High:X}";
    public static readonly Rating Default = default;
    public static readonly bool Compared = Rating.High > Rating.Low;
    public static readonly string Concatenated = "is " + Rating.Medium;
    public static readonly int Ordered = Rating.High.CompareTo(Rating.Low);
}

public enum Rating
{
    Low,
    Medium = 5,
    High,
}
