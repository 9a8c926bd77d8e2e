namespace RailRules.Physics;

/// <summary>I²t of single pulses by their shape (A²s). Source: integral of the squared shape, any textbook.</summary>
internal static class PulseIntegrals
{
    /// <summary>Of one of the model's shapes.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="peak">Peak current (A).</param>
    /// <param name="width">Whole width; of an exponential its time constant (s).</param>
    internal static double Of(PulseShape shape, double peak, double width) => shape switch
    {
        PulseShape.Triangle => Trapezoid(peak, 0, width),
        PulseShape.HalfSine => peak * peak * width / 2,
        PulseShape.Exponential => peak * peak * width / 2,
        _ => peak * peak * width,
    };

    /// <summary>
    /// Of one of the model's shapes on top of a steady current: ∫(I + i)² − I² = 2 I ∫i + ∫i². The steady part itself is left out.
    /// </summary>
    /// <param name="shape">The shape.</param>
    /// <param name="peak">Peak current (A) above the steady one.</param>
    /// <param name="width">Whole width; of an exponential its time constant (s).</param>
    /// <param name="steady">Steady current (A).</param>
    internal static double OnTop(PulseShape shape, double peak, double width, double steady) =>
        Of(shape, peak, width) + (2 * steady * Charge(shape, peak, width));

    /// <summary>Charge of a pulse (As).</summary>
    internal static double Charge(PulseShape shape, double peak, double width) => shape switch
    {
        PulseShape.Triangle => peak * width / 2,
        PulseShape.HalfSine => 2 / Math.PI * peak * width,
        _ => peak * width,
    };

    /// <summary>A straight line from one current to the other: (a² + a b + b²) t / 3. A ramp or triangle: b = 0.</summary>
    internal static double Trapezoid(double one, double other, double width) => ((one * one) + (one * other) + (other * other)) * width / 3;

    /// <summary>An exponential cut off at a time: I² τ/2 (1 − exp(−2 T/τ)).</summary>
    internal static double CutExponential(double peak, double timeConstant, double end) =>
        -peak * peak * timeConstant / 2 * Exponentials.Minus1(-2 * end / timeConstant);

    /// <summary>An exponential stated by its time to half value, such as 10/1000 µs: I² t_d / (2 ln 2). The front is left out.</summary>
    internal static double HalfValueExponential(double peak, double halfValue) => peak * peak * halfValue / (2 * Math.Log(2));

    /// <summary>A parabola from its peak to zero slope at zero: I² t/5.</summary>
    internal static double Parabola(double peak, double width) => peak * peak * width / 5;
}
