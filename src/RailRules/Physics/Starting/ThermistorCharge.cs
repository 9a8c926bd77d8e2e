namespace RailRules.Physics;

/// <summary>
/// Charging a capacitor through a thermistor that heats itself: R = R25 exp(β (1/T − 1/298.15 K)); C_th dT/dt = i² R − D (T − T_a).
/// Source: exponential law of negative-temperature-coefficient thermistors, IEC 60539-1 (from memory), and its heat balance; integrated by Runge-Kutta of order four.
/// </summary>
/// <param name="Time">Time at the end of each step (s).</param>
/// <param name="Current">Current there (A).</param>
/// <param name="Voltage">Voltage of the capacitor there (V).</param>
/// <param name="Temperature">Temperature of the thermistor there (K).</param>
/// <param name="Integral">Joule integral up to there (A²s).</param>
internal sealed record ThermistorCharge(double[] Time, double[] Current, double[] Voltage, double[] Temperature, double[] Integral)
{
    /// <summary>The largest current (A).</summary>
    internal double PeakCurrent
    {
        get
        {
            var k = Array.IndexOf(Current, Current.Max());
            if (k == 0 || k == Current.Length - 1)
                return Current[k];

            // The vertex of the parabola through three steps.
            double a = Current[k - 1], b = Current[k], c = Current[k + 1];
            return b + ((a - c) * (a - c) / (8 * ((2 * b) - a - c)));
        }
    }

    /// <summary>The highest temperature (K).</summary>
    internal double PeakTemperature => Temperature.Max();

    /// <summary>Integrates the charge. Null: a datum that must be above 0 is not.</summary>
    /// <param name="sourceVoltage">Source voltage (V).</param>
    /// <param name="capacitance">Capacitance (F).</param>
    /// <param name="resistance">Resistance at 25 °C (Ω).</param>
    /// <param name="beta">β of the material (K).</param>
    /// <param name="heatCapacity">Heat capacity (J/K).</param>
    /// <param name="dissipation">Dissipation factor (W/K).</param>
    /// <param name="ambient">Air temperature and temperature at the start (K).</param>
    /// <param name="end">Until when (s).</param>
    /// <param name="steps">Steps; a step should be below a fiftieth of R C.</param>
    internal static ThermistorCharge? Of(
        double sourceVoltage, double capacitance, double resistance, double beta, double heatCapacity, double dissipation, double ambient, double end, int steps = 4000)
    {
        if (!(capacitance > 0 && resistance > 0 && heatCapacity > 0 && ambient > 0 && end > 0 && steps > 0))
            return null;

        var h = end / steps;
        var curve = new ThermistorCharge(new double[steps + 1], new double[steps + 1], new double[steps + 1], new double[steps + 1], new double[steps + 1]);
        double voltage = 0, temperature = ambient, integral = 0;
        for (var n = 0; ; n++)
        {
            var a = Slope(voltage, temperature);
            curve.Time[n] = n * h;
            curve.Current[n] = a.Current;
            curve.Voltage[n] = voltage;
            curve.Temperature[n] = temperature;
            curve.Integral[n] = integral;
            if (n == steps)
                return curve;

            var b = Slope(voltage + (h / 2 * a.Voltage), temperature + (h / 2 * a.Temperature));
            var c = Slope(voltage + (h / 2 * b.Voltage), temperature + (h / 2 * b.Temperature));
            var d = Slope(voltage + (h * c.Voltage), temperature + (h * c.Temperature));
            voltage += h / 6 * (a.Voltage + (2 * b.Voltage) + (2 * c.Voltage) + d.Voltage);
            temperature += h / 6 * (a.Temperature + (2 * b.Temperature) + (2 * c.Temperature) + d.Temperature);
            integral += h / 6 * ((a.Current * a.Current) + (2 * b.Current * b.Current) + (2 * c.Current * c.Current) + (d.Current * d.Current));
        }

        (double Current, double Voltage, double Temperature) Slope(double v, double t)
        {
            var r = resistance * Math.Exp(beta * ((1 / t) - (1 / 298.15)));
            var i = (sourceVoltage - v) / r;
            return (i, i / capacitance, ((i * i * r) - (dissipation * (t - ambient))) / heatCapacity);
        }
    }

    /// <summary>First time at which the capacitor reaches a voltage (s), on the cubic that meets voltage and current at both ends of the step. Null: not reached.</summary>
    internal double? TimeToVoltage(double voltage)
    {
        var n = Array.FindIndex(Voltage, v => v >= voltage);
        if (n <= 0)
            return n == 0 ? 0 : null;

        var h = Time[n] - Time[n - 1];
        var rise = Voltage[n] - Voltage[n - 1];

        // The slopes dv/dt = i/C times h, with C from charge and voltage of the step to the same order.
        var scale = rise / ((Current[n - 1] + Current[n]) / 2);
        double first = Current[n - 1] * scale, second = Current[n] * scale;
        double low = 0, high = 1;
        for (var k = 0; k < 50; k++)
        {
            var x = (low + high) / 2;
            var value = Voltage[n - 1] + (x * (first + (x * ((3 * rise) - (2 * first) - second + (x * (first + second - (2 * rise)))))));
            (low, high) = value < voltage ? (x, high) : (low, x);
        }

        return Time[n - 1] + (h * high);
    }
}
