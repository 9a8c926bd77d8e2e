using System.Collections.Immutable;

namespace RailRules.Physics;

/// <summary>
/// The gates of standard families (rulebook R-13). UL 248-14 was found restated by the trade; IEC 60127-2, ISO 8820-3 and IEC 60269 are from memory, to be
/// verified against the current editions. Currents in A, times in s.
/// </summary>
internal static class StandardGates
{
    /// <summary>The gates that a family promises for a rated current; empty where the family has none at that rating.</summary>
    /// <param name="family">The family.</param>
    /// <param name="ratedCurrent">Rated current (A).</param>
    internal static ImmutableArray<Gate> Of(Characteristic family, double ratedCurrent) => family switch
    {
        // UL 248-14: carries 100 %, opens within 1 h at 135 %, within 2 min at 200 % (up to 30 A) or 4 min (31 to 60 A).
        Characteristic.Ul248Part14 when ratedCurrent <= 60 => [new(1.00, double.PositiveInfinity, null), new(1.35, null, 3600), new(2.00, null, ratedCurrent <= 30 ? 120 : 240)],
        Characteristic.Ul248Part14 => [new(1.00, double.PositiveInfinity, null), new(1.35, null, 3600)],

        // IEC 60127-2, standard sheet 2 (F, low breaking capacity), 32 mA to 6.3 A; the gates hold from 125 mA.
        Characteristic.Iec60127QuickActing when ratedCurrent is >= 0.125 and <= 6.3 =>
            [new(2.10, null, 1800), new(2.75, 0.05, 2), new(4, 0.01, 0.3), new(10, null, 0.02)],
        Characteristic.Iec60127QuickActing => [new(2.10, null, 1800)],

        // IEC 60127-2, standard sheet 3 (T, low breaking capacity), 125 mA to 10 A.
        Characteristic.Iec60127TimeLag when ratedCurrent is >= 0.125 and <= 10 =>
            [new(2.10, null, 120), new(2.75, 0.6, 10), new(4, 0.15, 3), new(10, 0.02, 0.3)],
        Characteristic.Iec60127TimeLag => [new(2.10, null, 120)],

        // ISO 8820-3, types C and F.
        Characteristic.Iso8820Blade =>
            [new(1.10, 360000, null), new(1.35, 0.75, 600), new(2.00, 0.15, 5), new(3.50, null, 0.5), new(6.00, null, 0.1)],
        Characteristic.Iec60269gG => GeneralPurpose(ratedCurrent),
        _ => [],
    };

    /// <summary>Multiple of the rated current at which the family opens for certain within its conventional time; null: none known.</summary>
    /// <param name="family">The family.</param>
    /// <param name="ratedCurrent">Rated current (A).</param>
    internal static double? SureOpeningMultiple(Characteristic family, double ratedCurrent) => family switch
    {
        Characteristic.Ul248Part14 or Characteristic.Iso8820Blade => 1.35,
        Characteristic.Iec60127QuickActing or Characteristic.Iec60127TimeLag => 2.1,

        // IEC 60269-1 Table 2 and IEC 60269-2 (from memory).
        Characteristic.Iec60269gG => ratedCurrent >= 16 ? 1.6 : ratedCurrent > 4 ? 1.9 : 2.1,
        _ => null,
    };

    /// <summary>Conventional time of a gG fuse (s). Source: IEC 60269-1 Table 2 (from memory).</summary>
    internal static double ConventionalTime(double ratedCurrent) => ratedCurrent <= 63 ? 3600 : ratedCurrent <= 160 ? 7200 : ratedCurrent <= 400 ? 10800 : 14400;

    /// <summary>
    /// gG: rated current and the currents of its gates: at least 10 s, at most 5 s, at least 0.1 s, at most 0.1 s.
    /// Source: IEC 60269-1 Table 3 (from memory, to be verified). Each "at most 0.1 s" is the "at least 0.1 s" of the rating 1.6 times as high.
    /// </summary>
    internal static ImmutableArray<(double Rated, double Least10, double Most5, double LeastTenth, double MostTenth)> GeneralPurposeGates { get; } =
    [
        (16, 33, 65, 85, 150), (20, 42, 85, 110, 200), (25, 52, 110, 150, 260), (32, 75, 150, 200, 350), (40, 95, 190, 260, 450),
        (50, 125, 250, 350, 610), (63, 160, 320, 450, 820), (80, 215, 425, 610, 1100), (100, 290, 580, 820, 1450), (125, 355, 715, 1100, 1910),
        (160, 460, 950, 1450, 2590), (200, 610, 1250, 1910, 3420), (250, 750, 1650, 2590, 4500), (315, 1050, 2200, 3420, 6000),
        (400, 1420, 2840, 4500, 8060), (500, 1780, 3800, 6000, 10600), (630, 2200, 5100, 8060, 14140), (800, 3060, 7000, 10600, 19000),
        (1000, 4000, 9500, 14140, 24000), (1250, 5000, 13000, 19000, 35000),
    ];

    private static ImmutableArray<Gate> GeneralPurpose(double ratedCurrent)
    {
        var conventional = ConventionalTime(ratedCurrent);
        var sure = SureOpeningMultiple(Characteristic.Iec60269gG, ratedCurrent)!.Value;
        var gates = new List<Gate> { new(sure, null, conventional) };
        if (ratedCurrent >= 16)
            gates.Insert(0, new(1.25, conventional, null));

        foreach (var row in GeneralPurposeGates.Where(row => Math.Abs(row.Rated - ratedCurrent) < 1e-6 * row.Rated))
        {
            gates.Add(new(row.Least10 / row.Rated, 10, null));
            gates.Add(new(row.Most5 / row.Rated, null, 5));
            gates.Add(new(row.LeastTenth / row.Rated, 0.1, null));
            gates.Add(new(row.MostTenth / row.Rated, null, 0.1));
        }

        return [.. gates];
    }
}
