using RailRules;

namespace Programs.Boards.RedundantFeeds;

/// <summary>Two plants on one rail.</summary>
public static class P
{
    private static readonly Supply A = new() { Voltage = 54.Volts() };
    private static readonly Supply B = new() { Voltage = 53.5.Volts() };
    private static readonly BlockingDiode Diode = new() { ForwardDrop = Band.Of(0.3.Volts(), 0.5.Volts()), RatedCurrent = 60.Amperes() };
    public static readonly Rail Shelf = new()
    {
        Feeds = [FeedOf(A, "F1"), FeedOf(B, "F2")],
        FeedsNeeded = 1,
        Loads = [new() { Power = 1.2.Kilowatts() }],
    };
    public static readonly bool SharedDiode = ReferenceEquals(Shelf.Feeds[0].Path[1], Shelf.Feeds[1].Path[1]);

    private static Feed FeedOf(Source source, string designator) => new()
    {
        From = source,
        Path = [new Fuse { RatedCurrent = 50.Amperes() }.As(designator), Diode],
        Return = Return.Mirrored,
    };
}
