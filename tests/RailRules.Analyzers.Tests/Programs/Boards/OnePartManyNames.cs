using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.OnePartManyNames;

/// <summary>A part renamed for each rail by with in a loop.</summary>
public static class P
{
    public static readonly ImmutableArray<Fuse> Named = Rename(new Fuse { RatedCurrent = 2.Amperes() }, "fan", "lamp", "pump");
    public static readonly bool Equal = Named[0] with { Name = "x" } == Named[1] with { Name = "x" };

    private static ImmutableArray<Fuse> Rename(Fuse part, params string[] names)
    {
        var made = new Fuse[names.Length];
        for (var i = 0; i < names.Length; i++)
            made[i] = part with { Name = names[i], Designator = $"F{i + 1}" };
        return [.. made];
    }
}
