using System.Collections.Immutable;

namespace Programs.Patterns.GenericTypes;

/// <summary>Patterns over generic types and interfaces.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Results = [.. new object[] { new List<int> { 1 }, new[] { "a" }, new Dictionary<string, int>(), (1, 2), "abc", new Pair<int>(3, 4) }.Select(Describe)];

    private static string Describe(object value) => value switch
    {
        List<int> { Count: > 0 } list => "ints " + list[0],
        string[] => "strings",
        IDictionary<string, int> => "map",
        (int a, int b) => $"pair {a} {b}",
        Pair<int>(var first, _) => "own " + first,
        IEnumerable<char> letters => "letters " + letters.Count(),
        _ => "?",
    };
}

public sealed record Pair<T>(T First, T Second);
