using System.Collections.Immutable;

namespace Programs.Throws.TextIndex;

/// <summary>A character outside a text.</summary>
public static class P
{
    private static readonly int Five = 5;
    public static char Letter => "abc"[Five];
    public static int Immutable => System.Collections.Immutable.ImmutableArray.Create(1)[Five];
}
