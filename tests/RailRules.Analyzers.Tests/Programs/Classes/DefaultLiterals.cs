namespace Programs.Classes.DefaultLiterals;

/// <summary>Default of every kind of type.</summary>
public static class P
{
    public static readonly int Int = default;
    public static readonly bool Bool = default;
    public static readonly char Char = default;
    public static readonly string? Text = default;
    public static readonly int? Nullable = default;
    public static readonly (int, string?) Tuple = default;
    public static readonly Point Struct = default;
    public static readonly DayOfWeek Enum = default;
    public static readonly double Generic = Of<double>();
    public static readonly string? GenericText = Of<string>();
    public static readonly Point GenericStruct = Of<Point>();
    public static readonly decimal Typed = default(decimal);
    public static readonly int[]? Array = default;

    private static T? Of<T>() => default;
}

public readonly record struct Point(int X, int Y);
