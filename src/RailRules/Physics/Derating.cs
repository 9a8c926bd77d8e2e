namespace RailRules.Physics;

/// <summary>Factors on a rating against temperature and altitude.</summary>
internal static class Derating
{
    /// <summary>Altitude (m) up to which low-voltage devices carry their rating. Source: IEC 60269-1, 3.2 (from memory).</summary>
    internal const double OrdinaryAltitude = 2000;

    /// <summary>
    /// The factor at <paramref name="x"/> by straight lines between points. Before the first point: the first factor.
    /// Beyond the last: from 0 up to the last factor, since the curve does not say.
    /// </summary>
    /// <param name="points">The curve, in ascending order.</param>
    /// <param name="x">Temperature (°C) or altitude (m).</param>
    internal static (double Low, double High) Factor(IReadOnlyList<(double X, double Factor)> points, double x)
    {
        if (x <= points[0].X)
        {
            return (points[0].Factor, points[0].Factor);
        }

        for (var i = 1; i < points.Count; i++)
        {
            if (x <= points[i].X)
            {
                var (a, b) = (points[i - 1], points[i]);
                var factor = b.X > a.X ? a.Factor + ((b.Factor - a.Factor) * (x - a.X) / (b.X - a.X)) : b.Factor;
                return (factor, factor);
            }
        }

        return (0, points[points.Count - 1].Factor);
    }

    /// <summary>Factor on current: 1 up to 2000 m, then 1 − (h − 2000 m)/20 km. Common practice, no source.</summary>
    /// <param name="altitude">Altitude (m).</param>
    internal static double AltitudeRule(double altitude) => altitude <= OrdinaryAltitude ? 1 : Math.Max(0, 1 - ((altitude - OrdinaryAltitude) / 20_000));
}
