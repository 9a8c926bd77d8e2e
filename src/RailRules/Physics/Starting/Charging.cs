namespace RailRules.Physics;

/// <summary>A capacitor that is charged by a current. SI units; time 0 is the closing of the path.</summary>
/// <param name="Current">The charging current (A).</param>
/// <param name="Capacitance">Capacitance (F).</param>
/// <param name="InitialVoltage">Voltage before (V).</param>
internal sealed record Charging(Waveform Current, double Capacitance, double InitialVoltage)
{
    /// <summary>Joule integral of the whole charge (A²s); positive infinity where the current never ends.</summary>
    internal double TotalIntegral => Current.SquareIntegral(double.PositiveInfinity);

    /// <summary>Voltage of the capacitor at a time (V).</summary>
    internal double VoltageAt(double time)
    {
        var charge = 0.0;
        var pieces = Current.Pieces;
        for (var k = 0; k < pieces.Length && pieces[k].Start < time; k++)
            charge += pieces[k].Charge(Math.Min(time, k + 1 < pieces.Length ? pieces[k + 1].Start : time) - pieces[k].Start);

        return InitialVoltage + (charge / Capacitance);
    }

    /// <summary>
    /// The time at which the capacitor reaches a voltage (V), found between 0 and <paramref name="limit"/> (s) while its voltage only rises. Null: not reached.
    /// </summary>
    internal double? TimeToVoltage(double voltage, double limit)
    {
        if (InitialVoltage >= voltage)
            return 0;

        if (!(VoltageAt(limit) >= voltage))
            return null;

        double low = 0, high = limit;
        for (var n = 0; n < 200 && high - low > 1e-14 * high; n++)
        {
            var middle = (low + high) / 2;
            (low, high) = VoltageAt(middle) < voltage ? (middle, high) : (low, middle);
        }

        return high;
    }
}
