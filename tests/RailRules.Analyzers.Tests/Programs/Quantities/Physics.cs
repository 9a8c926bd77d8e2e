using RailRules;
using UnitsNet;

namespace Programs.Quantities.Physics;

/// <summary>Copper resistance, trace heating and inrush by hand.</summary>
public static class P
{
    public static readonly ElectricResistance Wire = Copper(4.Meters(), 2.5.SquareMillimeters(), 75.Celsius());
    public static readonly ElectricCurrent Inrush = 54.Volts() / 0.1.Ohms();
    public static readonly JouleIntegral Surge = InrushIntegral(54.Volts(), 940.Microfarads(), 100.Milliohms());
    public static readonly double Settled = Math.Round(Rise(10, 0.002, 0.006), 9);

    private static ElectricResistance Copper(Length length, Area section, Temperature at)
    {
        const double resistivity = 1.724e-8;
        var cold = resistivity * length.Meters / section.SquareMeters;
        return ElectricResistance.FromOhms(cold * (1 + 0.00393 * (at - 20.Celsius()).Kelvins));
    }

    private static JouleIntegral InrushIntegral(ElectricPotential voltage, ElectricCapacitance capacitance, ElectricResistance resistance) =>
        JouleIntegral.FromAmpereSquaredSeconds(voltage.Volts * voltage.Volts * capacitance.Farads / (2 * resistance.Ohms));

    private static double Rise(double final, double tau, double time) => final * (1 - Math.Exp(-time / tau));
}
