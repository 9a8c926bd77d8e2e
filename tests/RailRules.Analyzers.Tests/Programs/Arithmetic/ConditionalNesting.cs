using System.Collections.Immutable;

namespace Programs.Arithmetic.ConditionalNesting;

/// <summary>Conditional expressions group to the right.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Classes = [.. new[] { 3, 16, 63, 125, 630, 4000 }.Select(Class)];

    private static string Class(int amperes) =>
        amperes < 10 ? "small"
        : amperes < 32 ? "medium"
        : amperes < 100 ? "large"
        : amperes < 400 ? amperes == 125 ? "odd" : "huge"
        : amperes > 1000 ? "giant"
        : "main";
}
