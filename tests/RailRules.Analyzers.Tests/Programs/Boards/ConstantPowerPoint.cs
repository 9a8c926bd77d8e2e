using RailRules;

namespace Programs.Boards.ConstantPowerPoint;

/// <summary>The operating point of a constant-power load by iteration.</summary>
public static class P
{
    public static readonly double Voltage = Solve(54, 0.05, 600);
    public static readonly double Closed = (54 + Math.Sqrt(54 * 54 - 4 * 0.05 * 600)) / 2;
    public static readonly double Difference = Math.Round(Solve(54, 0.05, 600) - (54 + Math.Sqrt(54 * 54 - 4 * 0.05 * 600)) / 2, 9);
    public static readonly double Low = Solve(43, 0.05, 600);

    private static double Solve(double source, double ohms, double watts)
    {
        var voltage = source;
        for (var i = 0; i < 100; i++)
        {
            var next = source - ohms * watts / voltage;
            if (Math.Abs(next - voltage) < 1e-12)
                break;
            voltage = next;
        }

        return voltage;
    }
}
