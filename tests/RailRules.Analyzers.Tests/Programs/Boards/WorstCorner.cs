using RailRules;
using UnitsNet;

namespace Programs.Boards.WorstCorner;

/// <summary>The worst corner of a band chosen by what it is for.</summary>
public static class P
{
    private static readonly Band<ElectricPotential> Bus = Band.Of(43.Volts(), 54.Volts(), 57.Volts());
    private static readonly Band<ElectricResistance> Path = Band.Of(4.Milliohms(), 6.Milliohms(), 9.Milliohms());
    public static readonly ElectricCurrent LargestFault = Bus.Max / Path.Min;
    public static readonly ElectricCurrent SmallestFault = Bus.Min / Path.Max;
    public static readonly ElectricCurrent LargestLoad = ElectricCurrent.FromAmperes(600 / Bus.Min.Volts);
    public static readonly ElectricCurrent UsualLoad = ElectricCurrent.FromAmperes(600 / Bus.Typical!.Value.Volts);
    public static readonly bool Ordered = SmallestFault < LargestFault && UsualLoad < LargestLoad;
}
