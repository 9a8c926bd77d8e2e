using RailRules;
using UnitsNet;

namespace Programs.Quantities.Temperatures;

/// <summary>Temperatures and their differences.</summary>
public static class P
{
    private static readonly Temperature Air = 55.Celsius();
    public static readonly Temperature Hotter = Air + 20.Kelvins();
    public static readonly TemperatureDelta Rise = 85.Celsius() - Air;
    public static readonly double RiseKelvin = (85.Celsius() - Air).Kelvins;
    public static readonly Temperature Cooler = Air - TemperatureDelta.FromDegreesCelsius(5);
    public static readonly double Fahrenheit = Air.DegreesFahrenheit;
    public static readonly double Factor = 1 + 0.00393 * (Air.DegreesCelsius - 20);
    public static readonly bool Above = Air > 25.Celsius();
}
