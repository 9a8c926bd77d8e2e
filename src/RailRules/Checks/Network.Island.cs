using RailRules.Physics;

namespace RailRules;

/// <content>The solution of one island: rails that share nodes.</content>
public sealed partial class Network
{
    private sealed partial class Component
    {
        /// <summary>A current (A) below which a feed gives nothing.</summary>
        private const double LeastCurrent = 1e-12;

        private sealed class Run
        {
            internal Circuit Circuit = new();
            internal Solution Solution = null!;

            /// <summary>The circuit's node at the end of each rail, -1: detached.</summary>
            internal int[] End = null!;

            /// <summary>The branch of each rail's own path.</summary>
            internal int[] Own = null!;

            /// <summary>The branches of each rail's feeds, -1: lost or charged.</summary>
            internal int[]?[] Feeds = null!;

            /// <summary>What each source gives (A): branches, and what detached rails and charging draw besides.</summary>
            internal Dictionary<Source, (List<int> Branches, double Besides)> Given = new(ByReference.Instance);
        }

        private void SolveIsland(Island one)
        {
            island = one;
            one.Totals.Clear();
            one.Powers.Clear();
            inexact = one.Members.Any(member => nodes[member].HasGaps || network.convertersOn[nodes[member].Rail].Any(converter => !HasExactOutput(converter)));
            foreach (var member in one.Members)
            {
                result.Rails[nodes[member].Rail] = default(Flow) with { State = "" };
                result.Feeds[nodes[member].Rail] = [.. nodes[member].Parents.Select(_ => default(Flow) with { State = "" })];
                nodes[member].LowestVoltage = double.PositiveInfinity;
            }

            if (!inexact)
            {
                for (var s = 0; s < states.Count; s++)
                {
                    foreach (var high in (bool[])[false, true])
                    {
                        Note(Solve(End.Exact, s, high), End.Exact, s, high);
                    }
                }
            }
            else
            {
                for (var s = 0; s < states.Count; s++)
                {
                    SetBounds(s);
                    Note(Solve(End.Worst, s, high: false), End.Worst, s, high: false);
                }

                for (var s = 0; s < states.Count; s++)
                {
                    SetBounds(s);
                    foreach (var high in (bool[])[false, true])
                    {
                        Note(Solve(End.Best, s, high), End.Best, s, high);
                    }
                }
            }

            NoteOutputs(one);
        }

        private bool HasExactOutput(Converter converter)
        {
            if (LeastEfficiency(converter) is null)
            {
                return false;
            }

            return !outputs.TryGetValue(converter, out var output) || output.Low.Zip(output.High, (low, high) => low == high).All(same => same);
        }

        /// <summary>Bounds by sums alone, for rails behind something without bounds: what a rail and all below it can draw at most, and what they draw at least.</summary>
        private void SetBounds(int state)
        {
            var all = false;
            foreach (var member in island.Members)
            {
                var node = nodes[member];
                node.DetachedAtWorst = node.Stretch.Unbounded || node.FeedStretches.Any(stretch => stretch.Unbounded) || node.SourceUnknown || node.BatteryUnknown || node.SharingUnknown
                    || double.IsInfinity(node.Charge) || node.Parents.Any(parent => parent >= 0 && nodes[parent].DetachedAtWorst);
                node.DetachedAtBest = node.SourceUnknown || node.SharingUnknown || node.Parents.Any(parent => parent >= 0 && nodes[parent].DetachedAtBest);
                node.Bound = OwnBound(node, state);
                node.Least = node.Demands.Sum(demand => demand.Constant(peak: false));
                node.UpperFeed = node.LeastFeed = 0;
            }

            for (var m = island.Members.Count - 1; m >= 0; m--)
            {
                var node = nodes[island.Members[m]];
                node.UpperFeed = node.Bound + node.Charge;
                node.LeastFeed = node.Parents.Length > 1 ? 0 : node.Least;
                foreach (var parent in node.Parents.Distinct())
                {
                    if (parent >= 0)
                    {
                        nodes[parent].Bound += node.UpperFeed;
                        nodes[parent].Least += node.LeastFeed;
                    }
                }
            }

            foreach (var member in island.Members)
            {
                var node = nodes[member];
                var endless = node.Demands.Any(demand => double.IsInfinity(demand.Unstated)) || (node.Demands.Any(demand => demand.Conductance > 0) && double.IsInfinity(node.HighVoltage))
                    || network.convertersOn[node.Rail].Any(converter => double.IsInfinity(InputPower(converter, state).High));
                all |= !node.DetachedAtWorst && endless;
                all |= node.DetachedAtWorst && double.IsInfinity(node.UpperFeed)
                    && (node.Parents.Any(parent => parent >= 0 && !nodes[parent].DetachedAtWorst) || network.suppliers[node.Rail].Any(supplying => supplying.From is Battery));
            }

            if (all)
            {
                island.Members.ForEach(member => nodes[member].DetachedAtWorst = true);
            }
        }

        private double OwnBound(Node node, int state)
        {
            var bound = 0.0;
            foreach (var demand in node.Demands)
            {
                bound += demand.Constant(peak) + demand.Unstated;
                bound += demand.Power > 0 ? demand.Power / demand.MinVoltage : 0;
                bound += demand.Conductance > 0 ? demand.Conductance * node.HighVoltage : 0;
            }

            foreach (var converter in network.convertersOn[node.Rail])
            {
                var power = InputPower(converter, state).High;
                bound += power > 0 ? power / Finite(converter.InputMinVoltage?.Volts ?? 0) : 0;
            }

            return bound;
        }

        private (double Low, double High) InputPower(Converter converter, int state)
        {
            if (!outputs.TryGetValue(converter, out var output))
            {
                return (0, 0);
            }

            var least = LeastEfficiency(converter);
            return (output.Low[state] / (least ?? 1), output.High[state] > 0 ? output.High[state] / (least ?? 0.0) : 0);
        }

        private bool Detached(Node node, End end) => end switch
        {
            End.Worst => node.DetachedAtWorst,
            End.Best => node.DetachedAtBest,
            _ => false,
        };

        private bool IsLost(int member, int supplier, int state) => keys[member] is { } own && states[state].Lost.Contains(own[supplier]);

        /// <summary>The island's circuit at one corner, solved; null: it has no operating point.</summary>
        private Run? Solve(End end, int state, bool high)
        {
            var run = Build(end, state, high, out var varying);
            var circuit = run.Circuit;
            if (circuit.NodeCount == 0)
            {
                return run;
            }

            for (var round = 0; ; round++)
            {
                if (OperatingPoint.Solve(circuit) is not { } solution)
                {
                    return null;
                }

                run.Solution = solution;
                var change = 0.0;
                foreach (var (branch, stretches) in varying)
                {
                    double resistance = 0, drop = 0;
                    foreach (var stretch in stretches)
                    {
                        var (ohms, volts) = stretch.At(end == End.Worst, Math.Abs(solution.Currents[branch]));
                        resistance += ohms;
                        drop += volts;
                    }

                    var record = circuit.BranchAt(branch);
                    change = Math.Max(change, Math.Abs(resistance - record.Resistance) / Math.Max(resistance, 1e-9));
                    record.Resistance = resistance;
                    record.Drop = drop;
                }

                if (change <= 1e-12 || round == HeatingRounds)
                {
                    return run;
                }
            }
        }

        private Run Build(End end, int state, bool high, out List<(int Branch, Stretch[] Stretches)> varying)
        {
            var run = new Run { End = new int[nodes.Length], Own = new int[nodes.Length], Feeds = new int[]?[nodes.Length] };
            var circuit = run.Circuit;
            var terminals = new Dictionary<Source, int>(ByReference.Instance);
            var attached = island.Members.Any(member => !Detached(nodes[member], end));
            varying = [];
            foreach (var member in island.Members)
            {
                var node = nodes[member];
                var all = network.suppliers[node.Rail];
                run.End[member] = run.Own[member] = -1;
                if (Detached(node, end))
                {
                    Attach(run, terminals, member, end, state, high, attached);
                    continue;
                }

                var stretchEnd = end == End.Worst;
                if (all.Length == 1)
                {
                    var from = node.Parents[0] >= 0 ? run.End[node.Parents[0]] : Terminal(run, terminals, all[0].From!, high);
                    run.End[member] = circuit.AddNode();
                    run.Own[member] = Branch(circuit, from, [node.FeedStretches[0], node.Stretch], stretchEnd, varying);
                    run.Feeds[member] = [run.Own[member]];
                    Give(run, all[0].From, run.Own[member], 0);
                }
                else
                {
                    var froms = new int[all.Length];
                    for (var k = 0; k < all.Length; k++)
                    {
                        froms[k] = IsLost(member, k, state) ? -1 : node.Parents[k] >= 0 ? run.End[node.Parents[k]] : Terminal(run, terminals, all[k].From!, high);
                    }

                    var charged = Enumerable.Range(0, all.Length).Any(k => froms[k] >= 0 && all[k].From is not Battery);
                    var junction = circuit.AddNode();
                    run.Feeds[member] = new int[all.Length];
                    for (var k = 0; k < all.Length; k++)
                    {
                        run.Feeds[member]![k] = -1;
                        if (froms[k] < 0)
                        {
                            continue;
                        }

                        if (charged && Charges(node, all, k))
                        {
                            circuit.AddLoad(junction, Finite(((Battery)all[k].From!).ChargeCurrent?.Amperes ?? 0), 0);
                        }
                        else
                        {
                            run.Feeds[member]![k] = Branch(circuit, froms[k], [node.FeedStretches[k]], stretchEnd, varying);
                            Give(run, all[k].From, run.Feeds[member]![k], 0);
                        }
                    }

                    run.End[member] = circuit.AddNode();
                    run.Own[member] = Branch(circuit, junction, [node.Stretch], stretchEnd, varying);
                }

                AddLoads(circuit, run.End[member], node, end, state);
            }

            return run;
        }

        private void AddLoads(Circuit circuit, int at, Node node, End end, int state)
        {
            if (delivery is { } asked && !asked.Loaded.Contains(node))
            {
                return;
            }

            var scale = delivery?.Scale ?? 1;
            foreach (var demand in node.Demands)
            {
                var constant = demand.Constant(peak) + (end == End.Worst ? demand.Unstated : 0);
                circuit.AddPower(at, scale * demand.Power, delivery is null ? demand.MinVoltage : 0);
                if (end == End.Exact)
                {
                    circuit.AddLoad(at, constant, demand.Conductance);
                }
                else
                {
                    var voltage = end == End.Worst ? node.HighVoltage : double.IsInfinity(node.LowestVoltage) ? 0 : node.LowestVoltage;
                    circuit.AddLoad(at, constant + (demand.Conductance > 0 ? demand.Conductance * voltage : 0), 0);
                }
            }

            foreach (var converter in network.convertersOn[node.Rail])
            {
                var (low, most) = InputPower(converter, state);
                circuit.AddPower(at, scale * (end == End.Best ? low : most), delivery is null ? Finite(converter.InputMinVoltage?.Volts ?? 0) : 0);
            }
        }

        private static int Branch(Circuit circuit, int from, Stretch[] stretches, bool worst, List<(int Branch, Stretch[] Stretches)> varying)
        {
            double resistance = 0, drop = 0;
            foreach (var stretch in stretches)
            {
                var (ohms, volts) = stretch.At(worst, 0);
                resistance += ohms;
                drop += volts;
            }

            var branch = circuit.AddBranch(from, resistance, drop, stretches.Any(stretch => stretch.OneWay));
            if (stretches.Any(stretch => stretch.Varies))
            {
                varying.Add((branch, stretches));
            }

            return branch;
        }

        /// <summary>The node of a source's terminals.</summary>
        private int Terminal(Run run, Dictionary<Source, int> terminals, Source source, bool high)
        {
            if (terminals.TryGetValue(source, out var known))
            {
                return known;
            }

            var voltages = network.VoltagesOf(source, default, "");
            var node = run.Circuit.AddSource(high ? voltages.High.Value : voltages.Low.Value);
            if (source is Battery battery)
            {
                var charging = high && voltages.High.Place.Datum == nameof(Battery.ChargeVoltage);
                var ohms = battery.InternalResistance is { } band ? Finite(high ? band.Min.Ohms : band.Max.Ohms) : 0;
                var inside = node;
                node = run.Circuit.AddNode();
                run.Circuit.AddBranch(inside, charging ? 0 : ohms / Math.Max(1, battery.Strings ?? 1));
            }

            terminals.Add(source, node);
            return node;
        }

        /// <summary>What a detached rail draws, as constant current where it is attached.</summary>
        private void Attach(Run run, Dictionary<Source, int> terminals, int member, End end, int state, bool high, bool attached)
        {
            var node = nodes[member];
            var all = network.suppliers[node.Rail];
            var drawn = end == End.Worst ? node.UpperFeed : node.LeastFeed;
            var seen = new HashSet<object>(ByReference.Instance);
            for (var k = 0; k < all.Length; k++)
            {
                if (all[k].From is not { } from || IsLost(member, k, state) || !seen.Add(from))
                {
                    continue;
                }

                if (node.Parents[k] >= 0)
                {
                    if (run.End[node.Parents[k]] >= 0)
                    {
                        run.Circuit.AddLoad(run.End[node.Parents[k]], drawn, 0);
                    }

                    continue;
                }

                Give(run, from, -1, drawn);
                if (from is Battery { InternalResistance: not null } && !double.IsInfinity(drawn) && drawn > 0 && attached)
                {
                    run.Circuit.AddLoad(Terminal(run, terminals, from, high), drawn, 0);
                }
            }
        }

        private static void Give(Run run, Source? source, int branch, double besides)
        {
            if (source is null or Rail)
            {
                return;
            }

            if (!run.Given.TryGetValue(source, out var given))
            {
                given = ([], 0);
            }

            if (branch >= 0)
            {
                given.Branches.Add(branch);
            }

            run.Given[source] = (given.Branches, given.Besides + besides);
        }

        /// <summary>Keeps the largest currents seen.</summary>
        private void Note(Run? run, End end, int state, bool high)
        {
            if (run is null && end != End.Worst)
            {
                foreach (var member in island.Members)
                {
                    var index = nodes[member].Rail;
                    result.Rails[index] = result.Rails[index] with { Reason = FlowReason.Collapse };
                    result.Feeds[index] = [.. result.Feeds[index].Select(flow => flow with { Reason = FlowReason.Collapse })];
                }

                return;
            }

            var given = new Dictionary<Source, double>(ByReference.Instance);
            var heads = new double[nodes.Length];
            foreach (var member in island.Members)
            {
                var node = nodes[member];
                var detached = run is null || run.End[member] < 0;
                var current = !detached ? run!.Solution.Currents[run.Own[member]] : end == End.Worst ? node.Bound : node.Least;
                var voltage = detached ? double.NaN : run!.Solution.Voltages[run.End[member]];
                if (end == End.Worst)
                {
                    node.LowestVoltage = Math.Min(node.LowestVoltage, detached ? 0 : Math.Max(0, voltage));
                }

                result.Rails[node.Rail] = Lowest(Larger(result.Rails[node.Rail], current, voltage, end, state, high), voltage, end);
                result.Rails[node.Rail] = Costlier(result.Rails[node.Rail], CostOf(detached ? null : run, member, end, current, heads), end, high);
                var feeds = result.Feeds[node.Rail];
                var all = network.suppliers[node.Rail];
                for (var k = 0; k < feeds.Length; k++)
                {
                    var drawn = IsLost(member, k, state) ? 0
                        : detached ? (end == End.Worst ? node.UpperFeed : node.LeastFeed)
                        : run!.Feeds[member]![k] >= 0 ? run.Solution.Currents[run.Feeds[member]![k]]
                        : Finite((all[k].From as Battery)?.ChargeCurrent?.Amperes ?? 0);
                    feeds[k] = Larger(feeds[k], drawn, voltage, end, state, high);
                    if (run is null && all[k].From is { } source and not Rail && !IsLost(member, k, state))
                    {
                        given[source] = (given.TryGetValue(source, out var before) ? before : 0) + drawn;
                    }
                }
            }

            if (run is not null)
            {
                foreach (var pair in run.Given)
                {
                    given[pair.Key] = pair.Value.Besides + pair.Value.Branches.Sum(branch => run.Solution.Currents[branch]);
                }
            }

            foreach (var pair in given)
            {
                Keep(TotalsOf(island.Totals, pair.Key), pair.Value, end, state, high);
                if (pair.Key is Converter)
                {
                    var volts = network.VoltagesOf(pair.Key, default, "");
                    var voltage = end == End.Worst || high ? volts.High : volts.Low;
                    var power = pair.Value == 0 ? 0 : voltage.IsKnown ? pair.Value * voltage.Value : end == End.Best ? 0 : double.PositiveInfinity;
                    Keep(TotalsOf(island.Powers, pair.Key), power, end, state, high);
                }
            }
        }

        private static void Keep(Bounds bounds, double value, End end, int state, bool high)
        {
            var at = (2 * state) + (high ? 1 : 0);
            if (end != End.Worst)
            {
                bounds.Low[at] = value;
            }

            if (end != End.Best)
            {
                bounds.High[at] = value;
            }
        }

        private Bounds TotalsOf(Dictionary<Source, Bounds> totals, Source source)
        {
            if (!totals.TryGetValue(source, out var found))
            {
                totals.Add(source, found = new Bounds(new double[2 * states.Count], new double[2 * states.Count]));
            }

            return found;
        }

        /// <summary>The sum over islands of what a source gives, the larger of both corners, for each state.</summary>
        private Bounds Sum(IEnumerable<Dictionary<Source, Bounds>> totals, Source source)
        {
            var sum = new Bounds(new double[2 * states.Count], new double[2 * states.Count]);
            foreach (var one in totals)
            {
                if (one.TryGetValue(source, out var found))
                {
                    for (var at = 0; at < sum.Low.Length; at++)
                    {
                        sum.Low[at] += found.Low[at];
                        sum.High[at] += found.High[at];
                    }
                }
            }

            var result = new Bounds(new double[states.Count], new double[states.Count]);
            for (var state = 0; state < states.Count; state++)
            {
                result.Low[state] = Math.Max(sum.Low[2 * state], sum.Low[(2 * state) + 1]);
                result.High[state] = Math.Max(sum.High[2 * state], sum.High[(2 * state) + 1]);
            }

            return result;
        }

        /// <summary>Hands the output powers on to the islands that feed the converters.</summary>
        private void NoteOutputs(Island one)
        {
            foreach (var converter in one.Powers.Keys.OfType<Converter>())
            {
                outputs[converter] = Sum(islandsOf[converter].Select(other => other.Powers), converter);
            }
        }

        /// <summary>
        /// What a rail costs: drop (V) from the source that feeds it to its end, and heat (W) of its path with return and of its feeds. Behind something without bounds the
        /// worst end has none. <paramref name="heads"/> holds the source voltages that reach the rails done before.
        /// </summary>
        private (double Drop, double Heat) CostOf(Run? run, int member, End end, double current, double[] heads)
        {
            if (run is null)
            {
                var endless = end == End.Worst && current > 0 ? double.PositiveInfinity : 0;
                return (endless, endless);
            }

            var node = nodes[member];
            var (voltages, currents) = (run.Solution.Voltages, run.Solution.Currents);
            var heat = HeatOf(run.Own[member]);
            var feeds = run.Feeds[member]!;
            heads[member] = double.NegativeInfinity;
            for (var k = 0; k < feeds.Length; k++)
            {
                if (feeds[k] >= 0 && (feeds.Length == 1 || currents[feeds[k]] > LeastCurrent))
                {
                    heads[member] = Math.Max(heads[member], node.Parents[k] >= 0 ? heads[node.Parents[k]] : voltages[run.Circuit.BranchAt(feeds[k]).From]);
                    heat += feeds.Length == 1 ? 0 : HeatOf(feeds[k]);
                }
            }

            return (double.IsInfinity(heads[member]) ? 0 : Math.Max(0, heads[member] - voltages[run.End[member]]), heat);

            double HeatOf(int branch)
            {
                var one = run.Circuit.BranchAt(branch);
                return Math.Max(0, currents[branch] * (voltages[one.From] - voltages[one.To]));
            }
        }

        private static Flow Costlier(Flow flow, (double Drop, double Heat) cost, End end, bool high) => flow with
        {
            Drop = Wider(flow.Drop, cost.Drop, end),
            DropAtLowVoltage = high ? flow.DropAtLowVoltage : Wider(flow.DropAtLowVoltage, cost.Drop, end),
            Heat = Wider(flow.Heat, cost.Heat, end),
        };

        private static Range Wider(Range range, double value, End end) =>
            new(end == End.Worst ? range.Low : Math.Max(range.Low, value), end == End.Best ? range.High : Math.Max(range.High, value));

        /// <summary>Keeps the lowest voltages seen at the end of the rail.</summary>
        private static Flow Lowest(Flow flow, double voltage, End end)
        {
            if (end != End.Worst && !double.IsNaN(voltage))
            {
                flow = flow with { BestEndVoltage = Math.Min(flow.BestEndVoltage ?? double.PositiveInfinity, voltage) };
            }

            return end == End.Best ? flow : flow with { WorstEndVoltage = Math.Min(flow.WorstEndVoltage ?? double.PositiveInfinity, double.IsNaN(voltage) ? 0 : Math.Max(0, voltage)) };
        }

        private Flow Larger(Flow flow, double current, double voltage, End end, int state, bool high)
        {
            if (end != End.Worst && (current > flow.Low || (flow.Low == 0 && flow.LowVoltage == 0)))
            {
                flow = flow with { Low = current, LowVoltage = voltage, AtHighVoltage = high, State = states[state].Name };
            }

            if (end != End.Best && (current > flow.High || (flow.High == 0 && flow.HighVoltage == 0)))
            {
                flow = flow with { High = current, HighVoltage = voltage, State = states[state].Name };
                if (end == End.Exact)
                {
                    flow = flow with { AtHighVoltage = high };
                }
            }

            return flow;
        }
    }
}
