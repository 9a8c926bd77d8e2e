using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.FuseFamilies;

/// <summary>Two families of fuses in one table of tuples.</summary>
public static class P
{
    private static readonly (string Family, double Amperes, int Volts, double Melting)[] Table =
    [
        ("Marl", 5, 125, 11), ("Marl", 10, 125, 48), ("Sedge", 30, 80, 720), ("Sedge", 60, 80, 3100),
    ];
    public static readonly ImmutableArray<Fuse> All = [.. Table.Select(row => new Fuse { PartNumber = row.Family + row.Amperes, RatedCurrent = row.Amperes.Amperes(), DcVoltageRating = row.Volts.Volts(), MeltingIntegral = row.Melting.AmpereSquaredSeconds() })];
    public static readonly ImmutableArray<Fuse> Sedges = [.. All.Where(fuse => fuse.PartNumber!.StartsWith("Sedge", StringComparison.Ordinal))];
    public static readonly ImmutableArray<double> PerSquare = [.. Table.Select(row => row.Melting / (row.Amperes * row.Amperes))];
    public static readonly bool SameObject = ReferenceEquals(All[2], Sedges[0]);
}
