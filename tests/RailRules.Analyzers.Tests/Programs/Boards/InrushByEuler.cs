using RailRules;

namespace Programs.Boards.InrushByEuler;

/// <summary>An inrush current by a simple time step.</summary>
public static class P
{
    public static readonly (double Peak, double Integral) Result = Simulate(54, 0.08, 5e-6, 940e-6);
    public static readonly double PeakRounded = Math.Round(Result.Peak, 6);
    public static readonly JouleIntegral Integral = Result.Integral.AmpereSquaredSeconds();

    private static (double Peak, double Integral) Simulate(double volts, double ohms, double henries, double farads)
    {
        const double step = 1e-6;
        var (current, charge, peak, integral) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < 600; i++)
        {
            current += step * (volts - ohms * current - charge / farads) / henries;
            charge += step * current;
            peak = Math.Max(peak, current);
            integral += step * current * current;
        }

        return (peak, integral);
    }
}
