using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Qualifications;

/// <summary>Required and given qualifications compared as sets.</summary>
public static class P
{
    private static readonly string[] Required = ["EN 45545-2", "IEC 61373"];
    public static readonly Fuse Part = new() { Qualifications = ["EN 45545-2", "UL 248-14"] };
    public static readonly ImmutableArray<string> Missing = [.. Required.Except(Part.Qualifications!.Value)];
    public static readonly bool All = Required.All(name => Part.Qualifications.Value.Contains(name));
    public static readonly Surroundings Train = new() { RequiredQualifications = [.. Required], Vibration = 5.MetersPerSecondSquared() };
    public static readonly bool NotStated = new Fuse().Qualifications is null;
}
