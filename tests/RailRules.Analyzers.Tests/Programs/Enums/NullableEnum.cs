namespace Programs.Enums.NullableEnum;

/// <summary>Absent enumeration values.</summary>
public static class P
{
    private static readonly Level? None = null;
    private static readonly Level? Some = Level.Two;
    public static readonly Level Coalesced = None ?? Level.One;
    public static readonly bool Equal = Some == Level.Two;
    public static readonly bool NoneLess = None < Level.Two;
    public static readonly string Text = $"[{None}] [{Some}]";
    public static readonly int? Number = (int?)Some;
    public static readonly int? NoNumber = (int?)None;
    public static readonly Level? Increased = Some + 1;
    public static readonly Level? IncreasedNone = None + 1;
    public static readonly string Pattern = Some switch { Level.One => "1", Level.Two => "2", null => "none", _ => "?" };
}

public enum Level
{
    One = 1,
    Two,
    Three,
}
