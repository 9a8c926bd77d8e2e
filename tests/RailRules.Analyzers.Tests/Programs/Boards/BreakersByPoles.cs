using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.BreakersByPoles;

/// <summary>Voltage ratings that grow with poles in series.</summary>
public static class P
{
    public static readonly ImmutableArray<CircuitBreaker> Breakers = [.. from poles in Enumerable.Range(1, 3) select Make(32, poles)];
    public static readonly CircuitBreaker Reverse = Make(16, 2) with { Polarized = true, ReverseAllowed = false };

    private static CircuitBreaker Make(int amperes, int poles) => new()
    {
        PartNumber = $"Alder{amperes}-{poles}P",
        RatedCurrent = amperes.Amperes(),
        DcVoltageRating = (60 * poles).Volts(),
        Poles = poles,
        MagneticTrip = Band.Of((7 * amperes).Amperes(), (15 * amperes).Amperes()),
        InterruptingRatings = [new() { Current = 6.Kiloamperes(), Voltage = (60 * poles).Volts(), TimeConstant = 4.Milliseconds() }],
    };
}
