namespace RailRules.Tests.Cases.Boards;

/// <summary>case-072: Fuse bursts loudly at first switch-on after winter lay-up. Invented, not for use.</summary>
[Board]
public static class Case072
{
    public static readonly Battery Starter = new() { OpenCircuitVoltage = 12.8.Volts(), InternalResistance = 0.Ohms() }; // the loop as a whole is in the return

    public static readonly Rail Input = new()
    {
        From = Starter,
        Path = [new Fuse { Name = "F1", RatedCurrent = 20.Amperes(), ColdResistance = 0.Ohms(), MeltingIntegral = 400.AmpereSquaredSeconds() }],
        Return = Return.OfResistance(20.Milliohms()),
        Loads = [new() { Name = "Unit", InputCapacitance = 2200.Microfarads(), InputCapacitorEsr = 0.Ohms(), StartsInLife = 10_000 }], // 3000 starts, counted at the next entry of the case's table
    };
}
