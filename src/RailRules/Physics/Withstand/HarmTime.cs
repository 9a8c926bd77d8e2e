namespace RailRules.Physics;

/// <summary>How long an element bears a current before it is harmed; rule definitions, "Harm time". Temperatures in °C, currents in A, times in s.</summary>
/// <param name="Continuous">Continuous capability I_z (A).</param>
/// <param name="Ambient">Air temperature.</param>
/// <param name="Limit">Highest temperature in service.</param>
/// <param name="ShortTimeLimit">Highest temperature at the end of a short circuit; not below <paramref name="Limit"/>.</param>
/// <param name="Running">Temperature at the beginning, between air and limit.</param>
/// <param name="Integral">What it bears adiabatically from <paramref name="Running"/> to <paramref name="ShortTimeLimit"/>: k² S² (A²s); infinite: not known, then the thermal time constant is not either.</param>
/// <param name="ConventionalTime">The conventional time (s).</param>
/// <param name="WithstandLimit">Longest time for which heating counts as adiabatic (s).</param>
internal readonly record struct HarmTime(
    double Continuous, double Ambient, double Limit, double ShortTimeLimit, double Running, double Integral, double ConventionalTime, double WithstandLimit)
{
    /// <summary>
    /// Seconds until a current harms the element. Up to I_z: never. While the temperature that it would settle at stays within the short-time limit:
    /// the conventional time. Above that the exponential approach with the thermal time constant τ = k²S²/I_z² (T_limit − T_amb)/(T_f − T_i), but not more than
    /// k²S²/I² where that is below the limit of adiabatic heating, and never more than the conventional time.
    /// </summary>
    internal double At(double current)
    {
        if (current <= Continuous * (1 + 1e-9))
            return double.PositiveInfinity;

        var ratio = current / Continuous;
        var settled = Ambient + ((Limit - Ambient) * ratio * ratio);
        if (settled <= ShortTimeLimit)
            return ConventionalTime;

        if (!(Running < ShortTimeLimit))
            return 0;

        var time = ConventionalTime;
        if (!double.IsPositiveInfinity(Integral))
        {
            var tau = Integral / (Continuous * Continuous) * (Limit - Ambient) / (ShortTimeLimit - Running);
            time = Math.Min(time, tau * Math.Log((settled - Running) / (settled - ShortTimeLimit)));
            var adiabatic = Integral / (current * current);
            if (adiabatic < WithstandLimit)
                time = Math.Min(time, adiabatic);
        }

        return time;
    }
}
