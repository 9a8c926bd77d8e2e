using RailRules;
using UnitsNet;
using UnitsNet.Units;

namespace Programs.Quantities.Values;

/// <summary>Reading a quantity in its units.</summary>
public static class P
{
    private static readonly ElectricPotential V = 1.5.Kilovolts();
    public static readonly double Volts = V.Volts;
    public static readonly double Millivolts = V.Millivolts;
    public static readonly double AsKilovolts = V.As(ElectricPotentialUnit.Kilovolt);
    public static readonly double Value = (double)V.Value;
    public static readonly ElectricPotentialUnit Unit = V.Unit;
    public static readonly ElectricPotential ToVolts = V.ToUnit(ElectricPotentialUnit.Volt);
    public static readonly double Kelvin = 25.Celsius().Kelvins;
    public static readonly double Celsius = Temperature.FromKelvins(300).DegreesCelsius;
    public static readonly decimal Watts = 2.Kilowatts().Watts;
    public static readonly double Fraction = 37.5.Percent().DecimalFractions;
    public static readonly double Micro = 22.Millifarads().Microfarads;
}
