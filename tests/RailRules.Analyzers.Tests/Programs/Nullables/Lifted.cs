namespace Programs.Nullables.Lifted;

/// <summary>Operators over absent numbers give absent numbers.</summary>
public static class P
{
    private static readonly int? Three = 3;
    private static readonly int? None = null;
    private static readonly double? Half = 0.5;
    public static readonly int? Sum = Three + None;
    public static readonly int? Product = Three * 2;
    public static readonly double? Mixed = Three * Half;
    public static readonly int? Negated = -None;
    public static readonly bool Less = None < Three;
    public static readonly bool NotLess = None >= Three;
    public static readonly bool Equal = None == null;
    public static readonly bool EqualValues = Three == 3;
    public static readonly bool NoneEqualsNone = None == (int?)null;
    public static readonly bool NotEqual = Three != None;
    public static readonly long? Widened = Three;
    public static readonly int? Shifted = Three << 2;
    public static readonly int? Complement = ~Three;
}
