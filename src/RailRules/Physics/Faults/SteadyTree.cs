namespace RailRules.Physics;

/// <summary>
/// Steady fault current at every node of a tree fed at its root, with resistive loads: one pass up and one down, each node once.
/// Source: Thevenin equivalents, any textbook; exact.
/// </summary>
internal sealed class SteadyTree
{
    private readonly List<(int Parent, double Resistance, double Conductance)> nodes = [];
    private readonly double voltage;

    /// <summary>A tree whose root is a source.</summary>
    /// <param name="voltage">Voltage of the source behind its resistance (V).</param>
    /// <param name="resistance">Resistance of the source (Ω), 0 or above.</param>
    internal SteadyTree(double voltage, double resistance)
    {
        this.voltage = voltage;
        nodes.Add((-1, resistance, 0));
    }

    /// <summary>Adds a node behind another one; 0 is the source's terminals.</summary>
    /// <param name="parent">The node above, added before.</param>
    /// <param name="resistance">Resistance of the branch that leads to it (Ω), 0 or above.</param>
    /// <param name="conductance">Conductance of a resistive load at the node (S).</param>
    internal int Add(int parent, double resistance, double conductance = 0)
    {
        nodes.Add((parent, resistance, conductance));
        return nodes.Count - 1;
    }

    /// <summary>Voltage without fault (V) and resistance that a fault sees (Ω), at each node.</summary>
    internal (double Voltage, double Resistance)[] Equivalents()
    {
        var count = nodes.Count;

        // Conductance of all that hangs below a node, the node's own load included.
        var below = new double[count];
        for (var k = count - 1; k >= 0; k--)
        {
            below[k] += nodes[k].Conductance;
            if (k > 0)
                below[nodes[k].Parent] += below[k] / (1 + (below[k] * nodes[k].Resistance));
        }

        // Equivalent of everything except what hangs below: first from above, then with the own subtree in parallel.
        var result = new (double, double)[count];
        var above = new (double Voltage, double Resistance)[count];
        above[0] = (voltage, nodes[0].Resistance);
        for (var k = 0; k < count; k++)
        {
            if (k > 0)
            {
                var parent = nodes[k].Parent;
                var siblings = Math.Max(below[parent] - (below[k] / (1 + (below[k] * nodes[k].Resistance))), 0);
                var (v, r) = Loaded(above[parent], siblings);
                above[k] = (v, r + nodes[k].Resistance);
            }

            result[k] = Loaded(above[k], below[k]);
        }

        return result;
    }

    /// <summary>Steady current of a fault of the given resistance (Ω) at each node in turn (A); infinite for a fault without any resistance.</summary>
    internal double[] FaultCurrents(double faultResistance) =>
        [.. Equivalents().Select(at => at.Voltage / (at.Resistance + faultResistance))];

    private static (double Voltage, double Resistance) Loaded((double Voltage, double Resistance) source, double conductance)
    {
        var divisor = 1 + (source.Resistance * conductance);
        return (source.Voltage / divisor, source.Resistance / divisor);
    }
}
