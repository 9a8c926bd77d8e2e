namespace RailRules.Physics;

/// <summary>A tested clearing I²t with its conditions, in SI units. NaN: not stated.</summary>
/// <param name="Value">Clearing I²t (A²s).</param>
/// <param name="Voltage">Test voltage (V).</param>
/// <param name="TimeConstant">Time constant of the test circuit (s).</param>
internal readonly record struct ClearingTest(double Value, double Voltage, double TimeConstant);

/// <summary>Clearing I²t of a device in a circuit.</summary>
internal static class ClearingData
{
    /// <summary>
    /// The clearing I²t (A²s) that may be used in a circuit: the least of the tests whose conditions cover it, reduced for a lower voltage to
    /// melting + (clearing − melting) × V / V_test, never raised. Null: no test covers the circuit.
    /// Source: rulebook R-20: with a constant arc voltage the arcing I²t rises with circuit voltage more than in proportion, and with L/R.
    /// </summary>
    /// <param name="tests">The tests, DC only.</param>
    /// <param name="meltingIntegral">Melting I²t, largest (A²s); null: the value is not reduced.</param>
    /// <param name="voltage">Circuit voltage, highest (V).</param>
    /// <param name="timeConstant">Time constant of the loop (s).</param>
    /// <param name="assumedTimeConstant">Time constant up to which a test that states none counts (s).</param>
    internal static double? Of(IEnumerable<ClearingTest> tests, double? meltingIntegral, double voltage, double timeConstant, double assumedTimeConstant)
    {
        double? best = null;
        foreach (var test in tests)
        {
            if (!Covers(test, voltage, timeConstant, assumedTimeConstant))
                continue;

            var value = meltingIntegral is { } melting && melting <= test.Value
                ? melting + ((test.Value - melting) * Math.Min(voltage / test.Voltage, 1))
                : test.Value;
            best = best is { } known && known <= value ? known : value;
        }

        return best;
    }

    /// <summary>Whether a test was at least as hard as the circuit: voltage not lower, time constant not shorter.</summary>
    internal static bool Covers(ClearingTest test, double voltage, double timeConstant, double assumedTimeConstant) =>
        test.Voltage >= voltage * (1 - 1e-9)
        && (double.IsNaN(test.TimeConstant) ? timeConstant <= assumedTimeConstant : test.TimeConstant >= timeConstant * (1 - 1e-9));
}
