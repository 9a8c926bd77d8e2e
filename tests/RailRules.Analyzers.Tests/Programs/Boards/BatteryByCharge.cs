using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.BatteryByCharge;

/// <summary>Open-circuit voltage against state of charge.</summary>
public static class P
{
    private static readonly (double Charge, double Volts)[] Curve = [(0, 3.0), (0.1, 3.35), (0.5, 3.62), (0.9, 4.02), (1, 4.2)];
    public static readonly ImmutableArray<double> Volts = [.. new[] { 0, 0.05, 0.3, 0.7, 1 }.Select(charge => Math.Round(14 * At(charge), 4))];
    public static readonly Battery Pack = new() { OpenCircuitVoltage = Band.Of((14 * At(0.1)).Volts(), (14 * At(0.5)).Volts(), (14 * At(1)).Volts()) };

    private static double At(double charge)
    {
        for (var i = 1; i < Curve.Length; i++)
        {
            if (charge <= Curve[i].Charge)
            {
                var share = (charge - Curve[i - 1].Charge) / (Curve[i].Charge - Curve[i - 1].Charge);
                return Curve[i - 1].Volts + share * (Curve[i].Volts - Curve[i - 1].Volts);
            }
        }

        return Curve[^1].Volts;
    }
}
