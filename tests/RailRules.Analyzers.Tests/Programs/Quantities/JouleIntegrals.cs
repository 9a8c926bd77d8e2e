using RailRules;
using UnitsNet;

namespace Programs.Quantities.JouleIntegrals;

/// <summary>I²t values and their arithmetic.</summary>
public static class P
{
    private static readonly JouleIntegral Melting = 320.AmpereSquaredSeconds();
    public static readonly JouleIntegral Doubled = Melting * 2;
    public static readonly JouleIntegral Sum = Melting + 80.5.AmpereSquaredSeconds();
    public static readonly double Share = 64.AmpereSquaredSeconds() / Melting;
    public static readonly bool Less = Melting < 321.AmpereSquaredSeconds();
    public static readonly JouleIntegral Pulse = JouleIntegral.FromAmpereSquaredSeconds(12.0 * 12.0 * 0.01);
    public static readonly double Value = Melting.AmpereSquaredSeconds;
    public static readonly int Compared = Melting.CompareTo(Doubled);
    public static readonly JouleIntegral Zero = JouleIntegral.Zero;
    public static readonly Band<JouleIntegral> Band = RailRules.Band.Of(Melting * 0.8, Melting * 1.2);
}
