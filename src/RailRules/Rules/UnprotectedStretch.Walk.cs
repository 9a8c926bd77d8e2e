using System.Collections.Immutable;

namespace RailRules.Rules;

public sealed partial class UnprotectedStretch
{
    /// <summary>What is said of a place that a source reaches without a device, from the mildest on.</summary>
    private enum Outcome
    {
        /// <summary>Within the free length: no check.</summary>
        Free,

        /// <summary>The source's limit bounds it.</summary>
        Holds,

        /// <summary>Data are missing.</summary>
        Undecided,

        /// <summary>Nothing protects it.</summary>
        Fails,
    }

    private sealed record Reach(Outcome Outcome, string Source, double? Length, double? Current, ImmutableArray<MissingDatum> Missing, ImmutableArray<WorkingStep> Working);

    /// <summary>Walks from a source in both directions as far as no device is met, and keeps the worst that is said of each place.</summary>
    private sealed class Walk
    {
        private readonly Network network;
        private readonly Source source;
        private readonly string label;
        private readonly Dictionary<DatumPlace, Reach> result;
        private readonly CurrentLimit? limit;
        private readonly double? prospective;
        private readonly HashSet<(Rail Rail, int Step)> visited = [];
        private readonly Stack<(Rail Rail, int Step, State State)> pending = new();

        internal Walk(Network network, Source source, Dictionary<DatumPlace, Reach> result)
        {
            (this.network, this.source, this.result) = (network, source, result);
            label = Network.Label(source);
            limit = source switch
            {
                Supply supply => supply.CurrentLimit,
                Converter converter => converter.CurrentLimit,
                _ => null,
            };
            var volts = network.VoltagesOf(source, default, "").High;
            prospective = limit?.Level?.Max.Amperes ?? source switch
            {
                Supply { ProspectiveFault.Current: { } stated } => stated.Max.Amperes,
                Supply { SourceResistance: { } inside } when volts.IsKnown && inside.Min.Ohms > 0 => volts.Value / inside.Min.Ohms,
                Battery { InternalResistance: { } inside } battery when volts.IsKnown && inside.Min.Ohms > 0 => volts.Value * Math.Max(1, battery.Strings ?? 1) / inside.Min.Ohms,
                _ => null,
            };
        }

        private const int Own = -1;
        private const int OwnBackwards = -2;
        private const int End = -3;
        private const int EndFromBelow = -4;
        private const int FeedBackwards = -10;

        /// <summary>How the walk got here: length of conductor so far (m), lengths that are unknown, and other data that leave it open whether it got here at all.</summary>
        private readonly record struct State(double Length, ImmutableArray<MissingDatum> Lengths, ImmutableArray<MissingDatum> Doubts);

        internal void Run()
        {
            foreach (var rail in network.FedBy(source))
            {
                if (!network.IsCyclic(rail))
                {
                    Enter(rail, source, new State(0, [], []));
                }
            }

            while (pending.Count > 0)
            {
                var (rail, step, state) = pending.Pop();
                if (visited.Add((rail, step)))
                {
                    Take(rail, step, state);
                }
            }
        }

        /// <summary>Enters a rail from above. A tap leads to the rail's first device: the free length begins anew at it.</summary>
        private void Enter(Rail rail, Source from, State state)
        {
            var suppliers = network.Suppliers(rail);
            for (var k = 0; k < suppliers.Length; k++)
            {
                if (ReferenceEquals(suppliers[k].From, from))
                {
                    var path = suppliers[k].Feed is { } feed ? Network.Items(feed.Path) : Network.Items(rail.Path);
                    pending.Push((rail, k, path.Any(one => one is not null && IsDevice(one)) ? state with { Length = 0, Lengths = [] } : state));
                }
            }
        }

        private void Take(Rail rail, int step, State state)
        {
            var suppliers = network.Suppliers(rail);
            switch (step)
            {
                case >= 0:
                    if (suppliers[step].Feed is { } feed && !Pass(rail, feed, Network.Items(feed.Path), false, ref state))
                    {
                        return;
                    }

                    for (var k = 0; k < suppliers.Length; k++)
                    {
                        if (k != step)
                        {
                            pending.Push((rail, FeedBackwards - k, state));
                        }
                    }

                    pending.Push((rail, Own, state));
                    break;

                case Own:
                    if (Pass(rail, rail, Network.Items(rail.Path), false, ref state))
                    {
                        pending.Push((rail, End, state));
                    }

                    break;

                case OwnBackwards:
                    if (Pass(rail, rail, Network.Items(rail.Path), true, ref state))
                    {
                        for (var k = 0; k < suppliers.Length; k++)
                        {
                            pending.Push((rail, FeedBackwards - k, state));
                        }
                    }

                    break;

                case End or EndFromBelow:
                    if (step == EndFromBelow)
                    {
                        pending.Push((rail, OwnBackwards, state));
                    }

                    AtEnd(rail, state);
                    break;

                default:
                    var back = suppliers[FeedBackwards - step];
                    if ((back.Feed is null || Pass(rail, back.Feed, Network.Items(back.Feed.Path), true, ref state)) && back.From is Rail above && !network.IsCyclic(above))
                    {
                        pending.Push((above, EndFromBelow, state));
                    }

                    break;
            }
        }

        private void AtEnd(Rail rail, State state)
        {
            var loads = Network.Items(rail.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                if (loads[i] is { OverloadLimit: null } load)
                {
                    var doubts = network.IsUnknown(load, nameof(Load.OverloadLimit))
                        ? state.Doubts.Add(new MissingDatum(new DatumPlace(load, nameof(Load.OverloadLimit)), Network.Label(load, rail, i)))
                        : state.Doubts;
                    Keep(new DatumPlace(rail, nameof(Rail.Loads), i), WithoutLength(doubts, network.PolicyAt(rail)));
                }
            }

            foreach (var converter in network.ConvertersOn(rail))
            {
                Keep(new DatumPlace(converter, nameof(Converter.Input)), WithoutLength(state.Doubts, network.PolicyAt(rail)));
            }

            foreach (var child in network.Children(rail))
            {
                if (!network.IsCyclic(child))
                {
                    Enter(child, rail, state);
                }
            }
        }

        /// <summary>Goes along a path; false where a device, or something that blocks, ends the walk.</summary>
        private bool Pass(Rail rail, object owner, ImmutableArray<Element> path, bool backwards, ref State state)
        {
            if (network.Unworkable(owner, Network.Label(rail), nameof(Rail.Path)) is { } hidden)
            {
                state = state with { Doubts = state.Doubts.Add(hidden) };
            }

            for (var n = 0; n < path.Length; n++)
            {
                var i = backwards ? path.Length - 1 - n : n;
                if (path[i] is not { } element)
                {
                    continue;
                }

                var name = Network.Label(element, rail, i);
                switch (element)
                {
                    case BlockingDiode when backwards:
                    case ElectronicFuse { ReverseBlocking: true }:
                        return false;
                    case ElectronicFuse when backwards:
                        // A transistor without reverse blocking conducts backwards whatever its trip does.
                        if (element is ElectronicFuse { ReverseBlocking: null })
                        {
                            state = state with { Doubts = state.Doubts.Add(new MissingDatum(new DatumPlace(element, nameof(ElectronicFuse.ReverseBlocking)), name)) };
                        }

                        continue;
                    case ParallelGroup when network.IsUnknown(element, nameof(ParallelGroup.Branches)):
                        state = state with { Doubts = state.Doubts.Add(new MissingDatum(new DatumPlace(element, nameof(ParallelGroup.Branches)), name)) };
                        break;
                }

                if (IsDevice(element))
                {
                    return false;
                }

                if (element.ShortCircuitProof == true)
                {
                    continue;
                }

                var doubts = network.IsUnknown(element, nameof(Element.ShortCircuitProof))
                    ? state.Doubts.Add(new MissingDatum(new DatumPlace(element, nameof(Element.ShortCircuitProof)), name))
                    : state.Doubts;
                var length = LengthOf(element);
                if (length is { } known)
                {
                    state = state with { Length = state.Length + known };
                }
                else if (element is Wire or Trace or Busbar)
                {
                    state = state with { Lengths = state.Lengths.Add(new MissingDatum(new DatumPlace(element, nameof(Wire.Length)), name)) };
                }

                if (IsJudged(element))
                {
                    Keep(new DatumPlace(owner, nameof(Rail.Path), i), Judge(rail, element, name, length, state with { Doubts = doubts }));
                }
            }

            return true;
        }

        private static double? LengthOf(Element element) => element switch
        {
            Wire wire => wire.Length?.Meters,
            Trace trace => trace.Length?.Meters,
            Busbar busbar => busbar.Length?.Meters,
            ParallelGroup group => Network.Items(group.Branches).Select(branch => Network.Items(branch).Sum(one => one is null ? 0 : LengthOf(one) ?? 0)).DefaultIfEmpty(0).Max(),
            _ => null,
        };

        private Reach Judge(Rail rail, Element element, string name, double? length, State state)
        {
            var margins = network.PolicyAt(rail, element.Policy, element);
            var free = margins.Policy.UnprotectedLength.Meters;
            var doubts = network.UnknownMargin(margins, nameof(DesignPolicy.UnprotectedLength), nameof(DesignPolicy.CreditFirmwareLimits)) is { } unknown
                ? state.Doubts.Add(new MissingDatum(unknown, margins.Policy.Name))
                : state.Doubts;
            var working = ImmutableArray.Create(
                new WorkingStep("conductor from source or tap", "", "", new Figure(state.Length, "m"), state.Lengths.IsEmpty ? "lengths of the path" : "lengths of the path, as far as stated"),
                new WorkingStep("free length", "", "", new Figure(free, "m"), Network.PolicySource(margins.Policy, nameof(DesignPolicy.UnprotectedLength)), new DatumPlace(margins.Policy, nameof(DesignPolicy.UnprotectedLength))));
            var beyond = state.Length > free * (1 + Weighing.Tolerance);
            if (!beyond && state.Lengths.IsEmpty && doubts.Length == state.Doubts.Length)
            {
                return new Reach(Outcome.Free, label, length, null, [], []);
            }

            var reach = Bounded(network.ContinuousCurrent(rail, element, name), name, element, margins, working);
            if (reach.Outcome == Outcome.Fails)
            {
                var open = beyond ? doubts : doubts.AddRange(state.Lengths);
                reach = reach with { Length = length, Outcome = open.IsEmpty ? Outcome.Fails : Outcome.Undecided, Missing = open };
            }

            return reach;
        }

        private Reach WithoutLength(ImmutableArray<MissingDatum> doubts, Network.Margins margins)
        {
            // A source limit bounds a load; whether the load bears it is the load's own matter.
            var reach = Bounded(null, "", null, margins, []);
            return reach.Outcome == Outcome.Fails && !doubts.IsEmpty ? reach with { Outcome = Outcome.Undecided, Missing = doubts } : reach;
        }

        /// <summary>Whether the limit of the source bounds what the element bears.</summary>
        private Reach Bounded(Network.Continuous? bears, string name, Element? element, Network.Margins margins, ImmutableArray<WorkingStep> working)
        {
            var fails = new Reach(Outcome.Fails, label, null, prospective, [], working);
            if (network.IsUnknown(source, nameof(Supply.CurrentLimit)))
            {
                return fails with { Outcome = Outcome.Undecided, Missing = [new MissingDatum(new DatumPlace(source, nameof(Supply.CurrentLimit)), label)] };
            }

            if (limit is null || (limit.LimitedBy == LimitedBy.Firmware && !margins.Policy.CreditFirmwareLimits))
            {
                return fails;
            }

            var open = ImmutableArray.CreateBuilder<MissingDatum>();
            if (limit.LimitedBy is null)
            {
                open.Add(new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.LimitedBy)), label));
            }

            if (element is not null)
            {
                if (limit.Level is not { } level)
                {
                    open.Add(new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.Level)), label));
                }
                else
                {
                    var most = level.Max.Amperes;
                    working = working.Add(new WorkingStep("limit of the source", "", "", new Figure(most, "A"), "data of the source", new DatumPlace(limit, nameof(CurrentLimit.Level))));
                    var range = bears?.Range ?? new Range(0, double.PositiveInfinity);
                    if (!Weighing.Covers(range.High, most))
                    {
                        return fails with { Working = working };
                    }

                    if (!Weighing.Covers(range.Low, most))
                    {
                        open.AddRange(bears?.Missing ?? [new MissingDatum(new DatumPlace(element, nameof(Wire.Ampacity)), name)]);
                    }
                    else
                    {
                        working = working.Add(new WorkingStep("continuous capability", "", "", new Figure(range.Low, "A"), "I_z", new DatumPlace(element, DatumOf(element))));
                    }
                }
            }

            return open.Count == 0
                ? fails with { Outcome = Outcome.Holds, Working = working }
                : fails with { Outcome = Outcome.Undecided, Missing = open.ToImmutable(), Working = working };
        }

        private void Keep(DatumPlace key, Reach reach)
        {
            if (!result.TryGetValue(key, out var before) || reach.Outcome > before.Outcome)
            {
                result[key] = reach;
            }
        }
    }
}
