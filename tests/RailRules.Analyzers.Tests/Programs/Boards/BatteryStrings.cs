using RailRules;
using UnitsNet;

namespace Programs.Boards.BatteryStrings;

/// <summary>Battery data from cells in series and strings in parallel.</summary>
public static class P
{
    private static readonly (int Cells, int Strings) Pack = (14, 3);
    public static readonly Battery Store = new()
    {
        OpenCircuitVoltage = Band.Of(3.0.Volts() * Pack.Cells, 3.65.Volts() * Pack.Cells, 4.2.Volts() * Pack.Cells),
        InternalResistance = Band.Of(1.8.Milliohms() * Pack.Cells, 4.5.Milliohms() * Pack.Cells),
        Strings = Pack.Strings,
        ContinuousCurrent = 20.Amperes() * Pack.Strings,
    };
    public static readonly ElectricCurrent Fault = 4.2.Volts() * Pack.Cells / (1.8.Milliohms() * Pack.Cells / Pack.Strings);
}
