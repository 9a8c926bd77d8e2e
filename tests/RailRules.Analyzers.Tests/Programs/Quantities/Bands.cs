using RailRules;
using UnitsNet;

namespace Programs.Quantities.Bands;

/// <summary>Bands of two and three values, exact values, with and deconstruction.</summary>
public static class P
{
    public static readonly Band<ElectricPotential> Three = Band.Of(43.Volts(), 54.Volts(), 57.Volts());
    public static readonly Band<ElectricPotential> Two = Band.Of(43.Volts(), 57.Volts());
    public static readonly Band<ElectricPotential> Exact = 54.Volts();
    public static readonly Band<ElectricPotential>? NullableBand = 54.Volts();
    public static readonly ElectricPotential Low = Three.Min;
    public static readonly ElectricPotential? Usual = Two.Typical;
    public static readonly bool Ordered = Three.IsOrdered && !Band.Of(5.Volts(), 3.Volts()).IsOrdered;
    public static readonly Band<ElectricPotential> Wider = Three with { Max = 60.Volts() };
    public static readonly double Spread = Width(Three);
    public static readonly Band<ElectricResistance> Tolerance = Around(1.Milliohms(), 0.1);
    public static readonly double? Middle = NullableBand?.Typical?.Volts;
    public static readonly bool Equal = Band.Of(1.Volts(), 2.Volts()) == Band.Of(1.Volts(), 2.Volts());

    private static double Width(Band<ElectricPotential> band)
    {
        var (min, _, max) = band;
        return max.Volts - min.Volts;
    }

    private static Band<ElectricResistance> Around(ElectricResistance nominal, double tolerance) => Band.Of(nominal * (1 - tolerance), nominal, nominal * (1 + tolerance));
}
