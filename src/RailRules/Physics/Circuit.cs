namespace RailRules.Physics;

/// <summary>
/// A steady DC circuit for <see cref="OperatingPoint"/>: nodes with loads, joined by resistive branches that lead away from the sources. SI units.
/// Nodes are numbered such that every branch leads from a lower to a higher number; the branches into a node are added right after it.
/// </summary>
internal sealed class Circuit
{
    private readonly List<Node> nodes = [];
    private readonly List<Branch> branches = [];
    private readonly List<PowerLoad> powerLoads = [];

    internal int NodeCount => nodes.Count;

    internal int BranchCount => branches.Count;

    internal IReadOnlyList<PowerLoad> PowerLoads => powerLoads;

    /// <summary>A node whose voltage is given (V): the terminals of an ideal source.</summary>
    internal int AddSource(double voltage)
    {
        nodes.Add(new Node { Fixed = true, Voltage = voltage, FirstBranch = branches.Count });
        return nodes.Count - 1;
    }

    /// <summary>A node whose voltage is sought.</summary>
    internal int AddNode()
    {
        nodes.Add(new Node { FirstBranch = branches.Count });
        return nodes.Count - 1;
    }

    /// <summary>A branch from a node into the node added last.</summary>
    /// <param name="from">The node on the source's side.</param>
    /// <param name="resistance">Resistance (Ω), not negative.</param>
    /// <param name="drop">Voltage drop whatever the current (V).</param>
    /// <param name="oneWay">Whether current flows away from the source only.</param>
    internal int AddBranch(int from, double resistance, double drop = 0, bool oneWay = false)
    {
        branches.Add(new Branch { From = from, To = nodes.Count - 1, Resistance = resistance, Drop = drop, OneWay = oneWay, Live = true });
        nodes[nodes.Count - 1].BranchCount++;
        return branches.Count - 1;
    }

    /// <summary>Adds a constant current (A) and a conductance (S) to a node.</summary>
    internal void AddLoad(int node, double current, double conductance)
    {
        nodes[node].Current += current;
        nodes[node].Conductance += conductance;
    }

    /// <summary>Adds a constant power (W) to a node; below <paramref name="minVoltage"/> (V) its current stays at power / minVoltage.</summary>
    internal void AddPower(int node, double power, double minVoltage)
    {
        if (power > 0)
        {
            powerLoads.Add(new PowerLoad(node, power, minVoltage));
        }
    }

    internal Node NodeAt(int index) => nodes[index];

    internal Branch BranchAt(int index) => branches[index];

    internal sealed class Node
    {
        internal bool Fixed;
        internal double Voltage;
        internal int FirstBranch;
        internal int BranchCount;
        internal double Current;
        internal double Conductance;
    }

    internal sealed class Branch
    {
        internal int From;
        internal int To;
        internal double Resistance;
        internal double Drop;
        internal bool OneWay;
        internal bool Live;
    }

    /// <summary>A constant power at a node.</summary>
    /// <param name="Node">The node.</param>
    /// <param name="Power">Power (W), above 0.</param>
    /// <param name="MinVoltage">Voltage (V) below which the current rises no further; 0: none.</param>
    internal readonly record struct PowerLoad(int Node, double Power, double MinVoltage)
    {
        /// <summary>Current (A) at a voltage (V).</summary>
        internal double CurrentAt(double voltage) => Power / Math.Max(voltage, MinVoltage);
    }
}
