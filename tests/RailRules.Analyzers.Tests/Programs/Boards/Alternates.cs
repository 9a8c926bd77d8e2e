using RailRules;

namespace Programs.Boards.Alternates;

/// <summary>Parts that may be fitted instead.</summary>
public static class P
{
    private static readonly Fuse First = new() { PartNumber = "Marl15", RatedCurrent = 15.Amperes() };
    private static readonly Fuse Second = First with { PartNumber = "Sedge15", MeltingIntegral = 140.AmpereSquaredSeconds() };
    public static readonly Fuse WithAlternates = First with { Alternates = [Second, Second with { PartNumber = "Sedge15A" }] };
    public static readonly Rail Rail1 = new() { Path = [WithAlternates.As("F3")] };
    public static readonly string Numbers = string.Join('/', WithAlternates.Alternates.Select(part => part.PartNumber));
    public static readonly bool Kept = ReferenceEquals(((Fuse)Rail1.Path[0]).Alternates[0], Second);
}
