using RailRules;
using UnitsNet;

namespace Programs.Boards.TuplesOfRails;

/// <summary>Several rails returned together.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = 54.Volts() };
    public static readonly (Rail Left, Rail Right) Pair = Split(Plant, "Fan", 3.Amperes());
    public static readonly Rail Left = Pair.Left;
    public static readonly bool Both = Pair is ({ Name: "Fan left" }, { Name: "Fan right" });

    private static (Rail Left, Rail Right) Split(Source from, string name, ElectricCurrent rated)
    {
        Rail Half(string side) => new() { Name = $"{name} {side}", From = from, Path = [new Fuse { RatedCurrent = rated }] };
        return (Half("left"), Half("right"));
    }
}
