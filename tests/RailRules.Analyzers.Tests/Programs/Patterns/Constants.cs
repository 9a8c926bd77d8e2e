using System.Collections.Immutable;

namespace Programs.Patterns.Constants;

/// <summary>Constant patterns on every kind of constant.</summary>
public static class P
{
    private const int Limit = 10;
    public static readonly ImmutableArray<string> Ints = [.. new object[] { 10, 10L, (byte)10, 10.0, 10m, 'x', "x", true, Day.Two }.Select(Match)];
    public static readonly bool NullText = (string?)null is null && "" is not null;
    public static readonly bool NaN = double.NaN is double.NaN;
    public static readonly bool ZeroSign = -0.0 is 0.0;

    private static string Match(object value) => value switch
    {
        Limit => "int",
        10L => "long",
        (byte)10 => "byte",
        10.0 => "double",
        10m => "decimal",
        'x' => "char",
        "x" => "string",
        true => "bool",
        Day.Two => "enum",
        _ => "none",
    };
}

public enum Day
{
    One,
    Two,
}
