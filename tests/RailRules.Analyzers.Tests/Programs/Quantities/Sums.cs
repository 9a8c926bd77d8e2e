using RailRules;
using UnitsNet;
using UnitsNet.Units;

namespace Programs.Quantities.Sums;

/// <summary>Sums, means and extremes over quantities.</summary>
public static class P
{
    private static readonly ElectricCurrent[] Currents = [1.Amperes(), 250.Milliamperes(), 0.5.Amperes()];
    public static readonly ElectricCurrent ByAggregate = Currents.Aggregate(ElectricCurrent.Zero, (a, b) => a + b);
    public static readonly ElectricCurrent ByUnitMath = UnitMath.Sum(Currents, ElectricCurrentUnit.Ampere);
    public static readonly ElectricCurrent Selected = ElectricCurrent.FromAmperes(Currents.Sum(c => c.Amperes));
    public static readonly double Largest = Currents.Max(c => c.Milliamperes);
    public static readonly ElectricCurrent MaxBy = Currents.MaxBy(c => c.Amperes);
    public static readonly ElectricCurrent Average = UnitMath.Average(Currents, ElectricCurrentUnit.Milliampere);
    public static readonly int Above = Currents.Count(c => c > 400.Milliamperes());
}
