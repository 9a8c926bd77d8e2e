using RailRules;
using UnitsNet;

namespace Programs.Throws.Boards;

/// <summary>No part in the list carries the load.</summary>
public static class P
{
    public static Fuse Chosen => Stock().First(fuse => fuse.RatedCurrent > 100.Amperes());
    public static Fuse Unstated => new() { RatedCurrent = Stock()[0].MeltingIntegral!.Value.Min.AmpereSquaredSeconds.Amperes() };
    public static ElectricCurrent NotANumber => (0.0 / 0.0).Amperes();

    private static Fuse[] Stock() => [new() { RatedCurrent = 10.Amperes() }, new() { RatedCurrent = 20.Amperes() }];
}
