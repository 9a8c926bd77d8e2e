using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.TelecomShelf;

/// <summary>A shelf with positive earth, eight cards and a fan tray.</summary>
public static class P
{
    private static readonly Supply Plant = new() { Voltage = Band.Of(40.5.Volts(), 53.5.Volts(), 57.Volts()), Earthing = Earthing.Positive, TransientMax = 60.Volts() };
    private static readonly Wire Feeder = new() { Length = 12.Meters(), Section = 16.SquareMillimeters() };
    public static readonly Rail Shelf = new()
    {
        From = Plant,
        Polarity = Polarity.Negative,
        Path = [new CircuitBreaker { RatedCurrent = 63.Amperes(), DcVoltageRating = 80.Volts() }.As("Q1"), Feeder],
        Return = Return.Mirrored,
    };
    public static readonly ImmutableArray<Rail> Cards = [.. Enumerable.Range(0, 8).Select(slot => Card(slot)), Card(8) with { Name = "Fan tray" }];
    public static readonly int Rails = Cards.Length;

    private static Rail Card(int slot) => new()
    {
        Name = $"Card {slot}",
        From = Shelf,
        Polarity = Shelf.Polarity,
        Path = [new ElectronicFuse { TripLevel = Band.Of(5.Amperes(), 6.Amperes()) }.As($"U{slot}")],
        Loads = [new() { Power = (slot == 8 ? 60 : 180).Watts(), MinVoltage = 38.Volts() }],
    };
}
