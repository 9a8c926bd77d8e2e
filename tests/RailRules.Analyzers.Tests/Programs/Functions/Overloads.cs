using System.Collections.Immutable;

namespace Programs.Functions.Overloads;

/// <summary>Overload resolution by type, by count and by conversion.</summary>
public static class P
{
    public static readonly ImmutableArray<string> Results =
    [
        F(1), F(1L), F(1.0), F('a'), F((byte)1), F("s"), F(null!), F(1m), F(new[] { 1 }), F((object)1), F(1f),
        G(1), G((short)1), H(1), H(1, 2), H("x"),
    ];

    private static string F(int x) => "int";

    private static string F(long x) => "long";

    private static string F(double x) => "double";

    private static string F(object x) => "object";

    private static string F(string x) => "string";

    private static string G(long x) => "long";

    private static string G(double x) => "double";

    private static string H<T>(T x) => "generic";

    private static string H(int x, int y = 0) => "optional";
}
