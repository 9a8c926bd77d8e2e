using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>The operating point: steady currents of rails, feeds and sources over both corners and all feed states, with bounds where data are absent.</content>
/// <remarks>
/// <para>
/// Where all data are there, the circuit is solved with the sources at their lowest and at their highest voltage. Where a resistance is absent or only bounded, or a
/// demand is unstated, two bounds are worked out for each current. The least: resistances at their least end, resistive loads at the lowest voltage they can have.
/// The most: resistances at their largest end, resistive loads at the highest voltage; behind a resistance without any bound a constant power draws at most
/// power / MinVoltage, and without MinVoltage there is no bound. Both bounds hold for any value inside the bounds of the data, since raising a resistance or a
/// demand never raises the voltage of a constant-power load.
/// </para>
/// <para>
/// Feeds that share a rail when more than one is needed share by their resistances; where one of those is not known, a feed carries between nothing and the whole.
/// </para>
/// </remarks>
public sealed partial class Network
{
    private OperatingResult? steady;
    private OperatingResult? peaks;
    private int[]? componentOf;
    private Dictionary<object, List<(Rail Rail, int Supplier)>>? sharers;

    /// <summary>Steady current (A) in a rail's own path: r.m.s., the largest over corners and feed states.</summary>
    internal Flow CurrentOf(Rail rail, bool peak = false) => Operating(peak).Rails[indexOf[rail]];

    /// <summary>Steady current (A) at a part in its place.</summary>
    internal Flow CurrentOf(PartPlace place, bool peak = false)
    {
        if (place.InReturn && Sharers(place.Feed is null ? place.Rail.Return! : place.Feed.Return!) is { Count: > 1 } sharers)
        {
            // A return that several rails share carries the sum of their currents.
            return sharers.Select(one => CurrentOfOwn(place with { Rail = one.Rail, Supplier = one.Supplier }, peak)).Aggregate((a, b) => a with
            {
                Low = a.Low + b.Low,
                High = a.High + b.High,
                Reason = a.Reason == FlowReason.Solved ? b.Reason : a.Reason,
                Gaps = a.Gaps.AddRange(b.Gaps),
            });
        }

        return CurrentOfOwn(place, peak);
    }

    /// <summary>The rails (and feeds) that have one return, by the same object.</summary>
    private List<(Rail Rail, int Supplier)> Sharers(Return back)
    {
        if (sharers is null)
        {
            sharers = new Dictionary<object, List<(Rail, int)>>(ByReference.Instance);
            foreach (var rail in Rails)
            {
                Add(rail.Return, rail, -1);
                var all = Suppliers(rail);
                for (var k = 0; k < all.Length; k++)
                {
                    Add(all[k].Feed?.Return, rail, k);
                }
            }
        }

        return sharers.TryGetValue(back, out var found) ? found : [];

        void Add(Return? one, Rail rail, int supplier)
        {
            if (one is not null && Items(one.Elements).Length > 0)
            {
                if (!sharers.TryGetValue(one, out var list))
                {
                    sharers.Add(one, list = []);
                }

                list.Add((rail, supplier));
            }
        }
    }

    private Flow CurrentOfOwn(PartPlace place, bool peak)
    {
        var result = Operating(peak);
        var index = indexOf[place.Rail];
        var flow = place.Supplier < 0 ? result.Rails[index] : result.Feeds[index][place.Supplier];
        if (place.Branches.IsEmpty || flow.Reason != FlowReason.Solved)
        {
            return flow;
        }

        var stretch = place.Supplier < 0 ? result.Stretches[index] : result.FeedStretches[index][place.Supplier];
        foreach (var (group, branch) in place.Branches)
        {
            var most = double.IsInfinity(flow.High) ? null : stretch.SharesOf(group, true, flow.High);
            var least = stretch.SharesOf(group, false, flow.Low);
            var exact = stretch.Gaps.Count == 0 && most is not null && least is not null;
            flow = exact
                ? flow with { Low = least![branch], High = most![branch] }
                : flow with { Low = 0, Gaps = flow.Gaps.AddRange(stretch.Gaps) };
        }

        return flow;
    }

    /// <summary>Steady current (A) that a supply, battery or converter gives to all its rails together.</summary>
    internal Flow CurrentOf(Source source) => Operating(false).Sources[source];

    /// <summary>The data for want of which a current is not exact, or there is none at all.</summary>
    /// <param name="flow">The current.</param>
    /// <param name="rail">The rail on which it flows.</param>
    internal ImmutableArray<MissingDatum> DoubtsAbout(Flow flow, Rail rail) => flow.Reason switch
    {
        FlowReason.Solved => flow.IsExact ? [] : flow.Gaps.IsEmpty ? MissingFor([rail]) : [.. flow.Gaps.Select(gap => gap.Datum)],
        FlowReason.Cycle => [new MissingDatum(new DatumPlace(rail, nameof(Rail.From)), Label(rail))],
        _ => LoadsWithoutMinVoltage(rail),
    };

    /// <summary>
    /// The data without which a rail's current is not exact: of its loads and of all between them and the sources; those without any bound alone, if there are any.
    /// </summary>
    internal ImmutableArray<MissingDatum> MissingFor(IEnumerable<Rail> rails)
    {
        var result = Operating(false);
        var gaps = new List<(MissingDatum Datum, bool Unbounded)>();
        var seen = new HashSet<int>();
        var above = new Stack<int>(rails.Select(rail => indexOf[rail]));
        var below = new Stack<int>(above);
        while (below.Count > 0)
        {
            var i = below.Pop();
            if (!seen.Add(i))
            {
                continue;
            }

            gaps.AddRange(result.Gaps[i]);
            foreach (var child in children[i].Concat(convertersOn[i].SelectMany(FedByIndex)))
            {
                below.Push(child);
            }
        }

        while (above.Count > 0)
        {
            foreach (var supplying in suppliers[above.Pop()])
            {
                if (supplying.From is Rail rail && seen.Add(indexOf[rail]))
                {
                    gaps.AddRange(result.Gaps[indexOf[rail]]);
                    above.Push(indexOf[rail]);
                }
            }
        }

        if (gaps.Count == 0)
        {
            var part = ComponentOf[indexOf[rails.First()]];
            gaps.AddRange(Enumerable.Range(0, Rails.Length).Where(i => ComponentOf[i] == part).SelectMany(i => result.Gaps[i]));
        }

        var chosen = gaps.Any(gap => gap.Unbounded) ? gaps.Where(gap => gap.Unbounded) : gaps;
        return [.. chosen.Select(gap => gap.Datum).GroupBy(datum => datum.Place).Select(group => group.First())];
    }

    private OperatingResult Operating(bool peak) => peak ? peaks ??= Operate(true) : steady ??= Operate(false);

    private OperatingResult Operate(bool peak)
    {
        var result = new OperatingResult(this);
        foreach (var part in downstream.GroupBy(i => ComponentOf[i]).Select(group => group.ToList()))
        {
            var component = new Component(this, result, part, peak);
            component.Solve();
            part.ForEach(i => result.Components[i] = component);
        }

        return result;
    }

    /// <summary>For each rail the part of the board to which it belongs: parts do not touch each other but at ideal sources.</summary>
    private int[] ComponentOf => componentOf ??= FindComponents();

    private int[] FindComponents()
    {
        var sets = new DisjointSets(Rails.Length);
        var shared = new Dictionary<object, int>(ByReference.Instance);
        for (var i = 0; i < Rails.Length; i++)
        {
            foreach (var supplying in suppliers[i])
            {
                if ((supplying.From as Rail ?? (supplying.From as Converter)?.Input) is { } above)
                {
                    sets.Join(i, indexOf[above]);
                }

                if (supplying.From is Battery or Converter)
                {
                    if (shared.TryGetValue(supplying.From, out var other))
                    {
                        sets.Join(i, other);
                    }
                    else
                    {
                        shared.Add(supplying.From, i);
                    }
                }
            }
        }

        return [.. Enumerable.Range(0, Rails.Length).Select(sets.Find)];
    }

    /// <summary>Why a flow has no number, or that it has.</summary>
    internal enum FlowReason
    {
        /// <summary>The current is known, or bounded.</summary>
        Solved,

        /// <summary>The path cannot deliver the power: no operating point.</summary>
        Collapse,

        /// <summary>The rail feeds itself.</summary>
        Cycle,
    }

    /// <summary>A steady current, between bounds where data are absent.</summary>
    /// <param name="Low">The least it can be (A).</param>
    /// <param name="High">The most it can be (A); infinite: without bound.</param>
    /// <param name="Reason">Why there is none, if so.</param>
    internal readonly record struct Flow(double Low, double High, FlowReason Reason)
    {
        /// <summary>Voltage at the end of the rail (V) with <see cref="Low"/>.</summary>
        internal double LowVoltage { get; init; }

        /// <summary>Voltage at the end of the rail (V) with <see cref="High"/>; NaN: behind an unknown resistance.</summary>
        internal double HighVoltage { get; init; }

        /// <summary>Lowest voltage at the end of the rail (V) over all corners and feed states, absent data at their worst end; null: not solved, or unknown.</summary>
        internal double? WorstEndVoltage { get; init; }

        /// <summary>The same with absent data at their best end.</summary>
        internal double? BestEndVoltage { get; init; }

        /// <summary>Largest drop (V) from the source to the end of the rail over all corners and feed states, between bounds where data are absent.</summary>
        internal Range Drop { get; init; }

        /// <summary>The same with the sources at their lowest voltage.</summary>
        internal Range DropAtLowVoltage { get; init; }

        /// <summary>Largest heat (W) of the rail's own path and return and of its feeds.</summary>
        internal Range Heat { get; init; }

        /// <summary>Whether the highest source voltage decides rather than the lowest.</summary>
        internal bool AtHighVoltage { get; init; }

        /// <summary>The feed state that decides; empty: there is but one.</summary>
        internal string State
        {
            get => field ?? "";
            init;
        }

        /// <summary>Data missing for the share of a branch.</summary>
        internal ImmutableArray<(MissingDatum Datum, bool Unbounded)> Gaps
        {
            get => field.IsDefault ? [] : field;
            init;
        }

        internal bool IsExact => Reason == FlowReason.Solved && Low == High;
    }

    private sealed class OperatingResult
    {
        internal OperatingResult(Network network)
        {
            var count = network.Rails.Length;
            Rails = new Flow[count];
            Feeds = new Flow[count][];
            Stretches = new Stretch[count];
            FeedStretches = new Stretch[count][];
            Gaps = new List<(MissingDatum, bool)>[count];
            LocalOf = new int[count];
            Components = new Component?[count];
            for (var i = 0; i < count; i++)
            {
                Rails[i] = new Flow(0, double.PositiveInfinity, FlowReason.Cycle);
                Feeds[i] = [.. network.suppliers[i].Select(_ => Rails[i])];
                Gaps[i] = [];
                Stretches[i] = new Stretch();
                FeedStretches[i] = [.. network.suppliers[i].Select(_ => Stretches[i])];
            }

            foreach (var source in network.Sources)
            {
                Sources[source] = new Flow(0, 0, FlowReason.Solved);
            }
        }

        internal Flow[] Rails { get; }

        internal Flow[][] Feeds { get; }

        internal Stretch[] Stretches { get; }

        internal Stretch[][] FeedStretches { get; }

        internal List<(MissingDatum Datum, bool Unbounded)>[] Gaps { get; }

        /// <summary>The index of each rail within its component.</summary>
        internal int[] LocalOf { get; }

        /// <summary>The solved part of the board of each rail; null: the rail feeds itself.</summary>
        internal Component?[] Components { get; }

        internal Dictionary<Source, Flow> Sources { get; } = new(ByReference.Instance);
    }
}
