namespace Programs.Nullables.PatternsOnNullable;

/// <summary>Patterns see through to the value.</summary>
public static class P
{
    private static readonly double? Value = 12.5;
    private static readonly double? None = null;
    public static readonly bool IsDouble = Value is double;
    public static readonly bool NoneIsDouble = None is double;
    public static readonly double Bound = Value is { } v ? v * 2 : -1;
    public static readonly double NoneBound = None is { } n ? n * 2 : -1;
    public static readonly bool Relational = Value is > 10 and < 20;
    public static readonly bool NoneRelational = None is > 10;
    public static readonly bool NotNull = Value is not null;
    public static readonly string Switch = Describe(Value) + Describe(None) + Describe(3);

    private static string Describe(double? value) => value switch
    {
        null => "none",
        > 10 => "large",
        double small => "small " + small,
    };
}
