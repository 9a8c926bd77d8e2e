using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.SlotsByLinq;

/// <summary>A rail for each slot.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()) };
    private static readonly Fuse Reed20 = new() { PartNumber = "Reed20", RatedCurrent = 20.Amperes() };
    private static readonly Trace SledTrace = new() { Resistance = 1.5.Milliohms() };
    public static readonly ImmutableArray<Rail> Sleds =
    [
        .. Enumerable.Range(1, 8).Select(slot => new Rail
        {
            Name = $"Sled {slot}",
            From = Plant,
            Path = [Reed20.As($"F{10 + slot}"), SledTrace],
            Return = Return.Mirrored,
            Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts(), InputCapacitance = 940.Microfarads() }],
        }),
    ];
    public static readonly int Count = Sleds.Length;
    public static readonly string Designators = string.Join(' ', Sleds.Select(sled => sled.Path[0].Designator));
    public static readonly bool OnePart = Sleds.All(sled => ReferenceEquals(sled.Path[1], SledTrace));
}
