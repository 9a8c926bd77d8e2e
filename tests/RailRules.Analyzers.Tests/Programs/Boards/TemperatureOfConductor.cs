using RailRules;
using UnitsNet;

namespace Programs.Boards.TemperatureOfConductor;

/// <summary>Resistance and temperature that depend on each other.</summary>
public static class P
{
    public static readonly (double Celsius, double Ohms, int Steps) Result = Solve(120, 0.5e-3, 40, 1.9);
    public static readonly Temperature Conductor = Math.Round(Result.Celsius, 6).Celsius();

    private static (double Celsius, double Ohms, int Steps) Solve(double amperes, double cold, double ambient, double kelvinPerWatt)
    {
        var celsius = ambient;
        for (var step = 1; ; step++)
        {
            var ohms = cold * (1 + 0.00393 * (celsius - 20));
            var next = ambient + kelvinPerWatt * amperes * amperes * ohms;
            if (Math.Abs(next - celsius) < 1e-9 || step == 200)
                return (next, ohms, step);
            celsius = next;
        }
    }
}
