namespace RailRules.Physics;

/// <summary>What devices other than plain fuses do at a current. Currents in A, times in s, I²t in A²s.</summary>
internal static class Openings
{
    /// <summary>
    /// Longest time until a circuit breaker has opened: by its thermal part, or, above its magnetic level, by the magnetic one. Infinite: it need not open.
    /// </summary>
    /// <param name="current">Current.</param>
    /// <param name="thermal">Curve; may be empty.</param>
    /// <param name="magneticLevel">Highest level of the magnetic part on DC (stated level × DC factor); null: none.</param>
    /// <param name="magneticTime">Time of the magnetic part. Common practice for miniature breakers: 0.1 s (IEC 60898-1, from memory).</param>
    /// <param name="sureMultiple">Multiple of rated current that trips it within the conventional time (I₂).</param>
    /// <param name="ratedCurrent">Rated current.</param>
    /// <param name="conventionalTime">Conventional time.</param>
    internal static double BreakerLongest(
        double current, TimeCurrentCurve? thermal, double? magneticLevel, double magneticTime, double sureMultiple, double ratedCurrent, double conventionalTime)
    {
        var slow = thermal?.LongestTime(current) ?? double.PositiveInfinity;
        if (current >= sureMultiple * ratedCurrent * (1 - 1e-9))
            slow = Math.Min(slow, conventionalTime);

        return magneticLevel is { } level && current >= level * (1 - 1e-9) ? Math.Min(slow, magneticTime) : slow;
    }

    /// <summary>
    /// Longest time until an electronic fuse has opened. Below its trip level it need not; from its short-circuit level on the fast part acts.
    /// </summary>
    /// <param name="current">Current that would flow.</param>
    /// <param name="tripLevel">Highest trip level.</param>
    /// <param name="tripDelay">Longest delay; null: not stated.</param>
    /// <param name="fastLevel">Highest level of the fast trip; null: none.</param>
    /// <param name="fastTime">Longest time of the fast trip; null: not stated.</param>
    internal static double ElectronicLongest(double current, double tripLevel, double? tripDelay, double? fastLevel, double? fastTime)
    {
        var longest = current >= tripLevel * (1 - 1e-9) ? tripDelay ?? double.PositiveInfinity : double.PositiveInfinity;
        return fastLevel is { } level && current >= level * (1 - 1e-9) ? Math.Min(longest, fastTime ?? double.PositiveInfinity) : longest;
    }

    /// <summary>
    /// Highest current through an electronic fuse on a fault: the current reaches the fast level and goes on rising with V/L for the response time, but not
    /// above what the loop gives. Source: closed form, rulebook R-34.
    /// </summary>
    /// <param name="level">Highest level of the fast trip.</param>
    /// <param name="voltage">Highest voltage (V).</param>
    /// <param name="inductance">Lowest loop inductance (H); 0: the prospective current is met.</param>
    /// <param name="response">Longest response.</param>
    /// <param name="prospective">Peak of the prospective current.</param>
    internal static double ElectronicPeak(double level, double voltage, double inductance, double response, double prospective) =>
        Math.Min(prospective, inductance > 0 ? level + (voltage / inductance * response) : double.PositiveInfinity);

    /// <summary>
    /// Peak and I²t that an electronic fuse lets through on a given fault current: it goes on for the response time after the current has reached the fast
    /// level. Null: the fast part never acts.
    /// </summary>
    /// <param name="current">Prospective current.</param>
    /// <param name="level">Highest level of the fast trip.</param>
    /// <param name="response">Longest response.</param>
    internal static (double Peak, double Integral, double Time)? ElectronicLetThrough(Waveform current, double level, double response)
    {
        if (current.FirstReach(level) is not { } reached || double.IsInfinity(reached))
            return null;

        var end = reached + response;
        return (current.LetThroughPeak(end), current.SquareIntegral(end), end);
    }

    /// <summary>
    /// Joule integral that a device lets through at a constant current (A²s): its clearing I²t, but at least current² × longest time where the latter is
    /// known to be longer than the adiabatic limit.
    /// </summary>
    /// <param name="current">Current.</param>
    /// <param name="longestTime">Longest time at it; infinite: not promised.</param>
    /// <param name="clearing">Clearing I²t; null: not known.</param>
    /// <param name="adiabaticLimit">Time below which melting is adiabatic.</param>
    internal static double? LetThrough(double current, double longestTime, double? clearing, double adiabaticLimit)
    {
        var byTime = current * current * longestTime;
        return longestTime > adiabaticLimit || clearing is null
            ? double.IsPositiveInfinity(byTime) ? null : byTime
            : clearing;
    }
}
