using RailRules;
using UnitsNet;

namespace Programs.Quantities.Arithmetic;

/// <summary>Sums, differences, multiples and ratios of like quantities.</summary>
public static class P
{
    private static readonly ElectricCurrent A = 10.Amperes();
    private static readonly ElectricCurrent B = 500.Milliamperes();
    public static readonly ElectricCurrent Sum = A + B;
    public static readonly ElectricCurrent Difference = A - B;
    public static readonly ElectricCurrent Negative = -A;
    public static readonly ElectricCurrent Scaled = A * 0.75;
    public static readonly ElectricCurrent ScaledLeft = 3 * B;
    public static readonly ElectricCurrent Divided = A / 4;
    public static readonly double Ratio = A / B;
    public static readonly double Converted = (A + B).Amperes;
    public static readonly double MixedUnits = (B + A).Milliamperes;
    public static readonly ElectricCurrent Compound = Run();

    private static ElectricCurrent Run()
    {
        var total = ElectricCurrent.Zero;
        foreach (var n in new[] { 1.5, 2, 0.25 })
            total += n.Amperes();
        total *= 2;
        total -= B;
        return total;
    }
}
