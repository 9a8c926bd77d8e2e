using RailRules;

namespace Programs.Boards.Cabinets;

/// <summary>Surroundings of a cabinet and of a hot corner.</summary>
public static class P
{
    public static readonly Surroundings Cabin = new() { Ambient = Band.Of((-5).Celsius(), 25.Celsius(), 55.Celsius()), Altitude = 850.Meters(), AirSpeed = 1.5.MetersPerSecond() };
    public static readonly Surroundings Corner = Cabin with { HeatOfNeighbours = 8.Kelvins(), AirSpeed = 0.MetersPerSecond() };
    public static readonly Surroundings Roof = Hotter(Cabin, 12);
    public static readonly Fuse InCorner = new() { RatedCurrent = 10.Amperes(), Surroundings = Corner };
    public static readonly double? Highest = Roof.Ambient?.Max.DegreesCelsius;

    private static Surroundings Hotter(Surroundings cooler, double kelvins) => cooler with
    {
        Ambient = cooler.Ambient is { } band ? band with { Max = band.Max + kelvins.Kelvins() } : null,
    };
}
