// newest compiler only
using RailRules;
using UnitsNet;

namespace Programs.Extensions14.Quantities;

/// <summary>Extension members on quantities and on parts.</summary>
public static class P
{
    public static readonly Power Loss = 20.Amperes().LossIn(1.5.Milliohms());
    public static readonly double Headroom = new Fuse { RatedCurrent = 20.Amperes() }.Headroom(15.Amperes());
    public static readonly bool Known = new Fuse { RatedCurrent = 20.Amperes() }.HasRating && !new Fuse().HasRating;
}

public static class PartExtras
{
    extension(ElectricCurrent current)
    {
        public Power LossIn(ElectricResistance resistance) => Power.FromWatts(current.Amperes * current.Amperes * resistance.Ohms);
    }

    extension(Fuse fuse)
    {
        public bool HasRating => fuse.RatedCurrent is not null;

        public double Headroom(ElectricCurrent load) => fuse.RatedCurrent is { } rated ? rated / load : double.NaN;
    }
}
