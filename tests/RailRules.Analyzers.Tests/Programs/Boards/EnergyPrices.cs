using RailRules;

namespace Programs.Boards.EnergyPrices;

/// <summary>Decimal money beside double physics.</summary>
public static class P
{
    private const decimal PerKilowattHour = 0.2875m;
    public static readonly decimal Yearly = Cost(0.012);
    public static readonly decimal Rounded = decimal.Round(Cost(0.35), 2);

    private static decimal Cost(double kilowatts) => (decimal)kilowatts * 24 * 365 * PerKilowattHour;
}
