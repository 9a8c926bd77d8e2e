using RailRules;
using UnitsNet;

namespace Programs.Quantities.OhmsLaw;

/// <summary>Operators between different quantities.</summary>
public static class P
{
    private static readonly ElectricPotential U = 54.Volts();
    private static readonly ElectricCurrent I = 12.Amperes();
    private static readonly ElectricResistance R = 1.5.Milliohms();
    public static readonly ElectricPotential Drop = I * R;
    public static readonly ElectricResistance Load = U / I;
    public static readonly ElectricCurrent Fault = U / R;
    public static readonly Power Drawn = U * I;
    public static readonly decimal Watts = (U * I).Watts;
    public static readonly Energy E = Drawn * 2.Hours();
    public static readonly Power Loss = Power.FromWatts(I.Amperes * I.Amperes * R.Ohms);
    public static readonly double TimeConstant = 5.Microhenries().Henries / R.Ohms;
    public static readonly ElectricCurrent FromPower = Drawn / U;
    public static readonly Length Way = 3.MetersPerSecond() * 2.Seconds();
}
