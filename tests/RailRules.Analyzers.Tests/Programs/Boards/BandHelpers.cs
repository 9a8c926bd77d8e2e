using RailRules;
using UnitsNet;

namespace Programs.Boards.BandHelpers;

/// <summary>Bands from a nominal value and a tolerance.</summary>
public static class P
{
    public static readonly Band<ElectricPotential> Bus = Percent(54.Volts(), 5);
    public static readonly Band<ElectricResistance> Shunt = Percent(0.5.Milliohms(), 1);
    public static readonly Supply Source = new() { Voltage = Percent(48.Volts(), 2), SourceResistance = UpTo(5.Milliohms()) };
    public static readonly double Low = Bus.Min.Volts;

    private static Band<ElectricPotential> Percent(ElectricPotential nominal, double percent) =>
        Band.Of(nominal * (1 - percent / 100), nominal, nominal * (1 + percent / 100));

    private static Band<ElectricResistance> Percent(ElectricResistance nominal, double percent) =>
        Band.Of(nominal * (1 - percent / 100), nominal, nominal * (1 + percent / 100));

    private static Band<ElectricResistance> UpTo(ElectricResistance largest) => Band.Of(ElectricResistance.Zero, largest);
}
