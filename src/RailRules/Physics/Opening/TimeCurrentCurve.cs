using System.Collections.Immutable;

namespace RailRules.Physics;

/// <summary>
/// A time-current curve between whose points both logarithms run straight, or the staircase of a standard's gates. Two edges: the shortest time until it melts
/// and the longest until the current is gone. Currents in A, times in s. Source: rule definitions, "Opening"; log-log interpolation is common practice.
/// </summary>
internal sealed class TimeCurrentCurve
{
    private readonly ImmutableArray<(double Current, double Time)> melting;
    private readonly ImmutableArray<(double Current, double Time)> clearing;
    private readonly bool staircase;

    private TimeCurrentCurve(IEnumerable<(double, double)> melting, IEnumerable<(double, double)> clearing, bool staircase)
    {
        this.melting = [.. melting.OrderBy(point => point.Item1)];
        this.clearing = [.. clearing.OrderBy(point => point.Item1)];
        this.staircase = staircase;
    }

    /// <summary>Whether an edge for "must not open" is known.</summary>
    internal bool HasMelting => melting.Length > 0;

    /// <summary>Whether an edge for "must open" is known.</summary>
    internal bool HasClearing => clearing.Length > 0;

    /// <summary>The least current at which the longest time is known (A); null: none.</summary>
    internal double? LeastClearing => HasClearing ? clearing[0].Current : null;

    /// <summary>The greatest current at which the longest time is known (A); infinite: none.</summary>
    internal double GreatestClearing => HasClearing ? clearing[clearing.Length - 1].Current : double.PositiveInfinity;

    /// <summary>The currents at which the clearing edge is given (A), in order.</summary>
    internal IEnumerable<double> ClearingCurrents => clearing.Select(point => point.Current);

    /// <summary>A curve read from a data sheet. A point may lack either time; points must be positive.</summary>
    internal static TimeCurrentCurve Of(IEnumerable<(double Current, double? Melting, double? Clearing)> points)
    {
        var list = points.ToList();
        return new(
            list.Where(point => point is { Melting: > 0, Current: > 0 }).Select(point => (point.Current, point.Melting!.Value)),
            list.Where(point => point is { Clearing: > 0, Current: > 0 }).Select(point => (point.Current, point.Clearing!.Value)),
            staircase: false);
    }

    /// <summary>The gates of a standard family; see <see cref="StandardGates"/>.</summary>
    internal static TimeCurrentCurve Of(IEnumerable<Gate> gates, double ratedCurrent)
    {
        var list = gates.ToList();
        return new(
            list.Where(gate => gate.Shortest is not null).Select(gate => (gate.Multiple * ratedCurrent, gate.Shortest!.Value)),
            list.Where(gate => gate.Longest is not null).Select(gate => (gate.Multiple * ratedCurrent, gate.Longest!.Value)),
            staircase: true);
    }

    /// <summary>
    /// The longest time until the current is gone (s): maximum clearing. Infinite below the least current of the edge, where nothing is promised; beyond its
    /// greatest current the last time counts, for a greater current opens no later.
    /// </summary>
    internal double LongestTime(double current)
    {
        if (!HasClearing || !(current >= clearing[0].Current * (1 - 1e-12)))
            return double.PositiveInfinity;

        return At(clearing, current);
    }

    /// <summary>
    /// The shortest time until it melts (s): minimum melting. Infinite below the least current of a drawn curve; 0 beyond its greatest current, where
    /// nothing is promised. Of gates: the time of the smallest listed current that is not below it.
    /// </summary>
    internal double ShortestTime(double current)
    {
        if (!HasMelting)
            return 0;

        if (staircase)
        {
            foreach (var point in melting)
            {
                if (point.Current >= current * (1 - 1e-12))
                    return point.Time;
            }

            return 0;
        }

        return current < melting[0].Current * (1 - 1e-12) ? double.PositiveInfinity
            : current > melting[melting.Length - 1].Current * (1 + 1e-12) ? 0
            : At(melting, current);
    }

    /// <summary>
    /// The largest current that does not melt it within a time (A), by the melting edge: on a drawn curve between its ends, where it is drawn; of gates the largest
    /// whose shortest time is not less. 0 where nothing is promised.
    /// </summary>
    /// <param name="time">Time (s).</param>
    internal double LargestCarried(double time)
    {
        if (staircase)
            return melting.Where(point => point.Time >= time * (1 - 1e-12)).Select(point => point.Current).DefaultIfEmpty(0).Max();

        if (!HasMelting)
            return 0;

        for (var k = 0; k < melting.Length; k++)
        {
            if (melting[k].Time > time * (1 + 1e-12))
                continue;

            // The first point that melts sooner: on the line to it, or, before the first point, just below it.
            if (k == 0)
                return melting[0].Current;

            var ((current0, time0), (current1, time1)) = (melting[k - 1], melting[k]);
            var share = Math.Log(time / time0) / Math.Log(time1 / time0);
            return Math.Exp(Math.Log(current0) + (share * Math.Log(current1 / current0)));
        }

        return melting[melting.Length - 1].Current;
    }

    private double At(ImmutableArray<(double Current, double Time)> edge, double current)
    {
        var k = 0;
        while (k + 1 < edge.Length && edge[k + 1].Current <= current * (1 + 1e-12))
            k++;

        if (staircase || k + 1 == edge.Length)
            return edge[k].Time;

        var (current0, time0) = edge[k];
        var (current1, time1) = edge[k + 1];
        var share = Math.Log(Math.Max(current, current0) / current0) / Math.Log(current1 / current0);
        return Math.Exp(Math.Log(time0) + (share * Math.Log(time1 / time0)));
    }
}

/// <summary>One gate of a standard: within which times a device opens at a multiple of its rated current. A side without a promise is null.</summary>
/// <param name="Multiple">Multiple of the rated current.</param>
/// <param name="Shortest">It must not open sooner (s).</param>
/// <param name="Longest">It must have opened by then (s).</param>
internal readonly record struct Gate(double Multiple, double? Shortest, double? Longest);
