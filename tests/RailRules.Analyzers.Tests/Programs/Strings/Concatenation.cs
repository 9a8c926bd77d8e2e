namespace Programs.Strings.Concatenation;

/// <summary>Plus with anything, left to right, null as nothing.</summary>
public static class P
{
    private static readonly string? None = null;
    private static readonly object? Nothing = null;
    public static readonly string Mixed = "a" + 1 + 2L + 'c' + true + 1.5 + 2.50m;
    public static readonly string NumbersFirst = 1 + 2 + "x" + 1 + 2;
    public static readonly string WithNull = "[" + None + Nothing + "]";
    public static readonly string BothNull = None + None;
    public static readonly string Char = 'a' + "b" + 'c';
    public static readonly string EnumText = "day " + DayOfWeek.Monday;
    public static readonly string Compound = Build();
    public static readonly string Concat = string.Concat("a", None, 'b', 3);
    public static readonly string Tuple = "t" + (1, 2);

    private static string Build()
    {
        var text = "";
        text += 1;
        text += 'x';
        text += null;
        text += 1.25;
        return text;
    }
}
