namespace Programs.Enums.Aliases;

/// <summary>Two names for one value, and names out of order.</summary>
public static class P
{
    public static readonly string Text = Grade.Standard.ToString();
    public static readonly bool Same = Grade.Standard == Grade.Usual;
    public static readonly string High = Grade.Best.ToString();
    public static readonly Grade FromValue = (Grade)1;
    public static readonly string FromValueText = $"{(Grade)1}";
    public static readonly int Switch = Grade.Usual switch { Grade.Best => 2, Grade.Standard => 1, _ => 0 };
}

public enum Grade
{
    Best = 9,
    Standard = 1,
    Usual = Standard,
    None = 0,
}
