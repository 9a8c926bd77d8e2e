using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.AltitudeDerating;

/// <summary>A factor that falls above 2000 m.</summary>
public static class P
{
    public static readonly ImmutableArray<AltitudePoint> Points = [.. Enumerable.Range(0, 6).Select(i => new AltitudePoint((i * 1000).Meters(), Factor(i * 1000)))];
    public static readonly CircuitBreaker Breaker = new() { RatedCurrent = 63.Amperes(), Poles = 2, AltitudeDerating = Points, MagneticTrip = Band.Of(7.Amperes() * 63, 10.Amperes() * 63) };

    private static double Factor(double meters) => meters <= 2000 ? 1 : 1 - (meters - 2000) / 20_000;
}
