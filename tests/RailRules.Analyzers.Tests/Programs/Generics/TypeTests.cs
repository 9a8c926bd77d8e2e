using System.Collections.Immutable;

namespace Programs.Generics.TypeTests;

/// <summary>Is, as and switch on type parameters.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Kinds = [Kind(1), Kind("a"), Kind(2.5), Kind((int?)null), Kind<object>(3), Kind(new[] { 1 })];
    public static readonly bool Is = IsA<string>("x") && !IsA<int>("x");
    public static readonly string? As = AsA<string>(5) ?? AsA<string>("five");
    public static readonly int Cast = CastTo<int>(7);

    private static string Kind<T>(T value) => value switch
    {
        int => "int",
        string => "string",
        double d => "double " + d,
        null => "null",
        _ => "other",
    };

    private static bool IsA<T>(object value) => value is T;

    private static T? AsA<T>(object value)
        where T : class => value as T;

    private static T CastTo<T>(object value) => (T)value;
}
