namespace RailRules.Physics;

/// <summary>Parallel branches of a resistance and a drop each.</summary>
internal static class Sharing
{
    /// <summary>
    /// Shares a current among branches: those conduct whose drop is below the common voltage. Gives the straight line, voltage = drop + resistance × current, on which
    /// the whole works there. Branches without resistance get <see cref="OperatingPoint.LeastMeshResistance"/>, so that equal ones share equally.
    /// </summary>
    /// <param name="branches">Resistance (Ω, not negative) and drop (V) of each; at least one.</param>
    /// <param name="total">The current (A), not negative.</param>
    /// <param name="currents">Gets the current of each branch (A).</param>
    internal static (double Resistance, double Drop) Share((double Resistance, double Drop)[] branches, double total, double[] currents)
    {
        var byDrop = Enumerable.Range(0, branches.Length).OrderBy(i => branches[i].Drop).ToArray();
        double conductance = 0, weighted = 0, voltage = 0;
        for (var k = 0; k < byDrop.Length; k++)
        {
            var (resistance, drop) = branches[byDrop[k]];
            var g = 1 / Math.Max(resistance, OperatingPoint.LeastMeshResistance);
            conductance += g;
            weighted += g * drop;
            voltage = (total + weighted) / conductance;
            if (k + 1 == byDrop.Length || voltage <= branches[byDrop[k + 1]].Drop)
            {
                break;
            }
        }

        for (var i = 0; i < branches.Length; i++)
        {
            currents[i] = Math.Max(0, (voltage - branches[i].Drop) / Math.Max(branches[i].Resistance, OperatingPoint.LeastMeshResistance));
        }

        return (1 / conductance, weighted / conductance);
    }
}
