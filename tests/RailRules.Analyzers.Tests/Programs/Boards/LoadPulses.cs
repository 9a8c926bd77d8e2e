using RailRules;
using UnitsNet;

namespace Programs.Boards.LoadPulses;

/// <summary>Pulses and inrush of a load by formula.</summary>
public static class P
{
    private static readonly ElectricCapacitance Bulk = 2200.Microfarads();
    public static readonly Load Radio = new()
    {
        Name = "radio",
        Power = Band.Of(20.Watts(), 30.Watts(), 45.Watts()),
        InputCapacitance = Band.Of(Bulk * 0.8, Bulk, Bulk * 1.2),
        Pulses = [new() { Current = 9.Amperes(), Width = 577.Microseconds(), Period = 4.615.Milliseconds(), Shape = PulseShape.Rectangle }],
        StartsInLife = 10 * 365 * 2,
        EnablesAt = EnablesAt.Voltage(38.Volts()),
    };
    public static readonly double Energy = 0.5 * Bulk.Farads * 54 * 54;
    public static readonly double Duty = 0.577 / 4.615;
}
