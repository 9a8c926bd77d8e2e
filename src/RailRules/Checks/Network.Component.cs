using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>The solution of one connected part of the board.</content>
public sealed partial class Network
{
    private enum End
    {
        /// <summary>All data are known.</summary>
        Exact,

        /// <summary>The least currents that the bounds allow.</summary>
        Best,

        /// <summary>The largest currents that the bounds allow.</summary>
        Worst,
    }

    /// <summary>A rail as the solver sees it.</summary>
    private sealed class Node
    {
        internal int Rail;
        internal Stretch Stretch = null!;
        internal Stretch[] FeedStretches = null!;
        internal List<Demand> Demands = [];
        internal int[] Parents = null!;
        internal int Needed;
        internal double LowestVoltage = double.PositiveInfinity;
        internal double HighVoltage;
        internal double Charge;
        internal bool SourceUnknown;
        internal bool BatteryUnknown;
        internal bool SharingUnknown;
        internal bool HasGaps;
        internal bool DetachedAtWorst;
        internal bool DetachedAtBest;
        internal double Bound;
        internal double UpperFeed;
        internal double Least;
        internal double LeastFeed;
    }

    private sealed record Bounds(double[] Low, double[] High);

    private sealed class Island
    {
        internal List<int> Members { get; } = [];

        /// <summary>The islands behind the converters that this one feeds.</summary>
        internal HashSet<Island> Behind { get; } = [];

        /// <summary>Current (A) of each source, per state and corner.</summary>
        internal Dictionary<Source, Bounds> Totals { get; } = new(ByReference.Instance);

        /// <summary>Output power (W) of each converter, per state and corner.</summary>
        internal Dictionary<Source, Bounds> Powers { get; } = new(ByReference.Instance);
    }

    private sealed partial class Component
    {
        private const int HeatingRounds = 60;
        private const int ConverterRounds = 100;

        private readonly Network network;
        private readonly OperatingResult result;
        private readonly bool peak;
        private readonly Node[] nodes;
        private readonly List<FeedState> states;
        private readonly List<FeedKey>?[] keys;
        private readonly Dictionary<Converter, Bounds> outputs = new(ByReference.Instance);
        private readonly Dictionary<Source, List<Island>> islandsOf = new(ByReference.Instance);
        private Island island = new();
        private bool inexact;

        internal Component(Network network, OperatingResult result, List<int> rails, bool peak)
        {
            this.network = network;
            this.result = result;
            this.peak = peak;
            nodes = new Node[rails.Count];
            keys = new List<FeedKey>?[rails.Count];
            for (var i = 0; i < rails.Count; i++)
            {
                result.LocalOf[rails[i]] = i;
                nodes[i] = NodeOf(rails[i]);
                keys[i] = network.suppliers[rails[i]].Length > 1 ? network.KeysOf(rails[i]) : null;
            }

            (states, var partial) = network.StatesOf(rails);
            if (partial)
            {
                network.partialStates.UnionWith(rails);
            }
        }

        internal void Solve()
        {
            var islands = Islands();
            var waiting = islands.ToDictionary(one => one, one => one.Behind);
            var solved = new HashSet<Island>();
            while (waiting.Count > 0)
            {
                var ready = islands.Where(one => waiting.TryGetValue(one, out var on) && on.All(solved.Contains)).ToList();
                if (ready.Count == 0)
                {
                    break;
                }

                foreach (var one in ready)
                {
                    SolveIsland(one);
                    solved.Add(one);
                    waiting.Remove(one);
                }
            }

            if (waiting.Count > 0 && !Converge([.. islands.Where(waiting.ContainsKey)]))
            {
                foreach (var member in waiting.Keys.SelectMany(one => one.Members))
                {
                    result.Rails[nodes[member].Rail] = new Flow(0, double.PositiveInfinity, FlowReason.Collapse);
                    result.Feeds[nodes[member].Rail] = [.. result.Feeds[nodes[member].Rail].Select(_ => result.Rails[nodes[member].Rail])];
                }
            }

            foreach (var source in islandsOf.Keys)
            {
                double low = 0, high = 0;
                var state = "";
                var total = Sum(islandsOf[source].Select(one => one.Totals), source);
                for (var s = 0; s < states.Count; s++)
                {
                    low = Math.Max(low, total.Low[s]);
                    (high, state) = total.High[s] > high ? (total.High[s], states[s].Name) : (high, state);
                }

                var before = result.Sources[source];
                var collapsed = network.FedByIndex(source).Any(rail => result.Rails[rail].Reason == FlowReason.Collapse);
                result.Sources[source] = before with
                {
                    Low = before.Low + low,
                    High = before.High + high,
                    State = state,
                    Reason = collapsed ? FlowReason.Collapse : before.Reason,
                };
            }
        }

        private Node NodeOf(int rail)
        {
            var record = network.Rails[rail];
            var label = Label(record);
            var gaps = result.Gaps[rail];
            var all = network.suppliers[rail];
            var node = new Node
            {
                Rail = rail,
                Stretch = network.StretchOf(record, null),
                FeedStretches = [.. all.Select(supplying => supplying.Feed is { } feed ? network.StretchOf(record, feed) : new Stretch())],
                Needed = network.FeedsNeeded(rail),
                Parents = [.. all.Select(supplying => supplying.From is Rail above ? result.LocalOf[network.indexOf[above]] : -1)],
            };
            result.Stretches[rail] = node.Stretch;
            result.FeedStretches[rail] = node.FeedStretches;
            gaps.AddRange(node.Stretch.Gaps);
            foreach (var stretch in node.FeedStretches)
            {
                gaps.AddRange(stretch.Gaps);
            }

            node.SharingUnknown = all.Length > 1 && node.Needed > 1 && node.FeedStretches.Any(stretch => stretch.Gaps.Count > 0);
            for (var k = 0; k < all.Length; k++)
            {
                if (all[k].From is Rail)
                {
                    continue;
                }

                var voltages = network.VoltagesOf(all[k].From, all[k].Feed is { } feed ? new DatumPlace(feed, nameof(Feed.From)) : all[k].Place, label);
                node.SourceUnknown |= !voltages.Low.IsKnown || !voltages.High.IsKnown;
                foreach (var missing in voltages.Low.Missing.Concat(voltages.High.Missing).Distinct())
                {
                    gaps.Add((missing, true));
                }

                if (all[k].From is Battery battery && battery.InternalResistance is null)
                {
                    gaps.Add((new MissingDatum(new DatumPlace(battery, nameof(Battery.InternalResistance)), Label(battery)), true));
                    node.BatteryUnknown = true;
                }
            }

            if (network.Unworkable(record, label, nameof(Rail.Feeds)) is { } hidden)
            {
                gaps.Add((hidden, true));
                node.SourceUnknown = true;
            }

            AddCharging(node, all, gaps);
            AddDemands(node, record, label, gaps);
            node.HighVoltage = network.VoltagesOf(record).High is { IsKnown: true } high ? high.Value : double.PositiveInfinity;
            node.HasGaps = gaps.Count > 0;
            return node;
        }

        /// <summary>Batteries that another feed charges: nothing between them blocks.</summary>
        private static void AddCharging(Node node, ImmutableArray<Supplying> all, List<(MissingDatum Datum, bool Unbounded)> gaps)
        {
            if (all.Length < 2 || all.All(supplying => supplying.From is Battery))
            {
                return;
            }

            for (var k = 0; k < all.Length; k++)
            {
                if (Charges(node, all, k))
                {
                    var battery = (Battery)all[k].From!;
                    if (battery.ChargeCurrent is null)
                    {
                        gaps.Add((new MissingDatum(new DatumPlace(battery, nameof(Battery.ChargeCurrent)), Label(battery)), true));
                    }

                    node.Charge += battery.ChargeCurrent is { } current ? Finite(current.Amperes) : double.PositiveInfinity;
                }
            }
        }

        /// <summary>The least efficiency; null: unstated, or a number that is none.</summary>
        private static double? LeastEfficiency(Converter converter) =>
            converter.Efficiency is { } efficiency && efficiency.Min.DecimalFractions > 0 ? Math.Min(1, Finite(efficiency.Min.DecimalFractions)) : null;

        private static bool Charges(Node node, ImmutableArray<Supplying> all, int k) => all[k].From is Battery && !node.FeedStretches[k].OneWay;

        private void AddDemands(Node node, Rail record, string label, List<(MissingDatum Datum, bool Unbounded)> gaps)
        {
            var loads = Items(record.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                if (loads[i] is { } load)
                {
                    node.Demands.Add(network.DemandOf(load, record, i));
                }
            }

            if (network.Unworkable(record, label, nameof(Rail.Loads)) is { } hidden)
            {
                var unknown = new Demand { Label = label, Unstated = double.PositiveInfinity };
                unknown.Gaps.Add((hidden, true));
                node.Demands.Add(unknown);
            }

            foreach (var below in network.children[node.Rail].Concat(network.convertersOn[node.Rail].SelectMany(network.FedByIndex)))
            {
                if (network.cyclic[below])
                {
                    var loop = new Demand { Label = label, Unstated = double.PositiveInfinity };
                    loop.Gaps.Add((new MissingDatum(new DatumPlace(network.Rails[below], nameof(Rail.From)), Label(network.Rails[below])), true));
                    node.Demands.Add(loop);
                }
            }

            foreach (var converter in network.convertersOn[node.Rail])
            {
                if (LeastEfficiency(converter) is null)
                {
                    gaps.Add((new MissingDatum(new DatumPlace(converter, nameof(Converter.Efficiency)), Label(converter)), true));
                }
            }

            foreach (var demand in node.Demands)
            {
                gaps.AddRange(demand.Gaps);
            }
        }

        /// <summary>Rails that share nodes, in downstream order.</summary>
        private List<Island> Islands()
        {
            var sets = new DisjointSets(nodes.Length);
            var batteries = new Dictionary<object, int>(ByReference.Instance);
            for (var i = 0; i < nodes.Length; i++)
            {
                var all = network.suppliers[nodes[i].Rail];
                for (var k = 0; k < all.Length; k++)
                {
                    if (nodes[i].Parents[k] >= 0)
                    {
                        sets.Join(i, nodes[i].Parents[k]);
                    }
                    else if (all[k].From is Battery)
                    {
                        if (batteries.TryGetValue(all[k].From!, out var other))
                        {
                            sets.Join(i, other);
                        }
                        else
                        {
                            batteries.Add(all[k].From!, i);
                        }
                    }
                }
            }

            var found = new Dictionary<int, Island>();
            foreach (var group in Enumerable.Range(0, nodes.Length).GroupBy(sets.Find))
            {
                var one = new Island();
                one.Members.AddRange(group);
                found.Add(group.Key, one);
            }

            for (var i = 0; i < nodes.Length; i++)
            {
                foreach (var supplying in network.suppliers[nodes[i].Rail])
                {
                    if (supplying.From is { } source and not Rail)
                    {
                        if (!islandsOf.TryGetValue(source, out var fed))
                        {
                            islandsOf.Add(source, fed = []);
                        }

                        if (fed.Count == 0 || fed[fed.Count - 1] != found[sets.Find(i)])
                        {
                            fed.Add(found[sets.Find(i)]);
                        }
                    }

                    if (supplying.From is Converter { Input: { } input })
                    {
                        found[sets.Find(result.LocalOf[network.indexOf[input]])].Behind.Add(found[sets.Find(i)]);
                    }
                }
            }

            return [.. found.Values];
        }

        /// <summary>Islands whose converters feed each other: solved in turn until their powers settle.</summary>
        private bool Converge(List<Island> together)
        {
            var before = double.NaN;
            for (var round = 0; round < ConverterRounds; round++)
            {
                together.ForEach(SolveIsland);
                var now = outputs.Values.Sum(output => output.High.Sum());
                if (double.IsInfinity(now) || Math.Abs(now - before) <= Math.Abs(now) * 1e-10)
                {
                    return true;
                }

                before = now;
            }

            return false;
        }
    }
}
