namespace RailRules.Physics;

/// <summary>The voltages and currents of a circuit.</summary>
/// <param name="Voltages">Voltage of each node (V).</param>
/// <param name="Currents">Current of each branch (A), from source to load.</param>
internal sealed record Solution(double[] Voltages, double[] Currents);

/// <summary>
/// The operating point of a circuit of constant-power, constant-current and resistive loads: the upper of its solutions, or none where the
/// circuit cannot deliver the power (voltage collapse). Circuit theory; the greatest power of a single loop is V²/(4R).
/// </summary>
/// <remarks>
/// <para>
/// Newton's method from the no-load voltages. A constant power's current is a convex, falling function of voltage, and without its slope the
/// circuit's matrix has a non-negative inverse; so the iterates fall monotonically onto the greatest solution, and a pivot that is not positive, or a
/// voltage that is not, proves that there is none (monotone Newton theorem: Ortega and Rheinboldt, Iterative Solution of Nonlinear Equations, 13.3.4,
/// from memory). A load that has fallen to its lowest voltage breaks convexity: a step that would pass the solution is replaced by the plain
/// substitution step, which never does.
/// </para>
/// <para>
/// The linear circuit of each step is solved by elimination from the far ends; a tree costs time linear in its nodes. What is left of a circuit with
/// several feeds into one node is eliminated in order of degree. Branches that are one-way are switched off and on until each agrees with its current.
/// </para>
/// </remarks>
internal static class OperatingPoint
{
    /// <summary>Resistance (Ω) given to a branch of several that meet, where it has none: equal voltages then share equally.</summary>
    internal const double LeastMeshResistance = 1e-9;

    private const int NewtonSteps = 200;
    private const int SubstitutionSteps = 5000;

    /// <summary>The upper solution; null: there is none.</summary>
    internal static Solution? Solve(Circuit circuit)
    {
        var solver = new Solver(circuit);
        return solver.Run();
    }

    private sealed class Solver
    {
        private readonly Circuit circuit;
        private readonly int nodeCount;
        private readonly double[] voltages;
        private readonly double[] next;
        private readonly double[] loadCurrent;
        private readonly double[] loadConductance;
        private readonly double[] current;
        private readonly double[] conductance;
        private readonly double[] branchCurrents;
        private readonly bool[] inMesh;
        private readonly bool[] off;
        private readonly bool hasMesh;
        private readonly double highest;

        internal Solver(Circuit circuit)
        {
            this.circuit = circuit;
            nodeCount = circuit.NodeCount;
            voltages = new double[nodeCount];
            next = new double[nodeCount];
            loadCurrent = new double[nodeCount];
            loadConductance = new double[nodeCount];
            current = new double[nodeCount];
            conductance = new double[nodeCount];
            branchCurrents = new double[circuit.BranchCount];
            inMesh = new bool[nodeCount];
            off = new bool[circuit.BranchCount];
            for (var n = 0; n < nodeCount; n++)
            {
                var node = circuit.NodeAt(n);
                highest = node.Fixed ? Math.Max(highest, node.Voltage) : highest;
            }

            for (var n = nodeCount - 1; n >= 0; n--)
            {
                var node = circuit.NodeAt(n);
                if (node.Fixed)
                {
                    inMesh[n] = false;
                    continue;
                }

                var meets = node.BranchCount > 1;
                if (meets || inMesh[n])
                {
                    hasMesh = true;
                    inMesh[n] = true;
                    for (var b = node.FirstBranch; b < node.FirstBranch + node.BranchCount; b++)
                    {
                        inMesh[circuit.BranchAt(b).From] = true;
                    }
                }
            }
        }

        internal Solution? Run()
        {
            for (var n = 0; n < nodeCount; n++)
            {
                voltages[n] = circuit.NodeAt(n).Fixed ? circuit.NodeAt(n).Voltage : highest;
            }

            if (double.IsNaN(highest) || double.IsInfinity(highest))
            {
                return null;
            }

            var floors = circuit.PowerLoads.Any(load => load.MinVoltage > 0);
            var tolerance = Math.Max(highest, 1e-300) * 1e-13;
            var substitutions = 0;
            var before = double.PositiveInfinity;
            for (var step = 0; step < NewtonSteps + substitutions && substitutions < SubstitutionSteps; step++)
            {
                SetLoads(slopes: true);
                if (!SolveLinear() || !Acceptable())
                {
                    if (!floors)
                    {
                        return null;
                    }

                    SetLoads(slopes: false);
                    substitutions++;
                    if (!SolveLinear() || !LoadsHaveVoltage())
                    {
                        return null;
                    }
                }

                var change = 0.0;
                for (var n = 0; n < nodeCount; n++)
                {
                    change = Math.Max(change, Math.Abs(next[n] - voltages[n]));
                    voltages[n] = next[n];
                }

                if (double.IsNaN(change))
                {
                    return null;
                }

                // Close to collapse rounding keeps the steps from falling further.
                if (change <= tolerance || circuit.PowerLoads.Count == 0 || (change <= highest * 1e-9 && change >= before))
                {
                    return Finish();
                }

                before = change;
            }

            return null;
        }

        private Solution? Finish()
        {
            for (var n = 0; n < nodeCount; n++)
            {
                var node = circuit.NodeAt(n);
                if (!node.Fixed && voltages[n] <= 0 && (node.Current > 0 || node.Conductance > 0))
                {
                    return null;
                }
            }

            return LoadsHaveVoltage() ? new Solution(voltages, branchCurrents) : null;
        }

        private bool LoadsHaveVoltage()
        {
            foreach (var load in circuit.PowerLoads)
            {
                if (!(next[load.Node] > 0))
                {
                    return false;
                }
            }

            return true;
        }

        /// <summary>The loads as current and conductance at the present voltages, with the slopes of constant powers or without.</summary>
        private void SetLoads(bool slopes)
        {
            for (var n = 0; n < nodeCount; n++)
            {
                loadCurrent[n] = circuit.NodeAt(n).Current;
                loadConductance[n] = circuit.NodeAt(n).Conductance;
            }

            foreach (var load in circuit.PowerLoads)
            {
                var voltage = voltages[load.Node];
                var drawn = load.CurrentAt(voltage);
                var slope = slopes && voltage > load.MinVoltage ? -drawn / voltage : 0;
                loadCurrent[load.Node] += drawn - (slope * voltage);
                loadConductance[load.Node] += slope;
            }
        }

        /// <summary>Whether the step stays above the solution: no load may draw less than the straight line through which the step went.</summary>
        private bool Acceptable()
        {
            foreach (var load in circuit.PowerLoads)
            {
                var (before, after) = (voltages[load.Node], next[load.Node]);
                if (!(after > 0))
                {
                    return false;
                }

                if (before > load.MinVoltage && after < load.MinVoltage)
                {
                    var drawn = load.CurrentAt(before);
                    if (load.CurrentAt(after) < drawn + (drawn / before * (before - after)))
                    {
                        return false;
                    }
                }
            }

            return true;
        }

        private bool SolveLinear()
        {
            if (!hasMesh)
            {
                return SolveOnce();
            }

            var limit = 4 * circuit.BranchCount;
            for (var round = 0; round <= 4 * limit; round++)
            {
                if (!SolveOnce())
                {
                    return false;
                }

                if (!Switch(single: round > limit))
                {
                    return true;
                }
            }

            return false;
        }

        /// <summary>Switches one-way branches that contradict their current; one at a time guarantees an end (least-index pivoting).</summary>
        private bool Switch(bool single)
        {
            var switched = false;
            for (var b = 0; b < circuit.BranchCount; b++)
            {
                var branch = circuit.BranchAt(b);
                if (!branch.OneWay || !branch.Live || !inMesh[branch.To])
                {
                    continue;
                }

                var drive = VoltageOf(branch.From) - branch.Drop - next[branch.To];
                var wrong = off[b] ? drive > highest * 1e-13 : branchCurrents[b] < 0 && drive < -highest * 1e-13;
                if (wrong)
                {
                    off[b] = !off[b];
                    switched = true;
                    if (single)
                    {
                        return true;
                    }
                }
            }

            return switched;
        }

        private double VoltageOf(int node) => circuit.NodeAt(node).Fixed ? circuit.NodeAt(node).Voltage : next[node];

        private bool Conducts(int branch) => circuit.BranchAt(branch).Live && !off[branch];

        private bool SolveOnce()
        {
            Array.Copy(loadCurrent, current, nodeCount);
            Array.Copy(loadConductance, conductance, nodeCount);
            for (var n = nodeCount - 1; n >= 0; n--)
            {
                var node = circuit.NodeAt(n);
                if (node.Fixed || inMesh[n])
                {
                    continue;
                }

                if (node.BranchCount == 0 || !circuit.BranchAt(node.FirstBranch).Live)
                {
                    continue;
                }

                var branch = circuit.BranchAt(node.FirstBranch);
                var denominator = 1 + (branch.Resistance * conductance[n]);
                if (!(denominator > 0))
                {
                    return false;
                }

                current[branch.From] += (current[n] - (conductance[n] * branch.Drop)) / denominator;
                conductance[branch.From] += conductance[n] / denominator;
            }

            if (hasMesh && !SolveMesh())
            {
                return false;
            }

            for (var n = 0; n < nodeCount; n++)
            {
                var node = circuit.NodeAt(n);
                if (node.Fixed)
                {
                    next[n] = node.Voltage;
                }
                else if (!inMesh[n])
                {
                    if (node.BranchCount == 0 || !circuit.BranchAt(node.FirstBranch).Live)
                    {
                        next[n] = 0;
                        continue;
                    }

                    var branch = circuit.BranchAt(node.FirstBranch);
                    var above = next[branch.From] - branch.Drop;
                    var drawn = (current[n] + (conductance[n] * above)) / (1 + (branch.Resistance * conductance[n]));
                    branchCurrents[node.FirstBranch] = drawn;
                    next[n] = above - (branch.Resistance * drawn);
                }
            }

            if (hasMesh)
            {
                SetMeshCurrents();
            }

            return true;
        }

        /// <summary>Currents of the meshed part, from the far ends on: what leaves a node, shared by the branches that feed it.</summary>
        private void SetMeshCurrents()
        {
            var leaving = new double[nodeCount];
            for (var n = nodeCount - 1; n >= 0; n--)
            {
                var node = circuit.NodeAt(n);
                if (node.Fixed || !inMesh[n])
                {
                    continue;
                }

                // I = g (I_total + sum of g_j (E - E_j)) / sum of g: exact even where the voltages across are lost in rounding.
                double conductances = 0, drive = 0;
                var total = current[n] + (conductance[n] * next[n]) + leaving[n];
                for (var b = node.FirstBranch; b < node.FirstBranch + node.BranchCount; b++)
                {
                    if (Conducts(b))
                    {
                        conductances += MeshConductance(b);
                        drive += MeshConductance(b) * Reach(b, node.FirstBranch);
                    }
                }

                for (var b = node.FirstBranch; b < node.FirstBranch + node.BranchCount; b++)
                {
                    branchCurrents[b] = Conducts(b) ? MeshConductance(b) * (total + (conductances * Reach(b, node.FirstBranch)) - drive) / conductances : 0;
                    leaving[circuit.BranchAt(b).From] += branchCurrents[b];
                }
            }
        }

        private double MeshConductance(int branch) => 1 / Math.Max(circuit.BranchAt(branch).Resistance, LeastMeshResistance);

        /// <summary>How far the voltage that a branch offers lies above that of another.</summary>
        private double Reach(int branch, int other) =>
            VoltageOf(circuit.BranchAt(branch).From) - VoltageOf(circuit.BranchAt(other).From) - circuit.BranchAt(branch).Drop + circuit.BranchAt(other).Drop;

        private bool SolveMesh()
        {
            var rows = new Dictionary<int, double>?[nodeCount];
            var diagonal = new double[nodeCount];
            var right = new double[nodeCount];
            var order = new List<int>();
            for (var n = 0; n < nodeCount; n++)
            {
                if (inMesh[n] && !circuit.NodeAt(n).Fixed)
                {
                    rows[n] = [];
                    diagonal[n] = conductance[n];
                    right[n] = -current[n];
                    order.Add(n);
                }
            }

            foreach (var n in order)
            {
                var node = circuit.NodeAt(n);
                for (var b = node.FirstBranch; b < node.FirstBranch + node.BranchCount; b++)
                {
                    if (!Conducts(b))
                    {
                        continue;
                    }

                    var branch = circuit.BranchAt(b);
                    var g = MeshConductance(b);
                    diagonal[n] += g;
                    right[n] -= g * branch.Drop;
                    if (circuit.NodeAt(branch.From).Fixed)
                    {
                        right[n] += g * circuit.NodeAt(branch.From).Voltage;
                    }
                    else
                    {
                        diagonal[branch.From] += g;
                        right[branch.From] += g * branch.Drop;
                        Add(rows[n]!, branch.From, -g);
                        Add(rows[branch.From]!, n, -g);
                    }
                }
            }

            order.Sort((a, b) => rows[a]!.Count != rows[b]!.Count ? rows[a]!.Count.CompareTo(rows[b]!.Count) : b.CompareTo(a));
            foreach (var n in order)
            {
                if (!(diagonal[n] > 0))
                {
                    return false;
                }

                var neighbours = rows[n]!.ToArray();
                foreach (var (m, value) in neighbours.Select(pair => (pair.Key, pair.Value)))
                {
                    rows[m]!.Remove(n);
                    var factor = value / diagonal[n];
                    right[m] -= factor * right[n];
                    diagonal[m] -= factor * value;
                    foreach (var pair in neighbours)
                    {
                        if (pair.Key != m)
                        {
                            Add(rows[m]!, pair.Key, -factor * pair.Value);
                        }
                    }
                }
            }

            for (var k = order.Count - 1; k >= 0; k--)
            {
                var n = order[k];
                var sum = right[n];
                foreach (var pair in rows[n]!)
                {
                    sum -= pair.Value * next[pair.Key];
                }

                next[n] = sum / diagonal[n];
            }

            return true;
        }

        private static void Add(Dictionary<int, double> row, int column, double value)
        {
            row.TryGetValue(column, out var before);
            row[column] = before + value;
        }
    }
}
