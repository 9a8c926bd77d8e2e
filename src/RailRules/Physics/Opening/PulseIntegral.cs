namespace RailRules.Physics;

/// <summary>Joule integrals (A²s) of current pulses by shape. Source: integral of i², closed forms, any textbook. Currents in A, times in s.</summary>
internal static class PulseIntegral
{
    /// <summary>A constant current for a time.</summary>
    internal static double Rectangle(double current, double width) => current * current * width;

    /// <summary>A triangle, or a ramp from or to zero.</summary>
    internal static double Triangle(double peak, double width) => peak * peak * width / 3;

    /// <summary>Half a sine wave.</summary>
    internal static double HalfSine(double peak, double width) => peak * peak * width / 2;

    /// <summary>A straight line from one current to another.</summary>
    internal static double Trapezoid(double first, double last, double width) => ((first * first) + (first * last) + (last * last)) * width / 3;

    /// <summary>A current falling exponentially, cut off after a time (infinite: never).</summary>
    internal static double Exponential(double peak, double timeConstant, double duration = double.PositiveInfinity) =>
        -peak * peak * timeConstant / 2 * Exponentials.Minus1(-2 * duration / timeConstant);

    /// <summary>A current falling exponentially, given by the time after which half of it is left (waves such as 10/1000 µs).</summary>
    internal static double ExponentialByHalfValue(double peak, double halfValueTime) => peak * peak * halfValueTime / (2 * Math.Log(2));

    /// <summary>A current falling as a parabola whose vertex lies at its end.</summary>
    internal static double Parabola(double peak, double width) => peak * peak * width / 5;

    /// <summary>All that a capacitor sends through a resistance, whatever the inductance: C V²/(2 R).</summary>
    internal static double CapacitorDischarge(double capacitance, double voltage, double resistance) => capacitance * voltage * voltage / (2 * resistance);
}
