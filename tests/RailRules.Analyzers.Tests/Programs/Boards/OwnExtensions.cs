using RailRules;
using UnitsNet;

namespace Programs.Boards.OwnExtensions;

/// <summary>A team's own extension methods over parts.</summary>
public static class P
{
    public static readonly Fuse Derated = new Fuse { RatedCurrent = 20.Amperes() }.DeratedTo(0.8);
    public static readonly ElectricCurrent Budget = new[] { 10.Amperes(), 2.5.Amperes() }.Total();
    public static readonly Rail Long = new Rail { Name = "long" }.Through(new Trace(), new Connector()).Through(new Wire());
    public static readonly int Elements = Long.Path.Length;
}

public static class Helpers
{
    public static Fuse DeratedTo(this Fuse fuse, double factor) => fuse with { RatedCurrent = fuse.RatedCurrent * factor };

    public static ElectricCurrent Total(this IEnumerable<ElectricCurrent> currents) => currents.Aggregate(ElectricCurrent.Zero, (a, b) => a + b);

    public static Rail Through(this Rail rail, params Element[] elements) => rail with { Path = rail.Path.AddRange(elements) };
}
