using RailRules;

namespace Programs.Boards.PlacedClamps;

/// <summary>Clamps and capacitors take designators as series parts do.</summary>
public static class P
{
    private static readonly TransientSuppressor Clamp = new() { Name = "clamp", StandOffVoltage = 64.Volts() };
    private static readonly Capacitor Bulk = new() { Name = "bulk", Capacitance = 470.Microfarads() };

    public static readonly TransientSuppressor First = Clamp.As("Z1");
    public static readonly bool FirstIsAnother = ReferenceEquals(First, Clamp);
    public static readonly Rail Slot = new() { Clamps = [First, Clamp.As("Z2"), Clamp.As("Z3") with { StandOffVoltage = 58.Volts() }], Capacitors = [Bulk.As("C1")] };
}
