using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.NullableDatasheet;

/// <summary>Data that a data sheet may lack.</summary>
public static class P
{
    private static readonly (string Part, double? Melting, double? Cold)[] Sheet = [("P1", 12.5, null), ("P2", null, 3.1), ("P3", null, null)];
    public static readonly ImmutableArray<Fuse> Fuses =
    [
        .. Sheet.Select(row => new Fuse
        {
            PartNumber = row.Part,
            MeltingIntegral = row.Melting?.AmpereSquaredSeconds(),
            ColdResistance = row.Cold is { } cold ? Band.Of((cold * 0.9).Milliohms(), (cold * 1.1).Milliohms()) : null,
        }),
    ];
    public static readonly int Missing = Fuses.Count(fuse => fuse.MeltingIntegral is null);
    public static readonly bool Band1 = Fuses[1].ColdResistance?.Typical is null;
}
