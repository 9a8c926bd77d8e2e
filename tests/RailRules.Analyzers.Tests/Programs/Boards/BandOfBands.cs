using RailRules;
using UnitsNet;

namespace Programs.Boards.BandOfBands;

/// <summary>Bands combined by the lowest and the highest of them.</summary>
public static class P
{
    private static readonly Band<ElectricPotential>[] Sources = [Band.Of(43.Volts(), 54.Volts(), 57.Volts()), Band.Of(40.Volts(), 60.Volts()), 48.Volts()];
    public static readonly Band<ElectricPotential> Hull = Band.Of(Sources.Select(b => b.Min).Min(), Sources.Select(b => b.Max).Max());
    public static readonly Band<ElectricPotential> Common = Band.Of(Sources.Select(b => b.Min).Max(), Sources.Select(b => b.Max).Min());
    public static readonly bool Ordered = Hull.IsOrdered && Common.IsOrdered;
    public static readonly int Typical = Sources.Count(b => b.Typical is not null);
}
