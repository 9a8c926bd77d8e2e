namespace RailRules.Physics;

/// <summary>How much of its melting I²t a device may see in each of many pulses.</summary>
internal static class PulseEndurance
{
    /// <summary>
    /// Share of the nominal melting I²t that each of N pulses may use: straight lines on log10 N between the points, the first share below them.
    /// Null: more pulses than the last point speaks of.
    /// </summary>
    /// <param name="points">Pulses and share, in ascending order of pulses.</param>
    /// <param name="pulses">Number of pulses.</param>
    internal static double? Share(IReadOnlyList<(double Pulses, double Share)> points, double pulses)
    {
        if (points.Count == 0 || double.IsNaN(pulses))
            return null;

        if (pulses <= points[0].Pulses)
            return points[0].Share;

        for (var k = 1; k < points.Count; k++)
        {
            if (pulses <= points[k].Pulses)
            {
                var (a, b) = (points[k - 1], points[k]);
                return a.Share + ((b.Share - a.Share) * Math.Log10(pulses / a.Pulses) / Math.Log10(b.Pulses / a.Pulses));
            }
        }

        return null;
    }

    /// <summary>Used life of several duties: the sum of n/N, which shall not exceed 1. Source: linear damage sum (Palmgren-Miner); common practice, not a fuse standard.</summary>
    internal static double UsedLife(IEnumerable<(double Pulses, double Bearable)> duties) => duties.Sum(duty => duty.Pulses / duty.Bearable);

    /// <summary>
    /// What an endless train leaves of the melting I²t for one pulse: 1 − (I_rms / I_sure)², at least 0. Common practice, no source.
    /// </summary>
    /// <param name="rms">Root mean square current of the train (A).</param>
    /// <param name="sureOpening">Current that surely opens the device (A).</param>
    internal static double LeftByTrain(double rms, double sureOpening) =>
        sureOpening > 0 ? Math.Max(0, 1 - (rms / sureOpening * (rms / sureOpening))) : 0;

    /// <summary>
    /// I²t of a burst whose pulses are too close for the element to cool: they add up to one pulse. Common practice, no source.
    /// </summary>
    /// <param name="single">I²t of one pulse (A²s).</param>
    /// <param name="count">Pulses in the burst.</param>
    internal static double OfBurst(double single, double count) => single * count;
}
