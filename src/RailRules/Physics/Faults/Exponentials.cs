using System.Numerics;

namespace RailRules.Physics;

/// <summary>Functions of exponentials without loss of digits at small arguments; netstandard2.0 has no expm1.</summary>
internal static class Exponentials
{
    private static readonly double[] Factorials = [1, 1, 2, 6, 24, 120, 720, 5040, 40320, 362880, 3628800, 39916800, 479001600];

    /// <summary>exp(x) − 1.</summary>
    internal static double Minus1(double x)
    {
        if (Math.Abs(x) < 1e-5)
            return x * (1 + (x / 2) * (1 + (x / 3)));

        // W. Kahan's form: the error of exp cancels against that of log.
        var u = Math.Exp(x);
        if (u == 0)
            return -1;

        var less = u - 1;
        return less == 0 ? x : less == -1 ? -1 : double.IsInfinity(u) ? u : less * x / Math.Log(u);
    }

    /// <summary>exp(z) − 1.</summary>
    internal static Complex Minus1(Complex z)
    {
        if (z.Imaginary == 0)
            return Minus1(z.Real);

        var half = Math.Sin(z.Imaginary / 2);
        return new Complex(
            (Minus1(z.Real) * Math.Cos(z.Imaginary)) - (2 * half * half),
            Math.Exp(z.Real) * Math.Sin(z.Imaginary));
    }

    /// <summary>Integral of exp(s x) − 1 over x from 0 to t.</summary>
    internal static Complex Integral(Complex s, double t)
    {
        var z = s * t;
        if (Complex.Abs(z) > 0.3)
            return (Minus1(z) / s) - t;

        Complex sum = 0;
        Complex power = 1;
        for (var n = 1; n <= 11; n++)
        {
            power *= z;
            sum += power / (Factorials[n] * (n + 1));
        }

        return sum * t;
    }

    /// <summary>Integral of (exp(a x) − 1)(exp(b x) − 1) over x from 0 to t.</summary>
    internal static Complex ProductIntegral(Complex a, Complex b, double t)
    {
        Complex za = a * t, zb = b * t;
        if (Complex.Abs(za) > 0.3 || Complex.Abs(zb) > 0.3)
            return Integral(a + b, t) - Integral(a, t) - Integral(b, t);

        Complex sum = 0;
        Complex powerA = 1;
        for (var m = 1; m <= 8; m++)
        {
            powerA *= za;
            var powerB = powerA / Factorials[m];
            for (var n = 1; n <= 8; n++)
            {
                powerB *= zb;
                sum += powerB / (Factorials[n] * (m + n + 1));
            }
        }

        return sum * t;
    }
}
