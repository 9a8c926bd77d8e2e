using RailRules;

namespace Programs.Boards.ConditionalParts;

/// <summary>Parts that are fitted only in one variant.</summary>
public static class P
{
    private const bool Marine = true;
    public static readonly Rail Feed = new()
    {
        Path =
        [
            new Fuse { RatedCurrent = 30.Amperes() }.As("F1"),
            .. Marine ? new Element[] { new Switch { RatedCurrent = 40.Amperes() }.As("S1") } : [],
            .. Extra(2),
        ],
        Clamps = Marine ? [new() { StandOffVoltage = 64.Volts() }] : [],
    };
    public static readonly int Elements = Feed.Path.Length;

    private static IEnumerable<Element> Extra(int count)
    {
        for (var i = 0; i < count; i++)
            yield return new Connector { Name = "extra " + i };
    }
}
