using System.Collections.Immutable;
using System.Numerics;

namespace RailRules.Physics;

internal sealed partial class FaultNetwork
{
    /// <summary>A stretch of time in which no branch changes what it does: a linear network.</summary>
    private sealed class Phase
    {
        private readonly List<Branch> branches;
        private readonly int[]?[] paths;
        private readonly double[] capacitorStart;
        private readonly Mode[][] capacitorModes;

        private Phase(List<Branch> branches, WavePiece[] currents, int[]?[] paths, double[] capacitorStart, Mode[][] capacitorModes)
        {
            this.branches = branches;
            this.paths = paths;
            this.capacitorStart = capacitorStart;
            this.capacitorModes = capacitorModes;
            Currents = currents;
            Scale = currents.Max(piece => Math.Abs(piece.Initial) + piece.Modes.Sum(mode => Complex.Abs(mode.Factor)));
            VoltageScale = branches.Max(branch => Math.Max(Math.Abs(branch.Voltage), Math.Abs(branch.Charge)));
        }

        /// <summary>The current of each branch, time counted from the beginning of the phase.</summary>
        internal WavePiece[] Currents { get; }

        internal double Scale { get; }

        internal double VoltageScale { get; }

        /// <summary>Voltage of the branch's capacitor (V) at a time.</summary>
        internal double Charges(int branch, double t)
        {
            var sum = capacitorStart[branch];
            foreach (var mode in capacitorModes[branch])
                sum += (mode.Factor * Exponentials.Minus1(mode.Pole * t)).Real;

            return sum;
        }

        /// <summary>Voltage that would drive current through a blocking branch (V) over time; null where nothing else joins its ends.</summary>
        internal WavePiece? VoltageAcross(int branch)
        {
            if (paths[branch] is not { } signs)
                return null;

            double initial = 0;
            var modes = new List<Mode>();
            for (var b = 0; b < branches.Count; b++)
            {
                if (signs[b] == 0)
                    continue;

                initial += signs[b] * (branches[b].Voltage + capacitorStart[b]);
                modes.AddRange(capacitorModes[b].Select(mode => mode with { Factor = signs[b] * mode.Factor }));
                if (b == branch)
                    continue;

                var current = Currents[b];
                initial -= signs[b] * ((branches[b].Resistance * current.Initial) + (branches[b].Inductance * current.Slope(0)));
                modes.AddRange(current.Modes.Select(mode => mode with
                {
                    Factor = -signs[b] * mode.Factor * (branches[b].Resistance + (branches[b].Inductance * mode.Pole)),
                }));
            }

            return new(0, initial, [.. modes]);
        }

        /// <summary>
        /// Solves the phase. Where natural frequencies coincide (critical damping), capacitances are changed by a few parts in 1e8 to draw them apart.
        /// </summary>
        internal static Phase? Solve(List<Branch> branches, int nodes, State[] states, double[] currents, double[] charges)
        {
            for (var nudge = 0.0; ; nudge = nudge == 0 ? 1e-8 : 4 * nudge)
            {
                var (phase, close) = Solve(branches, nodes, states, currents, charges, nudge);
                if (!close || nudge > 1e-7)
                    return phase;
            }
        }

        private static (Phase? Phase, bool Close) Solve(List<Branch> branches, int nodes, State[] states, double[] currents, double[] charges, double nudge)
        {
            var count = branches.Count;
            if (Loops(branches, nodes, states) is not { } found)
                return (null, false);

            var (loops, forced, paths) = found;
            var n = loops.Count;
            var capacitors = Enumerable.Range(0, count).Where(b => branches[b].IsCapacitor && states[b] == State.Conducting).ToArray();
            var level = forced.Select(signs => branches[signs.Branch].Limit!.Level).ToArray();

            // L = G Gᵀ; in x = Gᵀ i and y = √C v the system matrix is the sum of a negative and an antisymmetric one.
            var lower = new double[n, n];
            var resistance = new double[n, n];
            var drive = new double[n];
            var flux = new double[n];
            for (var j = 0; j < n; j++)
            {
                var signs = loops[j].Signs;
                for (var b = 0; b < count; b++)
                {
                    if (signs[b] == 0)
                        continue;

                    drive[j] += signs[b] * branches[b].Voltage;
                    flux[j] += signs[b] * branches[b].Inductance * currents[b];
                    for (var k = 0; k <= j; k++)
                    {
                        lower[j, k] += signs[b] * loops[k].Signs[b] * branches[b].Inductance;
                        resistance[j, k] += signs[b] * loops[k].Signs[b] * branches[b].Resistance;
                    }

                    for (var s = 0; s < level.Length; s++)
                    {
                        drive[j] -= signs[b] * forced[s].Signs[b] * branches[b].Resistance * level[s];
                        flux[j] -= signs[b] * forced[s].Signs[b] * branches[b].Inductance * level[s];
                    }
                }

                for (var k = 0; k < j; k++)
                    resistance[k, j] = resistance[j, k];
            }

            if (!Factor(lower, n))
                return (null, false);

            var size = n + capacitors.Length;
            var matrix = new double[size, size];
            var constant = new double[size];
            var start = new double[size];

            // G⁻¹ R G⁻ᵀ by two forward substitutions.
            var half = new double[n, n];
            for (var j = 0; j < n; j++)
                SetColumn(half, j, Forward(lower, Column(resistance, j, n), n), n);

            for (var j = 0; j < n; j++)
            {
                var row = new double[n];
                for (var k = 0; k < n; k++)
                    row[k] = half[j, k];

                var solved = Forward(lower, row, n);
                for (var k = 0; k < n; k++)
                    matrix[j, k] = -solved[k];
            }

            for (var c = 0; c < capacitors.Length; c++)
            {
                var b = capacitors[c];
                var root = Math.Sqrt(branches[b].Capacitance * (1 + ((c + 1) * nudge)));
                var column = new double[n];
                for (var j = 0; j < n; j++)
                    column[j] = loops[j].Signs[b] / root;

                column = Forward(lower, column, n);
                for (var j = 0; j < n; j++)
                {
                    matrix[j, n + c] = column[j];
                    matrix[n + c, j] = -column[j];
                }

                start[n + c] = root * charges[b];
                for (var s = 0; s < level.Length; s++)
                    constant[n + c] -= forced[s].Signs[b] * level[s] / root;
            }

            var driven = Forward(lower, drive, n);
            var begun = Forward(lower, flux, n);
            Array.Copy(driven, constant, n);
            Array.Copy(begun, start, n);
            return Assemble(branches, states, charges, loops, forced, level, paths, capacitors, lower, matrix, constant, start);
        }

        private static (Phase? Phase, bool Close) Assemble(
            List<Branch> branches,
            State[] states,
            double[] charges,
            List<Loop> loops,
            List<Loop> forced,
            double[] level,
            int[]?[] paths,
            int[] capacitors,
            double[,] lower,
            double[,] matrix,
            double[] constant,
            double[] start)
        {
            var count = branches.Count;
            var n = loops.Count;
            var size = start.Length;
            var poles = new List<Complex>();
            var loopFactors = new List<Complex[]>();
            var capacitorFactors = new List<Complex[]>();
            var close = false;
            if (size > 0)
            {
                if (Eigenmodes.Of(matrix) is not { } eigen || eigen.Coordinates(start) is not { } alpha || eigen.Coordinates(constant) is not { } beta)
                    return (null, false);

                close = eigen.AreClose;

                var largest = eigen.Values.Max(Complex.Abs);
                for (var k = 0; k < size; k++)
                {
                    var pole = eigen.Values[k];
                    if (Complex.Abs(pole) <= 1e-14 * largest)
                    {
                        // A state that nothing changes: a capacitor in no loop. A current that would rise for ever is no solution.
                        if (Enumerable.Range(0, n).Any(j => Complex.Abs(eigen.Vectors[j, k] * beta[k]) > 1e-6 * largest * Math.Sqrt(start.Sum(x => x * x))))
                            return (null, false);

                        continue;
                    }

                    if (pole.Real > -1e-13 * largest)
                        pole = new Complex(-1e-13 * largest, pole.Imaginary);

                    var factor = alpha[k] + (beta[k] / pole);
                    poles.Add(pole);
                    loopFactors.Add(Backward(lower, eigen.Vectors, k, factor, n));
                    capacitorFactors.Add([.. capacitors.Select((b, c) => factor * eigen.Vectors[n + c, k] / Math.Sqrt(branches[b].Capacitance))]);
                }
            }

            var loopStart = BackwardReal(lower, start, n);
            var currents = new WavePiece[count];
            var capacitorModes = new Mode[count][];
            for (var b = 0; b < count; b++)
            {
                capacitorModes[b] = [];
                if (states[b] == State.Limiting)
                {
                    currents[b] = new(0, branches[b].Limit!.Level, []);
                    continue;
                }

                double initial = 0;
                for (var j = 0; j < n; j++)
                    initial += loops[j].Signs[b] * loopStart[j];

                for (var s = 0; s < level.Length; s++)
                    initial += forced[s].Signs[b] * level[s];

                var modes = new List<Mode>();
                for (var k = 0; k < poles.Count; k++)
                {
                    Complex factor = 0;
                    for (var j = 0; j < n; j++)
                        factor += loops[j].Signs[b] * loopFactors[k][j];

                    if (factor != Complex.Zero)
                        modes.Add(new(factor, poles[k]));
                }

                currents[b] = new(0, initial, [.. modes]);
            }

            for (var c = 0; c < capacitors.Length; c++)
                capacitorModes[capacitors[c]] = [.. poles.Select((pole, k) => new Mode(capacitorFactors[k][c], pole))];

            return (new(branches, currents, paths, [.. charges], capacitorModes), close);
        }

        /// <summary>A spanning forest of the conducting branches, and the loop that each other branch closes through it.</summary>
        private static (List<Loop> Loops, List<Loop> Forced, int[]?[] Paths)? Loops(List<Branch> branches, int nodes, State[] states)
        {
            var count = branches.Count;
            var parent = new int[nodes];
            var link = new int[nodes];
            var depth = new int[nodes];
            var root = new int[nodes];
            for (var node = 0; node < nodes; node++)
                root[node] = -1;

            var inTree = new bool[count];
            for (var first = 0; first < nodes; first++)
            {
                if (root[first] >= 0)
                    continue;

                var queue = new Queue<int>();
                queue.Enqueue(first);
                root[first] = first;
                link[first] = -1;
                while (queue.Count > 0)
                {
                    var node = queue.Dequeue();
                    for (var b = 0; b < count; b++)
                    {
                        if (states[b] != State.Conducting)
                            continue;

                        var other = branches[b].From == node ? branches[b].To : branches[b].To == node ? branches[b].From : -1;
                        if (other < 0 || root[other] >= 0)
                            continue;

                        root[other] = first;
                        parent[other] = node;
                        link[other] = b;
                        depth[other] = depth[node] + 1;
                        inTree[b] = true;
                        queue.Enqueue(other);
                    }
                }
            }

            var loops = new List<Loop>();
            var forced = new List<Loop>();
            var paths = new int[]?[count];
            for (var b = 0; b < count; b++)
            {
                if (inTree[b] || states[b] == State.Off)
                    continue;

                if (root[branches[b].From] != root[branches[b].To])
                {
                    if (states[b] == State.Limiting && branches[b].Limit!.Level != 0)
                        return null;

                    continue;
                }

                // Along the branch from its beginning to its end, then back through the tree from its end to its beginning.
                var signs = new int[count];
                signs[b] = 1;
                int here = branches[b].To, there = branches[b].From;
                while (here != there)
                {
                    if (depth[here] >= depth[there])
                    {
                        signs[link[here]] += branches[link[here]].From == here ? 1 : -1;
                        here = parent[here];
                    }
                    else
                    {
                        signs[link[there]] += branches[link[there]].To == there ? 1 : -1;
                        there = parent[there];
                    }
                }

                paths[b] = signs;
                if (states[b] == State.Conducting)
                    loops.Add(new(b, signs));
                else if (states[b] == State.Limiting)
                    forced.Add(new(b, signs));
            }

            return (loops, forced, paths);
        }

        private static bool Factor(double[,] a, int n)
        {
            for (var j = 0; j < n; j++)
            {
                var pivot = a[j, j];
                var before = pivot;
                for (var k = 0; k < j; k++)
                    pivot -= a[j, k] * a[j, k];

                if (!(pivot > 1e-14 * before) || pivot <= 0)
                    return false;

                a[j, j] = Math.Sqrt(pivot);
                for (var i = j + 1; i < n; i++)
                {
                    var sum = a[i, j];
                    for (var k = 0; k < j; k++)
                        sum -= a[i, k] * a[j, k];

                    a[i, j] = sum / a[j, j];
                }
            }

            return true;
        }

        private static double[] Forward(double[,] lower, double[] right, int n)
        {
            var x = new double[n];
            for (var j = 0; j < n; j++)
            {
                var sum = right[j];
                for (var k = 0; k < j; k++)
                    sum -= lower[j, k] * x[k];

                x[j] = sum / lower[j, j];
            }

            return x;
        }

        private static double[] BackwardReal(double[,] lower, double[] right, int n)
        {
            var x = new double[n];
            for (var j = n - 1; j >= 0; j--)
            {
                var sum = right[j];
                for (var k = j + 1; k < n; k++)
                    sum -= lower[k, j] * x[k];

                x[j] = sum / lower[j, j];
            }

            return x;
        }

        private static Complex[] Backward(double[,] lower, Complex[,] vectors, int column, Complex factor, int n)
        {
            var x = new Complex[n];
            for (var j = n - 1; j >= 0; j--)
            {
                var sum = factor * vectors[j, column];
                for (var k = j + 1; k < n; k++)
                    sum -= lower[k, j] * x[k];

                x[j] = sum / lower[j, j];
            }

            return x;
        }

        private static double[] Column(double[,] m, int column, int n)
        {
            var x = new double[n];
            for (var i = 0; i < n; i++)
                x[i] = m[i, column];

            return x;
        }

        private static void SetColumn(double[,] m, int column, double[] values, int n)
        {
            for (var i = 0; i < n; i++)
                m[i, column] = values[i];
        }

        private sealed record Loop(int Branch, int[] Signs);
    }
}
