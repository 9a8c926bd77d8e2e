using System.Collections.Immutable;
using RailRules;
using UnitsNet;

namespace Programs.Quantities.Comparison;

/// <summary>Comparing quantities of different units.</summary>
public static class P
{
    private static readonly ElectricPotential Low = 900.Millivolts();
    private static readonly ElectricPotential High = 1.Volts();
    public static readonly bool Less = Low < High;
    public static readonly bool LessOrEqual = High <= 1000.Millivolts();
    public static readonly bool Greater = Low > High;
    public static readonly int Compared = Low.CompareTo(High);
    public static readonly ElectricPotential Max = UnitMath.Max(Low, High);
    public static readonly ElectricPotential Min = UnitMath.Min(Low, High);
    public static readonly ElectricPotential Clamped = UnitMath.Clamp(5.Volts(), Low, High);
    public static readonly ElectricPotential Absolute = UnitMath.Abs(-High);
    public static readonly ElectricPotential Largest = new[] { Low, High, 950.Millivolts() }.Max();
    public static readonly ImmutableArray<ElectricPotential> Sorted = [.. new[] { High, Low }.Order()];
    public static readonly bool Hot = 85.Celsius() > 300.Kelvins2();
}

public static class Numbers
{
    public static Temperature Kelvins2(this int value) => Temperature.FromKelvins(value);
}
