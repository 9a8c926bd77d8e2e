using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.Capacitors;

/// <summary>Capacitors with tolerance and voltage rating.</summary>
public static class P
{
    public static readonly Capacitor Bulk = Electrolytic(4700, 63, 20);
    public static readonly ImmutableArray<Capacitor> Bank = [.. Enumerable.Repeat(Bulk, 3)];
    public static readonly double Total = Bank.Sum(c => c.Capacitance!.Value.Typical!.Value.Microfarads);
    public static readonly bool Same = ReferenceEquals(Bank[0], Bank[2]);

    private static Capacitor Electrolytic(double microfarads, double volts, double tolerance) => new()
    {
        Capacitance = Band.Of((microfarads * (1 - tolerance / 100)).Microfarads(), microfarads.Microfarads(), (microfarads * (1 + tolerance / 100)).Microfarads()),
        VoltageRating = volts.Volts(),
        SurgeWithstand = (volts * 1.1).Volts(),
    };
}
