using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>Builds the circuit of a fault.</content>
public sealed partial class Network
{
    private readonly Dictionary<(object Node, bool Least), List<(FeedBack Leg, int Count)>> feedBacks = [];

    /// <summary>What hangs below a node and only feeds back: a stretch, capacitors at its end, more of the kind below.</summary>
    private sealed class FeedBack
    {
        internal double Resistance;
        internal double Inductance;
        internal List<(double Capacitance, double Voltage, double Esr, double Esl)> Capacitors = [];
        internal List<(FeedBack Leg, int Count)> Below = [];
        internal List<MissingDatum> Gaps = [];
        internal string Key = "";

        internal bool IsNothing => Capacitors.Count == 0 && Below.Count == 0;

        internal int Size => Capacitors.Count + Below.Sum(one => one.Leg.Size);

        internal double TotalCapacitance => Capacitors.Sum(one => one.Capacitance) + Below.Sum(one => one.Count * one.Leg.TotalCapacitance);

        internal double HighestVoltage => Math.Max(Capacitors.Select(one => one.Voltage).DefaultIfEmpty(0).Max(), Below.Select(one => one.Leg.HighestVoltage).DefaultIfEmpty(0).Max());
    }

    /// <summary>Walks from a fault to everything that can drive current into it.</summary>
    private sealed partial class FaultWalk(Network network, bool least, Limiters limiters = Limiters.Running)
    {
        /// <summary>What no connection and no source goes below: it keeps the circuit solvable and changes no third digit.</summary>
        private const double LeastResistance = 1e-7;
        private const double LeastInductance = 1e-10;
        private const double LeastSource = 1e-6;

        /// <summary>How many rails with several feeds are followed from feed to feed.</summary>
        private const int MostCrossings = 12;

        private readonly FaultNetwork circuit = new();
        private readonly Dictionary<object, int> nodes = new(ByReference.Instance);
        private readonly Dictionary<object, int> joints = new(ByReference.Instance);
        private readonly List<(int Branch, double TimeConstant)> stiff = [];
        private readonly List<MissingDatum> gaps = [];
        private readonly List<MissingDatum> slowGaps = [];
        private readonly List<string> assumptions = [];
        private readonly List<WorkingStep> sources = [];
        private readonly Queue<Action> pending = new();
        private bool unbounded;
        private int crossings;

        internal FaultCurrent Run(PartPlace part, int behind, bool reverse)
        {
            var rail = part.Rail;
            var path = Items(part.Feed is null ? rail.Path : part.Feed.Path);
            int through;
            if (network.IsCyclic(rail))
            {
                return Result(null);
            }

            // Through a device in the return flows what flows in the path: at most that of a fault at its beginning, from either side.
            var first = part.InReturn ? 0 : part.Place.Index ?? 0;
            var own = part.InReturn ? -1 : first;
            var leftOut = part.InReturn ? part.Part : null;
            if (!reverse)
            {
                var series = network.ColdSeries(rail, part.Feed, 0, part.InReturn ? 0 : behind + 1, own);
                if (Connect(series, out through) is not { } start)
                {
                    return Result(Waveform.Zero);
                }

                if (part.Feed is null)
                {
                    Start(rail, start, Route.Of(series, least));
                }
                else
                {
                    Supplier(rail, part.Supplier, start, Route.Of(series, least));
                }
            }
            else
            {
                var series = network.ColdSeries(rail, part.Feed, first, path.Length, own, leftOut);
                if (series.BlocksReverse || Connect(series, out through) is not { } end)
                {
                    return Result(Waveform.Zero);
                }

                var route = Route.Of(series, least);
                if (part.Feed is null)
                {
                    nodes.Add(rail, end);
                    End(rail, end, route, from: null, up: false);
                }
                else
                {
                    joints.Add(rail, end);
                    Down(rail, end, route);
                    OtherFeeds(rail, part.Supplier, end, route);
                }
            }

            while (pending.Count > 0)
            {
                pending.Dequeue()();
            }

            if (unbounded)
            {
                return Result(least ? Waveform.Zero : null);
            }

            var fingerprint = circuit.Fingerprint();
            if (!network.solvedFaults.TryGetValue(fingerprint, out var solved))
            {
                network.solvedFaults.Add(fingerprint, solved = circuit.Solve());
            }

            if (solved is not { } currents)
            {
                return Result(null);
            }

            // A branch leads from its source side to the fault.
            var current = currents[through];
            var tenth = current.PeakCurrent / 10;
            var slowest = stiff.Where(one => currents[one.Branch].PeakCurrent >= tenth).Select(one => one.TimeConstant).DefaultIfEmpty(0).Max();
            return Result(current) with { TimeConstant = slowest };
        }

        private FaultCurrent Result(Waveform? current) => new(
            current, 0, [.. gaps.Distinct()], [.. slowGaps.Distinct()], [.. assumptions.Distinct()], [.. sources]);

        /// <summary>A stretch from a new node to the fault; null where it is (or may be) open.</summary>
        private int? Connect(FaultSeries series, out int branch)
        {
            Note(series);
            var resistance = least ? series.Resistance.High : series.Resistance.Low;
            branch = -1;
            if (double.IsInfinity(resistance))
            {
                return null;
            }

            var node = circuit.AddNode();
            branch = circuit.AddBranch(
                node, 0, Math.Max(resistance, LeastResistance), Math.Max(least ? Bounded(series.Inductance.High) : series.Inductance.Low, LeastInductance), -series.Drop, oneWay: series.BlocksReverse);
            return node;
        }

        private static double Bounded(double inductance) => double.IsInfinity(inductance) ? 1 : inductance;

        private void Note(FaultSeries series)
        {
            gaps.AddRange(series.Gaps);
            slowGaps.AddRange(series.SoftGaps);
        }

        /// <summary>A stretch between a node above, made where it is new, and a node below; false where it is open.</summary>
        private bool Link(int above, int below, FaultSeries series)
        {
            Note(series);
            var resistance = least ? series.Resistance.High : series.Resistance.Low;
            if (double.IsInfinity(resistance))
            {
                return false;
            }

            circuit.AddBranch(
                above, below, Math.Max(resistance, LeastResistance), Math.Max(least ? Bounded(series.Inductance.High) : series.Inductance.Low, LeastInductance), -series.Drop, oneWay: series.BlocksReverse);
            return true;
        }

        /// <summary>The beginning of a rail's own path: its source, or where its feeds join.</summary>
        private void Start(Rail rail, int node, Route route)
        {
            var suppliers = network.Suppliers(rail);
            if (suppliers.Length == 1 && suppliers[0].Feed is null)
            {
                Above(suppliers[0].From, node, route, rail);
                return;
            }

            joints[rail] = node;
            for (var k = 0; k < suppliers.Length; k++)
            {
                Supplier(rail, k, node, route);
            }
        }

        private void OtherFeeds(Rail rail, int except, int node, Route route)
        {
            for (var k = 0; k < network.Suppliers(rail).Length; k++)
            {
                if (k != except)
                {
                    Supplier(rail, k, node, route);
                }
            }
        }

        /// <summary>From where feeds join, up one of them. At the fault itself the node is that of the feed's beginning.</summary>
        private void Supplier(Rail rail, int index, int node, Route route)
        {
            var supplying = network.Suppliers(rail)[index];
            if (supplying.Feed is not { } feed || !joints.ContainsKey(rail))
            {
                Above(supplying.From, node, route, rail);
                return;
            }

            var series = network.ColdSeries(rail, feed, 0, Items(feed.Path).Length, -1, limiters: limiters);
            if (series.Resistance is { Low: 0, High: 0 } && series.Inductance.High == 0 && !series.BlocksReverse && series.Gaps.Count == 0 && Items(feed.Path).Length == 0)
            {
                Above(supplying.From, node, route, rail);
                return;
            }

            var known = supplying.From is { } from && nodes.TryGetValue(from, out var there) ? there : -1;
            var above = known >= 0 ? known : circuit.AddNode();
            if (Link(above, node, series) && known < 0)
            {
                Above(supplying.From, above, route.With(series, least), rail);
            }
        }

        /// <summary>Whatever feeds: a rail's end, or a source's terminals.</summary>
        private void Above(Source? source, int node, Route route, Rail from)
        {
            if (source is null)
            {
                gaps.Add(new MissingDatum(new DatumPlace(from, nameof(Rail.From)), Label(from)));
                unbounded = true;
                return;
            }

            if (nodes.TryGetValue(source, out var known))
            {
                circuit.AddBranch(known, node, LeastResistance, LeastInductance);
                return;
            }

            nodes.Add(source, node);
            if (source is Rail rail)
            {
                pending.Enqueue(() => End(rail, node, route, from, up: true));
            }
            else
            {
                pending.Enqueue(() => Terminals(source, node, route, from));
            }
        }

        /// <summary>The end of a rail: what hangs there, what lies below, and, where the walk came from below, what lies above.</summary>
        private void End(Rail rail, int node, Route route, Rail? from, bool up)
        {
            foreach (var capacitor in CapacitorsAt(rail))
            {
                Attach(node, capacitor, 1);
            }

            Hanging(rail, network.Children(rail), node, from);
            if (!up)
            {
                return;
            }

            var path = Items(rail.Path);
            if (path.Length == 0)
            {
                Start(rail, node, route);
                return;
            }

            var series = network.ColdSeries(rail, null, 0, path.Length, -1, limiters: limiters);
            var above = circuit.AddNode();
            if (Link(above, node, series))
            {
                Start(rail, above, route.With(series, least));
            }
        }

        /// <summary>From where feeds join, down the rail's own path to its end.</summary>
        private void Down(Rail rail, int node, Route route)
        {
            var series = network.ColdSeries(rail, null, 0, Items(rail.Path).Length, -1, limiters: limiters);
            if (series.BlocksReverse)
            {
                return;
            }

            var end = circuit.AddNode();
            if (Link(node, end, series))
            {
                nodes[rail] = end;
                pending.Enqueue(() => End(rail, end, route.With(series, least), from: null, up: false));
            }
        }

        /// <summary>The rails on a node, but the one from which the walk came.</summary>
        private void Hanging(object owner, IEnumerable<Rail> rails, int node, Rail? from)
        {
            var groups = network.FeedBacksOf(owner, rails, least);
            var own = from is not null && network.LegOf(from, least) is { } leg ? leg.Key : null;
            foreach (var (each, count) in groups)
            {
                var left = each.Key == own ? count - 1 : count;
                if (left > 0)
                {
                    Attach(node, each, left);
                }
            }

            foreach (var rail in network.CrossingsOf(owner, rails))
            {
                if (!ReferenceEquals(rail, from) && !joints.ContainsKey(rail))
                {
                    Cross(rail, owner, node);
                }
            }
        }

        /// <summary>Into a rail of several feeds by one of them, to its end and to the sources of the others.</summary>
        private void Cross(Rail rail, object owner, int node)
        {
            var suppliers = network.Suppliers(rail);
            for (var k = 0; k < suppliers.Length; k++)
            {
                if (!ReferenceEquals(suppliers[k].From, owner))
                {
                    continue;
                }

                var feed = suppliers[k].Feed;
                var series = feed is null ? new FaultSeries() : network.ColdSeries(rail, feed, 0, Items(feed.Path).Length, -1, limiters: limiters);
                if (series.BlocksReverse || joints.ContainsKey(rail))
                {
                    continue;
                }

                if (++crossings > MostCrossings)
                {
                    gaps.Add(new MissingDatum(new DatumPlace(rail, nameof(Rail.Feeds)), Label(rail)));
                    unbounded = true;
                    return;
                }

                var joint = circuit.AddNode();
                joints.Add(rail, joint);
                if (Link(node, joint, series))
                {
                    // The time constants of sources beyond a crossing are taken along the stretch that leads there.
                    var route = default(Route).With(series, least);
                    Down(rail, joint, route);
                    OtherFeeds(rail, k, joint, route);
                }
            }
        }

        private void Attach(int node, FeedBack leg, int count)
        {
            gaps.AddRange(leg.Gaps);
            var end = node;
            if (leg.Resistance > 0 || leg.Inductance > 0)
            {
                end = circuit.AddNode();
                circuit.AddBranch(end, node, Math.Max(leg.Resistance, LeastResistance) / count, Math.Max(leg.Inductance, LeastInductance) / count);
            }

            foreach (var (capacitance, voltage, esr, esl) in leg.Capacitors)
            {
                circuit.AddCapacitor(0, end, capacitance * count, voltage, Math.Max(esr, LeastSource) / count, Math.Max(esl, LeastInductance) / count);
            }

            foreach (var (below, more) in leg.Below)
            {
                Attach(end, below, count * more);
            }
        }

        private void Attach(int node, (double Capacitance, double Voltage, double Esr, double Esl, List<MissingDatum> Gaps) capacitor, int count)
        {
            gaps.AddRange(capacitor.Gaps);
            if (double.IsInfinity(capacitor.Capacitance))
            {
                unbounded |= !least;
            }
            else if (capacitor.Capacitance > 0 && !double.IsInfinity(capacitor.Esr))
            {
                circuit.AddCapacitor(0, node, capacitor.Capacitance * count, capacitor.Voltage, Math.Max(capacitor.Esr, LeastSource) / count, Math.Max(capacitor.Esl, LeastInductance) / count);
            }
        }

        private IEnumerable<(double Capacitance, double Voltage, double Esr, double Esl, List<MissingDatum> Gaps)> CapacitorsAt(Rail rail) => network.CapacitorsOf(rail, least);

        /// <summary>A source at its terminals: what it drives by itself, its capacitors, and the other rails on it.</summary>
        private void Terminals(Source source, int node, Route route, Rail from)
        {
            var label = Label(source);
            Hanging(source, network.FedBy(source), node, from);
            switch (source)
            {
                case Supply supply:
                    Drive(supply, label, node, route, supply.ProspectiveFault, supply.SourceResistance?.Min.Ohms, supply.SourceInductance, supply.CurrentLimit, nameof(Supply.SourceResistance), nameof(Supply.SourceInductance));
                    Output(supply, label, node, supply.OutputCapacitance?.Max.Farads, supply.OutputCapacitorEsr?.Min.Ohms, supply.OutputCapacitorEsl?.Min.Henries);
                    break;
                case Converter converter:
                    Drive(converter, label, node, route, null, null, null, converter.CurrentLimit, nameof(Converter.CurrentLimit), nameof(Converter.CurrentLimit));
                    Output(converter, label, node, converter.OutputCapacitance?.Max.Farads, converter.OutputCapacitorEsr?.Min.Ohms, null);
                    break;
                case Battery battery:
                    var strings = Math.Max(1, battery.Strings ?? 1);
                    var inductance = battery.InternalInductance is { } band ? new Band<UnitsNet.ElectricInductance>(band.Min / strings, null, band.Max / strings) : (Band<UnitsNet.ElectricInductance>?)null;
                    Drive(battery, label, node, route, null, battery.InternalResistance?.Min.Ohms / strings, inductance, null, nameof(Battery.InternalResistance), nameof(Battery.InternalInductance));
                    break;
            }
        }

        private void Output(Source source, string label, int node, double? capacitance, double? esr, double? esl)
        {
            var missing = new List<MissingDatum>();
            var farads = network.Absent(source, nameof(Supply.OutputCapacitance), label, capacitance, missing) ?? 0;
            if (farads > 0 || missing.Count > 0)
            {
                Attach(node, (missing.Count > 0 ? double.PositiveInfinity : farads, HighestVoltage(source, label, missing) ?? 0, network.EsrOf(source, nameof(Supply.OutputCapacitorEsr), label, esr, least, missing), esl ?? 0, missing), 1);
            }
        }

        private double? HighestVoltage(Source source, string label, List<MissingDatum> missing)
        {
            if (source is Battery { OpenCircuitVoltage: { } open })
            {
                return open.Max.Volts;
            }

            var high = network.VoltagesOf(source, new DatumPlace(source), label).High;
            missing.AddRange(high.Missing);
            return high.IsAny ? high.Value : null;
        }

        /// <summary>The source itself: stiff behind resistance and inductance until its limit acts.</summary>
        private void Drive(
            Source source,
            string label,
            int node,
            Route route,
            ProspectiveFault? known,
            double? resistance,
            Band<UnitsNet.ElectricInductance>? inductance,
            CurrentLimit? limit,
            string datum,
            string inductanceDatum)
        {
            var missing = new List<MissingDatum>();
            var voltage = HighestVoltage(source, label, missing);
            gaps.AddRange(missing);
            if (voltage is not { } driving || missing.Count > 0)
            {
                unbounded = true;
                return;
            }

            var assumed = network.PolicyAt(route.Rail ?? network.FedBy(source).First()).Policy.AssumedTimeConstant.Seconds;
            double ohms, henries, slow, floor;
            Limited? limited = null;
            var place = new DatumPlace(source, datum);
            if (known?.Current is { } stated && stated.Max.Amperes > 0)
            {
                ohms = driving / stated.Max.Amperes;
                henries = ohms * (known.TimeConstant?.Seconds ?? 0);
                slow = known.TimeConstant is { } tau ? ohms * tau.Seconds : 0;
                floor = known.TimeConstant is null && !least ? assumed : 0;
                place = new DatumPlace(known, nameof(ProspectiveFault.Current));
                if (known.TimeConstant is null)
                {
                    Slow(new MissingDatum(new DatumPlace(known, nameof(ProspectiveFault.TimeConstant)), label), label);
                }
            }
            else
            {
                limited = LimitOf(source, label, limit, resistance is not null);
                if (resistance is null && limited is null)
                {
                    gaps.Add(new MissingDatum(new DatumPlace(source, datum), label));
                    if (least)
                    {
                        return;
                    }
                }

                ohms = Math.Max(resistance ?? 0, LeastSource);
                henries = inductance?.Min.Henries ?? 0;
                slow = inductance?.Max.Henries ?? 0;
                floor = inductance is null && resistance is not null && !least ? assumed : 0;
                if (inductance is null && resistance is not null)
                {
                    Slow(new MissingDatum(new DatumPlace(source, inductanceDatum), label), label);
                }
            }

            var branch = circuit.AddBranch(0, node, ohms, Math.Max(henries, LeastInductance), driving);
            if (limited is { } acts)
            {
                circuit.LimitSource(branch, acts.Response, acts.Peak, acts.Level, acts.Off);
            }

            stiff.Add((branch, Math.Max(floor, (route.Slow + slow) / Math.Max(route.Resistance + (resistance is null && known is null ? 0 : ohms), 1e-12))));
            sources.Add(new WorkingStep(
                $"'{label}' in a fault",
                limited is null ? "V / R" : "level of its limit",
                limited is null ? $"{Figures.Text(driving, "V")} / {Figures.Text(ohms, "Ω")}" : "",
                new Figure(limited?.Level ?? driving / ohms, "A"),
                limited is null ? "highest voltage, least resistance" : "highest level",
                limited is null ? place : new DatumPlace(limit!, nameof(CurrentLimit.Level))));
        }

        private void Slow(MissingDatum datum, string label)
        {
            slowGaps.Add(datum);
            assumptions.Add($"no inductance of '{label}' is stated; the time constant of the circuit is taken to be no longer than the assumed one where nothing stated makes it so");
        }

        /// <summary>The limit of a source as it counts for the largest current; null: none.</summary>
        private Limited? LimitOf(Source source, string label, CurrentLimit? limit, bool hasResistance)
        {
            if (network.IsUnknown(source, nameof(Supply.CurrentLimit)))
            {
                gaps.Add(new MissingDatum(new DatumPlace(source, nameof(Supply.CurrentLimit)), label));
                return null;
            }

            var rail = network.FedBy(source).First();
            if (limit is null || (limit.LimitedBy == LimitedBy.Firmware && !network.PolicyAt(rail).Policy.CreditFirmwareLimits))
            {
                return null;
            }

            if (limit.LimitedBy is null)
            {
                assumptions.Add($"the current limit of '{label}' is taken to be made by hardware");
            }

            if (limit.Level is not { } level)
            {
                gaps.Add(new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.Level)), label));
                return least ? new Limited(0, double.PositiveInfinity, 0, 0) : null;
            }

            var off = limit.Style == CurrentLimitStyle.LatchOff && limit.TripTime is { } trip ? trip.Max.Seconds : double.PositiveInfinity;
            var peak = limit.PeakBeforeLimit?.Amperes ?? double.PositiveInfinity;
            if (!hasResistance)
            {
                return new Limited(0, double.PositiveInfinity, level.Max.Amperes, off);
            }

            if (limit.Response is { } response)
            {
                return new Limited(response.Max.Seconds, peak, level.Max.Amperes, off);
            }

            gaps.Add(new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.Response)), label));
            return new Limited(least ? 0 : 1e9, peak, level.Max.Amperes, off);
        }

        private sealed record Limited(double Response, double Peak, double Level, double Off);

        /// <summary>Resistance and inductance between the fault and a node, for the time constant of what drives there.</summary>
        private readonly record struct Route(double Resistance, double Slow, Rail? Rail)
        {
            internal static Route Of(FaultSeries series, bool least) => default(Route).With(series, least);

            internal Route With(FaultSeries series, bool least) => least
                ? new(Resistance + series.Resistance.High, Slow + series.SlowInductance.Low, Rail)
                : new(Resistance + series.Resistance.Low, Slow + series.SlowInductance.High, Rail);
        }
    }

    /// <summary>A datum that was written but could not be worked out counts as missing; one that is absent as none.</summary>
    private double? Absent(object owner, string datum, string label, double? value, List<MissingDatum> missing)
    {
        if (value is null && IsUnknown(owner, datum))
        {
            missing.Add(new MissingDatum(new DatumPlace(owner, datum), label));
        }

        return value;
    }

    /// <summary>Series resistance of a capacitor (Ω): absent, between none and infinite.</summary>
    private double EsrOf(object owner, string datum, string label, double? esr, bool least, List<MissingDatum> missing)
    {
        if (esr is { } stated)
        {
            return Finite(stated);
        }

        missing.Add(new MissingDatum(new DatumPlace(owner, datum), label));
        return least ? double.PositiveInfinity : 0;
    }

    /// <summary>Capacitors at the end of a rail, charged to its highest voltage, at their largest. What is not stated does not count.</summary>
    private List<(double Capacitance, double Voltage, double Esr, double Esl, List<MissingDatum> Gaps)> CapacitorsOf(Rail rail, bool least)
    {
        var result = new List<(double, double, double, double, List<MissingDatum>)>();
        var high = VoltagesOf(rail).High;
        var capacitors = Items(rail.Capacitors);
        for (var i = 0; i < capacitors.Length; i++)
        {
            if (capacitors[i] is { } one)
            {
                Add(one, nameof(Capacitor.Capacitance), nameof(Capacitor.Esr), Label(one, rail, i), one.Capacitance?.Max.Farads, one.Esr?.Min.Ohms, one.Esl?.Min.Henries);
            }
        }

        var loads = Items(rail.Loads);
        for (var i = 0; i < loads.Length; i++)
        {
            if (loads[i] is { } one)
            {
                Add(one, nameof(Load.InputCapacitance), nameof(Load.InputCapacitorEsr), Label(one, rail, i), one.InputCapacitance?.Max.Farads, one.InputCapacitorEsr?.Min.Ohms, one.InputCapacitorEsl?.Min.Henries);
            }
        }

        foreach (var converter in ConvertersOn(rail))
        {
            Add(converter, nameof(Converter.InputCapacitance), nameof(Converter.InputCapacitorEsr), Label(converter), converter.InputCapacitance?.Max.Farads, converter.InputCapacitorEsr?.Min.Ohms, null);
        }

        return result;

        void Add(object owner, string datum, string esrDatum, string label, double? capacitance, double? esr, double? esl)
        {
            var missing = new List<MissingDatum>();
            var farads = Absent(owner, datum, label, capacitance, missing);
            if (missing.Count > 0)
            {
                result.Add((double.PositiveInfinity, high.Value, 0, 0, missing));
            }
            else if (farads is > 0 and var stated)
            {
                var series = EsrOf(owner, esrDatum, label, esr, least, missing);
                missing.AddRange(high.Missing);
                result.Add((stated, high.Value, series, Finite(esl ?? 0), missing));
            }
        }
    }

    private bool[]? crosses;
    private readonly Dictionary<object, List<Rail>> crossings = new(ByReference.Instance);
    private readonly Dictionary<(Rail Rail, bool Least), FeedBack?> legs = [];
    private readonly Dictionary<string, string> legKeys = new(StringComparer.Ordinal);

    /// <summary>Whether a rail, or one below it, joins several feeds, so that one can drive into the other.</summary>
    private bool Crosses(Rail rail)
    {
        if (crosses is null)
        {
            crosses = new bool[Rails.Length];
            foreach (var i in downstream.AsEnumerable().Reverse())
            {
                crosses[i] = suppliers[i].Length > 1 || children[i].Any(below => crosses[below]);
            }
        }

        return crosses[indexOf[rail]];
    }

    /// <summary>The rails on a node from which current can come that another feed drives.</summary>
    private List<Rail> CrossingsOf(object owner, IEnumerable<Rail> rails)
    {
        if (!crossings.TryGetValue(owner, out var known))
        {
            crossings.Add(owner, known = [.. rails.Where(rail => Crosses(rail) && Suppliers(rail).Any(supplying =>
                ReferenceEquals(supplying.From, owner) && !(supplying.Feed is { } feed && Items(feed.Path).Any(element => element is not null && Blocks(element)))))]);
        }

        return known;
    }

    /// <summary>What a rail feeds back to what feeds it; null: nothing, or more than capacitors.</summary>
    private FeedBack? LegOf(Rail rail, bool least)
    {
        if (legs.TryGetValue((rail, least), out var known))
        {
            return known;
        }

        // From the leaves up, so that a deep board is no deep recursion; a cyclic rail, which is in no order, feeds back nothing.
        legs[(rail, least)] = null;
        foreach (var i in downstream.AsEnumerable().Reverse())
        {
            legs[(Rails[i], least)] = MakeLeg(Rails[i], least);
        }

        return legs[(rail, least)];
    }

    private FeedBack? MakeLeg(Rail rail, bool least)
    {
        if (Crosses(rail))
        {
            return null;
        }

        var series = ColdSeries(rail, null, 0, Items(rail.Path).Length, -1);
        var resistance = least ? series.Resistance.High : series.Resistance.Low;
        if (series.BlocksReverse || double.IsInfinity(resistance))
        {
            return null;
        }

        var leg = new FeedBack
        {
            Resistance = resistance,
            Inductance = least ? (double.IsInfinity(series.Inductance.High) ? 1 : series.Inductance.High) : series.Inductance.Low,
            Below = [.. FeedBacksOf(rail, Children(rail), least)],
        };
        foreach (var (capacitance, voltage, esr, esl, missing) in CapacitorsOf(rail, least))
        {
            leg.Gaps.AddRange(missing);
            if (double.IsInfinity(capacitance))
            {
                // Unknown though written: as good as a source for the most, nothing for the least.
                leg.Capacitors.Add((least ? 0 : 1e3, voltage, 0, 0));
            }
            else if (!double.IsInfinity(esr))
            {
                leg.Capacitors.Add((capacitance, voltage, esr, esl));
            }
        }

        leg.Capacitors.RemoveAll(one => one.Capacitance <= 0);
        leg.Gaps.AddRange(leg.IsNothing ? [] : series.Gaps);
        if (leg.IsNothing && leg.Gaps.Count == 0)
        {
            return null;
        }

        if (leg.Size > MostParts)
        {
            leg.Capacitors = least ? [] : [(leg.TotalCapacitance, leg.HighestVoltage, 0, 0)];
            leg.Gaps.AddRange(leg.Below.SelectMany(one => one.Leg.Gaps));
            leg.Below = [];
        }

        var text = FormattableString.Invariant($"{leg.Resistance:R}/{leg.Inductance:R}")
            + string.Concat(leg.Capacitors.Select(one => FormattableString.Invariant($"|{one.Capacitance:R},{one.Voltage:R},{one.Esr:R},{one.Esl:R}")))
            + string.Concat(leg.Below.Select(one => $"[{one.Count}x{one.Leg.Key}]"));
        if (!legKeys.TryGetValue(text, out var key))
        {
            legKeys.Add(text, key = legKeys.Count.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        leg.Key = key;
        return leg;
    }

    /// <summary>What the rails on a node feed back, the alike together.</summary>
    private List<(FeedBack Leg, int Count)> FeedBacksOf(object owner, IEnumerable<Rail> rails, bool least)
    {
        if (feedBacks.TryGetValue((owner, least), out var known))
        {
            return known;
        }

        var groups = rails.Select(rail => LegOf(rail, least)).OfType<FeedBack>().GroupBy(leg => leg.Key, StringComparer.Ordinal)
            .Select(group => (Leg: group.First(), Count: group.Count())).ToList();
        if (groups.Count > MostBranches)
        {
            groups = [.. groups.OrderByDescending(one => one.Count * one.Leg.TotalCapacitance)];
            var rest = groups.Skip(MostBranches).Where(one => !one.Leg.IsNothing).ToList();
            groups = least || rest.Count == 0 ? [.. groups.Take(MostBranches)] : [.. groups.Take(MostBranches), (Lumped(rest), 1)];
        }

        return feedBacks[(owner, least)] = groups;
    }

    private static FeedBack Lumped(List<(FeedBack Leg, int Count)> rest)
    {
        var leg = new FeedBack
        {
            Resistance = 1 / rest.Sum(one => one.Count / Math.Max(one.Leg.Resistance, 1e-6)),
            Inductance = 1 / rest.Sum(one => one.Count / Math.Max(one.Leg.Inductance, 1e-10)),
            Capacitors = [(rest.Sum(one => one.Count * one.Leg.TotalCapacitance), rest.Max(one => one.Leg.HighestVoltage), 0, 0)],
            Key = "rest",
        };
        leg.Gaps.AddRange(rest.SelectMany(one => one.Leg.Gaps));
        return leg;
    }
}
