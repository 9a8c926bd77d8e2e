using RailRules;
using UnitsNet;
using UnitsNet.Units;

namespace Programs.Quantities.Construction;

/// <summary>The ways to make a quantity.</summary>
public static class P
{
    public static readonly ElectricCurrent FromInt = 20.Amperes();
    public static readonly ElectricCurrent FromDouble = 2.5.Amperes();
    public static readonly ElectricCurrent FromDecimal = 1.25m.Milliamperes();
    public static readonly ElectricCurrent FromLong = 3L.Kiloamperes();
    public static readonly ElectricCurrent Factory = ElectricCurrent.FromAmperes(0.1);
    public static readonly ElectricPotential Constructor = new(48, ElectricPotentialUnit.Volt);
    public static readonly ElectricPotential FromUnit = ElectricPotential.From(5, ElectricPotentialUnit.Millivolt);
    public static readonly Temperature Cold = (-40).Celsius();
    public static readonly Temperature Factory2 = Temperature.FromDegreesCelsius(25);
    public static readonly ElectricResistance Zero = ElectricResistance.Zero;
    public static readonly ElectricResistance Default = default;
    public static readonly JouleIntegral Integral = 320.AmpereSquaredSeconds();
    public static readonly Ratio Percent = 95.Percent();
}
