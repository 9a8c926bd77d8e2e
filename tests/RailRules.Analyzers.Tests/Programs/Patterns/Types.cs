using System.Collections.Immutable;

namespace Programs.Patterns.Types;

/// <summary>Type, declaration, var and discard patterns.</summary>
public static class P
{
    private static readonly object?[] Things = [1, "two", 3.5, null, 'c', 4L, new[] { 1 }];
    public static readonly ImmutableArray<string> Kinds = [.. Things.Select(Kind)];
    public static readonly int Ints = Things.Count(t => t is int);
    public static readonly bool Var = Things[3] is var nothing && nothing is null;

    private static string Kind(object? value)
    {
        if (value is int number)
            return "int " + number;
        if (value is string { Length: > 2 } text)
            return "text " + text;
        if (value is not (double or float))
            return value is null ? "null" : "other";
        return "real";
    }
}
