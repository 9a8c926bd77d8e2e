using RailRules;

namespace Programs.Boards.Clamps;

/// <summary>Clamps with their data, chosen by stand-off voltage.</summary>
public static class P
{
    private static readonly double[] StandOffs = [26, 33, 40, 48, 58, 64, 70];
    public static readonly TransientSuppressor For48 = Choose(57);
    public static readonly TransientSuppressor For24 = Choose(30);
    public static readonly Rail Rail48 = new() { Clamps = [For48 with { Designator = "D1" }] };

    private static TransientSuppressor Choose(double highest)
    {
        var standOff = StandOffs.First(volts => volts > highest * 1.05);
        return new()
        {
            PartNumber = $"Gorse{standOff}",
            StandOffVoltage = standOff.Volts(),
            BreakdownVoltage = Band.Of((standOff * 1.11).Volts(), (standOff * 1.23).Volts()),
            ClampingVoltage = new() { Voltage = (standOff * 1.61).Volts(), Current = (5000 / (standOff * 1.61)).Amperes() },
            PeakPulsePower = new() { Power = 5.Kilowatts(), Width = 1.Milliseconds() },
        };
    }
}
