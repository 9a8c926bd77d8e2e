namespace RailRules;

/// <content>The greatest power that the network can deliver to a rail.</content>
public sealed partial class Network
{
    private const double MostMultiple = 1e6;

    /// <summary>A current (A) at which every conductor is at its limit.</summary>
    private const double VeryHot = 1e6;

    /// <summary>
    /// What the constant-power loads of a rail and of the rails below ask for, and the multiple of it at which the operating point vanishes, with all other loads
    /// of the board left out, the sources at their lowest voltage, resistances hot, in the worst feed state. Lowest voltages at which loads switch off do not
    /// count. Null: no constant power is asked for, or the rail feeds itself.
    /// </summary>
    internal Delivery? DeliveryOf(Rail rail)
    {
        var result = Operating(false);
        var index = indexOf[rail];
        return result.Components[index]?.DeliveryOf(result.LocalOf[index]);
    }

    /// <summary>What is asked of the network and how much of it can be had.</summary>
    /// <param name="Demand">Constant power asked for (W), between bounds.</param>
    /// <param name="Multiple">How many times the demand can be delivered, between bounds where resistances are absent.</param>
    /// <param name="Resistance">Resistance (Ω) from the source to the rail's end with its return, hot, where there is but one way and it is known.</param>
    /// <param name="IsOwn">Whether no rail below asks for power.</param>
    internal readonly record struct Delivery(Range Demand, Range Multiple, double? Resistance, bool IsOwn);

    private sealed partial class Component
    {
        private (HashSet<Node> Loaded, double Scale)? delivery;

        internal Delivery? DeliveryOf(int member)
        {
            var below = Below(member);
            var loaded = new HashSet<Node>(below.Select(one => nodes[one]));
            var asked = new Range(double.PositiveInfinity, 0);
            for (var s = 0; s < states.Count; s++)
            {
                var power = PowerOf(loaded, s);
                asked = new Range(Math.Min(asked.Low, power.Low), Math.Max(asked.High, power.High));
            }

            if (!(asked.High > 0))
            {
                return null;
            }

            var members = Above(member, below);
            var before = island;
            island = new Island();
            island.Members.AddRange(members);
            var multiple = new Range(double.PositiveInfinity, double.PositiveInfinity);
            var several = members.Any(one => keys[one] is not null || network.convertersOn[nodes[one].Rail].Count > 0);
            var unsure = members.Any(one => nodes[one].HasGaps || network.convertersOn[nodes[one].Rail].Any(converter => !HasExactOutput(converter)));
            for (var s = 0; s < (several ? states.Count : 1); s++)
            {
                if (!unsure)
                {
                    var exact = (several || below.Count > 1 ? null : SingleLoop(member, asked.High)) ?? Multiple(loaded, End.Exact, s);
                    multiple = new Range(Math.Min(multiple.Low, exact), Math.Min(multiple.High, exact));
                    continue;
                }

                SetBounds(s);
                var worst = members.Any(one => nodes[one].DetachedAtWorst) ? 0 : Multiple(loaded, End.Worst, s);
                SetBounds(s);
                var best = members.Any(one => nodes[one].DetachedAtBest) ? double.PositiveInfinity : Multiple(loaded, End.Best, s);
                multiple = new Range(Math.Min(multiple.Low, worst), Math.Min(multiple.High, best));
            }

            island = before;
            return new Delivery(asked, multiple, unsure ? null : ResistanceTo(member), below.Count == 1 || below.Skip(1).All(one => PowerOf([nodes[one]], 0).High == 0));
        }

        /// <summary>One way from one source to one rail, of constant resistances: V²/(4 R P), what else the rail draws taken into V and R. Circuit theory.</summary>
        private double? SingleLoop(int member, double power)
        {
            double resistance = 0, drop = 0;
            var at = member;
            for (; ; at = nodes[at].Parents[0])
            {
                var node = nodes[at];
                foreach (var stretch in (Stretch[])[node.Stretch, node.FeedStretches[0]])
                {
                    if (stretch.Varies)
                    {
                        return null;
                    }

                    var (ohms, volts) = stretch.At(worst: true, 0);
                    (resistance, drop) = (resistance + ohms, drop + volts);
                }

                if (node.Parents[0] < 0)
                {
                    break;
                }
            }

            if (network.suppliers[nodes[at].Rail][0].From is not (Supply or Converter) || network.suppliers[nodes[at].Rail][0].From is not { } source)
            {
                return null;
            }

            var demands = nodes[member].Demands;
            var drain = 1 + (resistance * demands.Sum(demand => demand.Conductance));
            var voltage = (network.VoltagesOf(source, default, "").Low.Value - drop - (resistance * demands.Sum(demand => demand.Constant(peak: false)))) / drain;
            return voltage <= 0 ? 0 : resistance <= 0 ? double.PositiveInfinity : voltage * voltage / (4 * resistance / drain * power);
        }

        /// <summary>Largest multiple of the constant powers for which there is an operating point, found by bisection.</summary>
        private double Multiple(HashSet<Node> loaded, End end, int state)
        {
            bool Delivers(double scale)
            {
                delivery = (loaded, scale);
                var run = Solve(end, state, high: false);
                delivery = null;
                return run is not null;
            }

            if (!Delivers(0))
            {
                return 0;
            }

            double low = 0, high = 1;
            while (Delivers(high))
            {
                (low, high) = (high, high * 4);
                if (high > MostMultiple)
                {
                    return double.PositiveInfinity;
                }
            }

            for (var round = 0; round < 60 && high - low > 1e-9 * high; round++)
            {
                var middle = (low + high) / 2;
                (low, high) = Delivers(middle) ? (middle, high) : (low, middle);
            }

            return low;
        }

        private Range PowerOf(HashSet<Node> loaded, int state)
        {
            double low = 0, high = 0;
            foreach (var node in loaded)
            {
                foreach (var demand in node.Demands)
                {
                    (low, high) = (low + demand.Power, high + demand.Power);
                }

                foreach (var converter in network.convertersOn[node.Rail])
                {
                    var power = InputPower(converter, state);
                    (low, high) = (low + power.Low, high + power.High);
                }
            }

            return new Range(low, high);
        }

        /// <summary>The rail and those that it feeds without a converter between, itself first.</summary>
        private List<int> Below(int member)
        {
            var result = new List<int> { member };
            var seen = new HashSet<int>(result);
            for (var k = 0; k < result.Count; k++)
            {
                foreach (var child in network.children[nodes[result[k]].Rail])
                {
                    if (!network.cyclic[child] && seen.Add(this.result.LocalOf[child]))
                    {
                        result.Add(this.result.LocalOf[child]);
                    }
                }
            }

            return result;
        }

        /// <summary>Those rails with all that feed them without a converter between, in downstream order.</summary>
        private List<int> Above(int member, List<int> below)
        {
            var seen = new HashSet<int>(below) { member };
            var pending = new Stack<int>(below);
            while (pending.Count > 0)
            {
                foreach (var parent in nodes[pending.Pop()].Parents)
                {
                    if (parent >= 0 && seen.Add(parent))
                    {
                        pending.Push(parent);
                    }
                }
            }

            return [.. seen.OrderBy(one => one)];
        }

        private double? ResistanceTo(int member)
        {
            double sum = 0;
            for (var at = member; ;)
            {
                var node = nodes[at];
                if (node.Parents.Length != 1)
                {
                    return null;
                }

                sum += node.Stretch.At(worst: true, VeryHot).Resistance + node.FeedStretches[0].At(worst: true, VeryHot).Resistance;
                if (node.Parents[0] < 0)
                {
                    return network.suppliers[node.Rail][0].From is Battery ? null : sum;
                }

                at = node.Parents[0];
            }
        }
    }
}
