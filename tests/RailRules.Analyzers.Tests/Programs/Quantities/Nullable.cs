using RailRules;
using UnitsNet;

namespace Programs.Quantities.Nullable;

/// <summary>Quantities that may be absent.</summary>
public static class P
{
    private static readonly ElectricCurrent? Rated = 20.Amperes();
    private static readonly ElectricCurrent? None = null;
    public static readonly ElectricCurrent? Derated = Rated * 0.86;
    public static readonly ElectricCurrent? NoDerated = None * 0.86;
    public static readonly ElectricCurrent? Sum = Rated + None;
    public static readonly double? Amperes = Rated?.Amperes;
    public static readonly double NoAmperes = None?.Amperes ?? double.NaN;
    public static readonly bool Less = Rated < 25.Amperes();
    public static readonly bool NoLess = None < 25.Amperes();
    public static readonly ElectricCurrent Either = None ?? Rated ?? ElectricCurrent.Zero;
    public static readonly string Pattern = Rated is { Amperes: > 10 } ? "large" : "small";
    public static readonly Power? Loss = Rated * (ElectricPotential?)54.Volts();
}
