using System.Collections.Immutable;

namespace Programs.Patterns.Properties;

/// <summary>Property patterns, nested and extended.</summary>
public static class P
{
    private static readonly Cable Long = new("W1", new Core(16, "copper"), 42);
    private static readonly Cable Short = new("W2", null, 2);
    public static readonly ImmutableArray<string> Words = [.. new[] { Long, Short, new Cable("W3", new Core(1.5, "aluminium"), 8) }.Select(Describe)];
    public static readonly bool Extended = Long is { Core.Area: > 10, Core.Metal.Length: 6 };
    public static readonly bool ExtendedNull = Short is { Core.Area: > 0 };
    public static readonly string Bound = Long is { Core: { Area: var area, Metal: var metal }, Length: >= 40 and var length } ? $"{area} {metal} {length}" : "no";
    public static readonly bool Empty = Long is { } && Short is { Core: null };

    private static string Describe(Cable cable) => cable switch
    {
        { Core: null } => cable.Name + " unknown",
        { Core.Metal: "copper", Length: > 40 } => cable.Name + " long copper",
        { Core: { Metal: not "copper" } core } => cable.Name + " " + core.Metal,
        _ => cable.Name,
    };
}

public sealed record Core(double Area, string Metal);

public sealed record Cable(string Name, Core? Core, int Length);
