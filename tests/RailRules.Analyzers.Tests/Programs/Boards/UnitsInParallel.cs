using RailRules;

namespace Programs.Boards.UnitsInParallel;

/// <summary>A plant of several units.</summary>
public static class P
{
    public static readonly Supply Plant = Combine(3, 2);
    public static readonly Supply One = Combine(1, 1);

    private static Supply Combine(int most, int fewest)
    {
        const double each = 40;
        return new Supply
        {
            Voltage = Band.Of(53.Volts(), 54.Volts(), 55.Volts()),
            ContinuousCurrent = (each * fewest).Amperes(),
            SourceResistance = Band.Of((6.0 / most).Milliohms(), (6.0 / fewest).Milliohms()),
            CurrentLimit = new() { Level = Band.Of((each * 1.02 * fewest).Amperes(), (each * 1.1 * most).Amperes()) },
            UnitsMin = fewest,
            UnitsMax = most,
        };
    }
}
