using System.Collections.Immutable;
using System.Text;

namespace RailRules.Physics;

/// <summary>
/// A network of branches into which a fault is put: sources, conductors, capacitors, one-way elements and sources that go into current limit.
/// Solved exactly by loop analysis: L di/dt = e + v − R i, C dv/dt = −i in each independent loop, by eigenvalues (see <see cref="Eigenmodes"/>). SI units.
/// Source: mesh analysis, any textbook. Error: relative 1e-8 of the largest current; where two natural frequencies coincide, 1e-7.
/// </summary>
/// <remarks>
/// A branch whose L/R is below 10 ps is given 10 ps: no loop is faster than that, and the current is at its value within 0.2 ns. Nodes are numbers, 0 the return pole.
/// Currents count from the first to the second node of a branch; its voltage drives in that direction.
/// </remarks>
internal sealed partial class FaultNetwork
{
    /// <summary>Shortest time constant of a branch (s).</summary>
    internal const double ShortestTimeConstant = 1e-11;

    private readonly List<Branch> branches = [];

    private int nodes = 1;

    /// <summary>What a branch does at present.</summary>
    private enum State
    {
        /// <summary>It conducts by its voltage, resistance, inductance and capacitance.</summary>
        Conducting,

        /// <summary>It blocks.</summary>
        Blocking,

        /// <summary>It carries a constant current.</summary>
        Limiting,

        /// <summary>It carries nothing any more.</summary>
        Off,
    }

    /// <summary>Whether a branch blocks one direction.</summary>
    internal bool HasOneWay => branches.Any(branch => branch.OneWay);

    /// <summary>A new node.</summary>
    internal int AddNode() => nodes++;

    /// <summary>A branch of resistance and inductance, with a constant driving voltage where it is a source.</summary>
    /// <param name="from">Node at which it begins.</param>
    /// <param name="to">Node at which it ends.</param>
    /// <param name="resistance">Resistance (Ω), 0 or above.</param>
    /// <param name="inductance">Inductance (H), 0 or above.</param>
    /// <param name="voltage">Voltage that drives current from its beginning to its end (V); an arc voltage is negative.</param>
    /// <param name="initial">Current before the fault (A).</param>
    /// <param name="oneWay">Whether it blocks the other direction without drop.</param>
    /// <returns>The branch's number.</returns>
    internal int AddBranch(int from, int to, double resistance, double inductance, double voltage = 0, double initial = 0, bool oneWay = false)
    {
        branches.Add(new(from, to, resistance, inductance) { Voltage = voltage, Initial = initial, OneWay = oneWay });
        return branches.Count - 1;
    }

    /// <summary>A charged capacitor with its series resistance and inductance.</summary>
    /// <param name="from">Node at its negative side.</param>
    /// <param name="to">Node at its positive side.</param>
    /// <param name="capacitance">Capacitance (F), above 0.</param>
    /// <param name="voltage">Voltage to which it is charged (V).</param>
    /// <param name="resistance">ESR (Ω).</param>
    /// <param name="inductance">ESL (H).</param>
    /// <param name="oneWay">Whether a one-way element stands in series.</param>
    /// <returns>The branch's number.</returns>
    internal int AddCapacitor(int from, int to, double capacitance, double voltage, double resistance, double inductance, bool oneWay = false)
    {
        branches.Add(new(from, to, resistance, inductance) { Capacitance = capacitance, Charge = voltage, OneWay = oneWay });
        return branches.Count - 1;
    }

    /// <summary>A source at its current limit from the first instant on.</summary>
    /// <returns>The branch's number.</returns>
    internal int AddCurrentSource(int from, int to, double current)
    {
        branches.Add(new(from, to, 0, 0) { Limit = new(double.NegativeInfinity, double.PositiveInfinity, current, double.PositiveInfinity) });
        return branches.Count - 1;
    }

    /// <summary>
    /// Lets a source go into current limit: it is stiff until a time or until its current meets a peak, whichever comes first, then carries a level until it
    /// switches off.
    /// </summary>
    /// <param name="branch">The source's branch.</param>
    /// <param name="response">Time until the limit acts (s).</param>
    /// <param name="peak">Current that it never exceeds before that (A); infinite where none is stated.</param>
    /// <param name="level">Current afterwards (A).</param>
    /// <param name="off">Time at which it switches off (s); infinite where it does not.</param>
    internal void LimitSource(int branch, double response, double peak, double level, double off = double.PositiveInfinity) =>
        branches[branch].Limit = new(response, peak, level, off);

    /// <summary>All numbers of the network as text: two networks of one fingerprint have the same solution.</summary>
    internal string Fingerprint()
    {
        var text = new StringBuilder(branches.Count * 64);
        foreach (var branch in branches)
        {
            text.Append(branch.From).Append('>').Append(branch.To).Append(branch.OneWay ? '!' : ':');
            Add(branch.Resistance);
            Add(branch.Inductance);
            Add(branch.Voltage);
            Add(branch.Initial);
            if (branch.IsCapacitor)
            {
                Add(branch.Capacitance);
                Add(branch.Charge);
            }

            if (branch.Limit is { } limit)
            {
                text.Append('L');
                Add(limit.Response);
                Add(limit.Peak);
                Add(limit.Level);
                Add(limit.Off);
            }
        }

        return text.ToString();

        void Add(double value) => text.Append((char)(BitConverter.DoubleToInt64Bits(value) >> 48)).Append((char)(BitConverter.DoubleToInt64Bits(value) >> 32))
            .Append((char)(BitConverter.DoubleToInt64Bits(value) >> 16)).Append((char)BitConverter.DoubleToInt64Bits(value));
    }

    /// <summary>The current of every branch from the fault on; null where the network has no solution (a loop without any resistance, a current without a way).</summary>
    internal ImmutableArray<Waveform>? Solve()
    {
        var states = new State[branches.Count];
        var currents = branches.Select(branch => branch.Initial).ToArray();
        var charges = branches.Select(branch => branch.Charge).ToArray();
        var pieces = branches.Select(_ => new List<WavePiece>()).ToArray();
        double now = 0;
        for (var turn = 0; turn < 200; turn++)
        {
            Settle(states, currents, now);
            if (Phase.Solve(branches, nodes, states, currents, charges) is not { } phase)
                return null;

            var (length, change, next) = NextEvent(phase, states, now);
            for (var b = 0; b < branches.Count; b++)
            {
                if (length > 0)
                    pieces[b].Add(phase.Currents[b] with { Start = now });

                if (change >= 0)
                {
                    currents[b] = phase.Currents[b].At(length);
                    charges[b] = phase.Charges(b, length);
                }
            }

            if (change < 0)
                return [.. pieces.Select(list => new Waveform(list))];

            now += length;
            states[change] = next;
        }

        return null;
    }

    /// <summary>Puts sources whose limit has begun already into it.</summary>
    private void Settle(State[] states, double[] currents, double now)
    {
        for (var b = 0; b < branches.Count; b++)
        {
            if (branches[b].Limit is { } limit)
            {
                if (states[b] == State.Conducting && limit.Acts(now, currents[b]))
                    states[b] = State.Limiting;

                if (now >= limit.Off * (1 - 1e-12))
                    states[b] = State.Off;
            }

            if (states[b] is State.Off or State.Blocking)
                currents[b] = 0;
        }
    }

    /// <summary>How long the phase lasts (s), the branch that ends it and what that branch does then; −1: none.</summary>
    private (double Length, int Branch, State Next) NextEvent(Phase phase, State[] states, double now)
    {
        var best = (Length: double.PositiveInfinity, Branch: -1, Next: State.Conducting);
        for (var b = 0; b < branches.Count; b++)
        {
            var limit = branches[b].Limit;
            switch (states[b])
            {
                case State.Conducting when limit is not null:
                    var responded = now >= limit.Response * (1 - 1e-12);
                    if (!responded)
                        Offer(limit.Response - now, b, phase.Currents[b].At(limit.Response - now) >= limit.Level ? State.Limiting : State.Conducting);

                    if (Reach(phase.Currents[b], responded ? limit.Level : Math.Max(limit.Peak, limit.Level)) is { } met)
                        Offer(met, b, State.Limiting);

                    if (!double.IsPositiveInfinity(limit.Off))
                        Offer(limit.Off - now, b, State.Off);

                    break;
                case State.Conducting when branches[b].OneWay:
                    if (new Waveform([phase.Currents[b]]).Times(-1).FirstReach(1e-9 * phase.Scale) is { } zero)
                        Offer(zero, b, State.Blocking);

                    break;
                case State.Limiting when !double.IsPositiveInfinity(limit!.Off):
                    Offer(limit.Off - now, b, State.Off);
                    break;
                case State.Blocking:
                    if (phase.VoltageAcross(b) is { } across && Reach(across, 1e-9 * phase.VoltageScale) is { } forward)
                        Offer(forward, b, State.Conducting);

                    break;
            }
        }

        return best;

        double? Reach(WavePiece piece, double level) => double.IsPositiveInfinity(level) ? null : new Waveform([piece]).FirstReach(level);

        void Offer(double length, int branch, State next)
        {
            if (length < best.Length)
                best = (Math.Max(length, 0), branch, next);
        }
    }

    private sealed record CurrentBound(double Response, double Peak, double Level, double Off)
    {
        /// <summary>Whether a source that carries a current at a time is in its limit: a limit never raises a current.</summary>
        internal bool Acts(double now, double current) => double.IsPositiveInfinity(Peak) && double.IsNegativeInfinity(Response)
            || current >= Math.Max(Peak, Level) * (1 - 1e-12)
            || (now >= Response * (1 - 1e-12) && current >= Level * (1 - 1e-9));
    }

    private sealed class Branch(int from, int to, double resistance, double inductance)
    {
        internal int From { get; } = from;

        internal int To { get; } = to;

        internal double Resistance { get; } = resistance;

        internal double Inductance { get; } = Math.Max(inductance, resistance * ShortestTimeConstant);

        internal double Capacitance { get; init; } = double.PositiveInfinity;

        internal double Charge { get; init; }

        internal double Voltage { get; init; }

        internal double Initial { get; init; }

        internal bool OneWay { get; init; }

        internal CurrentBound? Limit { get; set; }

        internal bool IsCapacitor => !double.IsPositiveInfinity(Capacitance);
    }
}
