namespace RailRules.Tests.Cases.Boards;

/// <summary>case-083: Thermistor limiter that is still hot after a short outage. Invented, not for use.</summary>
[Board]
public static class Case083
{
    public static readonly Supply Plant = new() { Voltage = 57.Volts(), SourceResistance = 0.Ohms() }; // the rest of the loop is in the return

    public static readonly Rail Input = new()
    {
        From = Plant,
        Path =
        [
            new Fuse { Name = "F1", RatedCurrent = 10.Amperes(), ColdResistance = 0.Ohms(), MeltingIntegral = 60.AmpereSquaredSeconds() },
            new InrushLimiter { Name = "RT1", ColdResistance = 5.Ohms(), HotResistance = 0.15.Ohms(), RecoveryTime = 60.Seconds() }, // cooling time assumed here
        ],
        Return = Return.OfResistance(50.Milliohms()),
        Loads = [new() { Name = "Converter", InputCapacitance = 4.7.Millifarads(), InputCapacitorEsr = 0.Ohms(), StartsInLife = 1000 }],
        ShortestOutage = 1.Seconds(), // assumed here: shorter than the cooling time
    };
}
