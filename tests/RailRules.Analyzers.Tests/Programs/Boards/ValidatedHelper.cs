using System.Collections.Immutable;
using RailRules;

namespace Programs.Boards.ValidatedHelper;

/// <summary>A helper with guards that hold.</summary>
public static class P
{
    public static readonly Fuse Fine = Make(10, 80);
    public static readonly ImmutableArray<Fuse> Family = [.. new[] { 1.0, 2, 5 }.Select(amperes => Make(amperes, 125))];

    private static Fuse Make(double amperes, int volts)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(amperes);
        if (volts is < 12 or > 1000)
            throw new ArgumentOutOfRangeException(nameof(volts), volts, "between 12 and 1000");
        return new() { RatedCurrent = amperes.Amperes(), DcVoltageRating = volts.Volts() };
    }
}
