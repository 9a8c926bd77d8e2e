using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>Inrush: the current through a part from the closing of its path until all capacitors behind it are charged.</content>
/// <remarks>
/// <para>
/// Highest voltage, largest capacitances, everything cold and new, as for the largest fault; in place of the fault stand the empty capacitors. What else hangs on
/// the live side, the output capacitors of the source among it, counts as charged. Behind an electronic fuse, or before one in the same path, the current is bounded by what
/// it lets flow when it starts.
/// </para>
/// <para>
/// Branches that are alike are taken together. Beyond <see cref="MostBranches"/> different ones on a node the smaller are lumped: conductances and capacitances added
/// and series resistances left out, which never lowers the current.
/// </para>
/// </remarks>
public sealed partial class Network
{
    /// <summary>How many capacitors are tried alone where starts do not coincide.</summary>
    private const int MostAlone = 32;

    private readonly Dictionary<(DatumPlace Place, Element Part, bool Hot), Inrush?> inrushes = [];
    private readonly Dictionary<(int Rail, int Supplier, bool Least, bool Hot), StartLeg> startLegs = [];

    /// <summary>The inrush through a part; null: there is no capacitor behind it.</summary>
    /// <param name="place">The part.</param>
    /// <param name="hotLimiters">Whether inrush limiters are still hot from the time before, those that cannot be excepted.</param>
    internal Inrush? InrushOf(PartPlace place, bool hotLimiters = false)
    {
        if (!inrushes.TryGetValue((place.Place, place.Part, hotLimiters), out var known))
        {
            inrushes.Add((place.Place, place.Part, hotLimiters), known = MakeInrush(place, hotLimiters));
        }

        return known;
    }

    /// <summary>An inrush at one end of the bounds of absent data.</summary>
    /// <param name="Integral">Joule integral until charged (A²s).</param>
    /// <param name="Peak">Largest current (A).</param>
    internal readonly record struct InrushEnd(double Integral, double Peak)
    {
        /// <summary>The time for which the peak would have to flow for the same integral (s).</summary>
        internal double EqualTime => Integral <= 0 ? 0 : Integral / (Peak * Peak);
    }

    /// <summary>What flows through a part when its path is closed.</summary>
    /// <param name="Most">With absent data at the end that gives the most.</param>
    /// <param name="Least">With absent data at the end that gives the least.</param>
    /// <param name="Voltage">Voltage to which the capacitors are charged (V).</param>
    /// <param name="Capacitance">Capacitance behind the part (F).</param>
    /// <param name="Gaps">The data that were bounded or are missing.</param>
    /// <param name="Assumptions">What was assumed where data are silent.</param>
    /// <param name="Working">The steps to the integral.</param>
    internal sealed record Inrush(
        InrushEnd Most, InrushEnd Least, Voltage Voltage, double Capacitance, ImmutableArray<MissingDatum> Gaps, ImmutableArray<string> Assumptions, ImmutableArray<WorkingStep> Working);

    /// <summary>What is behind a node and empty when it is closed: a stretch, capacitors at its end, more of the kind below, and what stands behind electronic fuses.</summary>
    private sealed class StartLeg
    {
        internal double Resistance;
        internal double Inductance;
        internal double Drop;
        internal bool OneWay;
        internal bool Open;
        internal List<(double Capacitance, double Esr, double Esl)> Capacitors = [];
        internal List<(StartLeg Leg, int Count)> Below = [];

        /// <summary>What is charged through electronic fuses: how much, and by what current and power at most.</summary>
        internal List<(double Capacitance, double Current, double Power)> Limited = [];
        internal List<MissingDatum> Gaps = [];
        internal string Key = "";

        internal bool IsNothing => Capacitors.Count == 0 && Below.Count == 0;

        internal double Charged => Capacitors.Sum(one => one.Capacitance) + Below.Sum(one => one.Count * one.Leg.Charged);

        internal int Size => Capacitors.Count + Below.Sum(one => one.Leg.Size);
    }

    private Inrush? MakeInrush(PartPlace place, bool hot)
    {
        var worst = Behind(place, least: false, hot);
        var total = worst.Charged + worst.Limited.Sum(one => one.Capacitance);
        if (!(total > 0) || IsCyclic(place.Rail))
        {
            return null;
        }

        var voltage = VoltagesOf(place.Rail).High;
        var gaps = new List<MissingDatum>(voltage.Missing);
        var assumptions = new List<string>(voltage.Assumptions);
        var working = new List<WorkingStep> { voltage.Step("highest steady voltage"), new("capacitance behind it, largest", "sum", "", new Figure(total, "F"), "capacitors and inputs of loads and converters") };
        var coincide = PolicyAt(place.Rail, place.Part.Policy, place.Part).Policy.StartsCoincide;
        var most = InrushAt(place, worst, coincide, least: false, hot, voltage, gaps, assumptions, working);
        var best = gaps.Count == 0 ? most : InrushAt(place, Behind(place, least: true, hot), coincide, least: true, hot, voltage, gaps, assumptions, null);
        if (!voltage.IsKnown)
        {
            (most, best) = (new InrushEnd(double.PositiveInfinity, double.PositiveInfinity), default);
        }

        var share = ShareOf(place, StateOf(hot));
        (most, best) = (new InrushEnd(most.Integral * share.High * share.High, most.Peak * share.High), new InrushEnd(best.Integral * share.Low * share.Low, best.Peak * share.Low));
        if (share.High < 1)
        {
            working.Add(new WorkingStep("largest share of this branch", "", "", new Figure(share.High, ""), "resistances of the branches"));
        }

        return new Inrush(most, best.Integral <= most.Integral ? best : most, voltage, total, [.. Rules.Subject.Distinct(gaps)], [.. assumptions.Distinct()], [.. working]);
    }

    /// <summary>Everything at once, or the capacitor that sends the most when each is charged alone.</summary>
    private InrushEnd InrushAt(PartPlace place, StartLeg behind, bool coincide, bool least, bool hot, Voltage voltage, List<MissingDatum> gaps, List<string> assumptions, List<WorkingStep>? working)
    {
        if (coincide)
        {
            return InrushAt(place, behind, least, hot, voltage, gaps, assumptions, working);
        }

        var largest = default(InrushEnd);
        List<WorkingStep> steps = [];
        foreach (var alone in Alone(behind).Take(MostAlone))
        {
            List<WorkingStep> own = [];
            var one = InrushAt(place, alone, least, hot, voltage, gaps, assumptions, own);
            if (one.Integral > largest.Integral)
            {
                (largest, steps) = (one, own);
            }
        }

        working?.AddRange(steps);
        return largest;
    }

    /// <summary>The same with one capacitor, or one electronic fuse, at a time.</summary>
    private static IEnumerable<StartLeg> Alone(StartLeg leg)
    {
        foreach (var one in leg.Capacitors.OrderByDescending(one => one.Capacitance))
        {
            yield return Stretch([one], []);
        }

        foreach (var limited in leg.Limited)
        {
            yield return new StartLeg { Limited = [limited], Gaps = leg.Gaps };
        }

        foreach (var (below, _) in leg.Below)
        {
            foreach (var one in Alone(below))
            {
                if (!one.IsNothing)
                {
                    yield return Stretch([], [(one, 1)]);
                }
            }
        }

        StartLeg Stretch(List<(double, double, double)> capacitors, List<(StartLeg, int)> below) => new()
        {
            Resistance = leg.Resistance,
            Inductance = leg.Inductance,
            Drop = leg.Drop,
            OneWay = leg.OneWay,
            Gaps = leg.Gaps,
            Capacitors = capacitors,
            Below = below,
        };
    }

    private InrushEnd InrushAt(PartPlace place, StartLeg behind, bool least, bool hot, Voltage voltage, List<MissingDatum> gaps, List<string> assumptions, List<WorkingStep>? working)
    {
        gaps.AddRange(behind.Gaps);
        var series = OwnSeries(place, hot);
        var gate = GateBefore(place, least, gaps);
        var load = LoadsOn(place);
        var free = new InrushEnd(0, 0);
        if (behind.Charged > 0 && gate is null)
        {
            free = new FaultWalk(this, least, StateOf(hot)).Start(place, series, behind, voltage.Value, load, gaps, assumptions, working);
        }

        var limited = new List<(double Capacitance, double Current, double Power)>(behind.Limited);
        if (gate is { } one)
        {
            limited = [(behind.Charged + limited.Sum(leg => leg.Capacitance), one.Current, one.Power)];
        }

        // The sum of currents that flow together: by Minkowski's inequality its integral is at most the square of the sum of the roots, and at least the largest.
        double roots = Math.Sqrt(free.Integral), peaks = free.Peak, largest = free.Integral;
        foreach (var (capacitance, current, power) in limited)
        {
            var leg = Limited(voltage.Value, capacitance, current, power, least ? series.Resistance.High : series.Resistance.Low, least ? [] : load);
            roots += Math.Sqrt(leg.Integral);
            peaks += leg.Peak;
            largest = Math.Max(largest, leg.Integral);
            working?.Add(new WorkingStep("limited start", "I × C V", $"{Figures.Text(current, "A")} × {Figures.Text(capacitance, "F")} × {Figures.Text(voltage.Value, "V")}", new Figure(leg.Integral, "A²s"), "electronic fuse, highest start current"));
        }

        var many = limited.Count + (free.Integral > 0 ? 1 : 0) > 1;
        return new InrushEnd(least && many ? largest : roots * roots, least && many ? Math.Max(free.Peak, limited.Max(leg => double.IsInfinity(leg.Current) ? 0 : leg.Current)) : peaks);
    }

    /// <summary>The start of capacitance through an electronic fuse.</summary>
    private static InrushEnd Limited(double voltage, double capacitance, double current, double power, double resistance, IReadOnlyList<StartLoad> loads)
    {
        if (current <= 0 || capacitance <= 0 || voltage <= 0)
        {
            return default;
        }

        if (double.IsInfinity(current) && double.IsInfinity(power))
        {
            return resistance > 0 && !double.IsInfinity(resistance)
                ? new InrushEnd(Physics.Inrush.Integral(voltage, resistance, capacitance), voltage / resistance)
                : double.IsInfinity(resistance) ? default : new InrushEnd(double.PositiveInfinity, double.PositiveInfinity);
        }

        var ohms = double.IsInfinity(resistance) ? 0 : resistance;
        var start = SwitchedStart.Of(voltage, capacitance, new StartLimits(current, power, ohms), loads);
        if (start is null)
        {
            return default;
        }

        // What stalls the start is another rule's matter: here counts what flows until then.
        var target = voltage * (1 - 1e-6);
        var end = start.Until(target) ?? (start.Stall(target) is { } stall && stall > 0 ? start.Until(stall * (1 - 1e-3)) : null) ?? SwitchedStart.Of(voltage, capacitance, new StartLimits(current, power, ohms))!.Until(target);
        return end is { } state ? new InrushEnd(state.Integral, start.PeakCurrent) : default;
    }

    /// <summary>The electronic fuse that bounds the start of everything behind a part: in the same path, or above it where nothing that holds charge lies between.</summary>
    private (double Current, double Power)? GateBefore(PartPlace place, bool least, List<MissingDatum> gaps)
    {
        (double Current, double Power)? result = null;
        var (rail, feed) = (place.Rail, place.Feed);
        for (var step = 0; step <= Rails.Length; step++)
        {
            foreach (var part in Parts(rail))
            {
                if (ReferenceEquals(part.Feed, feed) && part.Branches.IsEmpty && part.Part is ElectronicFuse electronic)
                {
                    var one = StartOf(electronic, part.Label, least, gaps);
                    result = result is { } before ? (Math.Min(before.Current, one.Current), Math.Min(before.Power, one.Power)) : one;
                }
            }

            var all = Suppliers(rail);
            if ((feed?.From ?? (all.Length == 1 ? all[0].From : null)) is not Rail above || IsCyclic(above) || Children(above).Skip(1).Any() || CapacitorsOf(above, least: false).Count > 0)
            {
                break;
            }

            (rail, feed) = (above, null);
        }

        return result;
    }

    /// <summary>The most (or least) that an electronic fuse lets flow while it starts; what it does not state bounds nothing.</summary>
    private static (double Current, double Power) StartOf(ElectronicFuse electronic, string label, bool least, List<MissingDatum> gaps)
    {
        var power = electronic.StartPower is { } watts ? (double)watts.Max.Watts : double.PositiveInfinity;
        if (electronic.StartCurrent is { } current)
        {
            return (current.Max.Amperes, power);
        }

        gaps.Add(new MissingDatum(new DatumPlace(electronic, nameof(ElectronicFuse.StartCurrent)), label));
        return (least ? 0 : double.PositiveInfinity, power);
    }

    /// <summary>The whole series stretch in which a part stands, its own resistance included.</summary>
    private FaultSeries OwnSeries(PartPlace place, bool hot)
    {
        var series = new FaultSeries();
        if (place.Feed is { } feed)
        {
            series.Add(ColdSeries(place.Rail, feed, 0, Items(feed.Path).Length, -1, limiters: StateOf(hot)));
        }

        series.Add(ColdSeries(place.Rail, null, 0, Items(place.Rail.Path).Length, -1, limiters: StateOf(hot)));
        return series;
    }

    /// <summary>Loads that draw while the capacitors behind a part are charged: those whose EnablesAt says so.</summary>
    private List<StartLoad> LoadsOn(PartPlace place)
    {
        var result = new List<StartLoad>();
        foreach (var (load, _) in LoadsBehind(place))
        {
            if (load.EnablesAt is { AfterPowerGood: false } enables)
            {
                result.Add(StartLoadOf(load, enables));
            }
        }

        return result;
    }

    /// <summary>The largest demand of a load from the voltage on at which it is enabled.</summary>
    internal static StartLoad StartLoadOf(Load load, EnablesAt enables) => new(
        Finite(load.Current?.Max.Amperes ?? 0),
        load.Resistance is { } ohms && ohms.Min.Ohms > 0 ? 1 / ohms.Min.Ohms : 0,
        Finite((double?)load.Power?.Max.Watts ?? 0),
        Finite(enables.Threshold?.Volts ?? 0));

    /// <summary>The loads behind a part, on its rail and on those below without a converter between, each with its label.</summary>
    internal List<(Load Load, string Label)> LoadsBehind(PartPlace place)
    {
        var result = new List<(Load, string)>();
        foreach (var rail in WithBelow(place.Rail))
        {
            var loads = Items(rail.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                if (loads[i] is { } load)
                {
                    result.Add((load, Label(load, rail, i)));
                }
            }
        }

        return result;
    }

    /// <summary>The part of the current that flows in the branch of a part in parallel groups, by cold resistances.</summary>
    private Range ShareOf(PartPlace place, Limiters limiters)
    {
        double low = 1, high = 1;
        foreach (var (group, branch) in place.Branches)
        {
            var all = Items(group.Branches).Select(elements =>
            {
                var sum = new FaultSeries();
                foreach (var element in Items(elements))
                {
                    if (element is not null)
                    {
                        sum.Add(ColdElement(place.Rail, element, "", loop: true, limiters));
                    }
                }

                return sum.Resistance;
            }).ToList();
            double Share(double own, Func<Range, double> others) => own <= 0 ? 1 : 1 / (1 + (own * all.Where((_, b) => b != branch).Sum(one => 1 / Math.Max(others(one), 1e-9))));
            high *= Share(all[branch].Low, one => one.High);
            low *= double.IsInfinity(all[branch].High) ? 0 : Share(all[branch].High, one => one.Low);
        }

        return new Range(low, high);
    }

    /// <summary>What is behind a part: the capacitors at the end of its rail and the rails below.</summary>
    private StartLeg Behind(PartPlace place, bool least, bool hot)
    {
        var leg = new StartLeg();
        Fill(leg, place.Rail, least, hot);
        return leg;
    }

    private void Fill(StartLeg leg, Rail rail, bool least, bool hot)
    {
        foreach (var (capacitance, _, esr, esl, missing) in CapacitorsOf(rail, least))
        {
            leg.Gaps.AddRange(missing);
            if (capacitance > 0 && !double.IsInfinity(esr) && !(least && double.IsInfinity(capacitance)))
            {
                leg.Capacitors.Add((double.IsInfinity(capacitance) ? 1e3 : capacitance, esr, esl));
            }
        }

        var groups = new List<(StartLeg Leg, int Count)>();
        foreach (var child in Children(rail))
        {
            var all = Suppliers(child);
            for (var k = 0; k < all.Length; k++)
            {
                if (!ReferenceEquals(all[k].From, rail))
                {
                    continue;
                }

                var below = StartLegOf(child, k, least, hot);
                leg.Limited.AddRange(below.Limited);
                leg.Gaps.AddRange(below.Gaps);
                if (below.IsNothing || below.Open)
                {
                    continue;
                }

                var alike = groups.FindIndex(one => one.Leg.Key == below.Key);
                if (alike >= 0)
                {
                    groups[alike] = (groups[alike].Leg, groups[alike].Count + 1);
                }
                else
                {
                    groups.Add((below, 1));
                }
            }
        }

        if (leg.Limited.Count > 1)
        {
            leg.Limited = [.. leg.Limited.GroupBy(one => (one.Current, one.Power)).Select(group => (group.Sum(one => one.Capacitance), group.Key.Current * group.Count(), group.Key.Power * group.Count()))];
        }

        if (groups.Count > MostBranches)
        {
            groups = [.. groups.OrderByDescending(one => one.Count * one.Leg.Charged)];
            var rest = groups.Skip(MostBranches).ToList();
            groups = [.. groups.Take(MostBranches)];
            if (!least)
            {
                groups.Add((new StartLeg
                {
                    Resistance = 1 / rest.Sum(one => one.Count / Math.Max(one.Leg.Resistance, 1e-6)),
                    Capacitors = [(rest.Sum(one => one.Count * one.Leg.Charged), 0, 0)],
                    Key = "rest",
                }, 1));
            }
        }

        leg.Below = groups;
    }

    /// <summary>A rail as it is when its feed is closed: stretch, capacitors, and what is below. From the leaves up, so that a deep board is no deep recursion.</summary>
    private StartLeg StartLegOf(Rail rail, int supplier, bool least, bool hot)
    {
        if (!startLegs.TryGetValue((indexOf[rail], supplier, least, hot), out var known))
        {
            foreach (var i in downstream.AsEnumerable().Reverse())
            {
                for (var k = 0; k < suppliers[i].Length; k++)
                {
                    startLegs[(i, k, least, hot)] = MakeStartLeg(Rails[i], k, least, hot);
                }
            }

            known = startLegs.TryGetValue((indexOf[rail], supplier, least, hot), out var made) ? made : new StartLeg { Open = true };
        }

        return known;
    }

    private StartLeg MakeStartLeg(Rail rail, int supplier, bool least, bool hot)
    {
        var leg = new StartLeg();
        Fill(leg, rail, least, hot);
        var feed = suppliers[indexOf[rail]][supplier].Feed;
        foreach (var part in Parts(rail))
        {
            if ((part.Feed is null || ReferenceEquals(part.Feed, feed)) && part.Branches.IsEmpty && part.Part is ElectronicFuse electronic)
            {
                var (current, power) = StartOf(electronic, part.Label, least, leg.Gaps);
                var all = leg.Charged + leg.Limited.Sum(one => one.Capacitance);
                leg.Limited = all > 0 ? [(all, Math.Min(current, leg.Charged > 0 || leg.Limited.Count == 0 ? current : leg.Limited.Sum(one => one.Current)), power)] : [];
                (leg.Capacitors, leg.Below) = ([], []);
            }
        }

        if (leg.IsNothing)
        {
            // Gaps of what holds no charge decide nothing.
            leg.Gaps = leg.Limited.Count > 0 ? leg.Gaps : [];
            return leg;
        }

        var series = ColdSeries(rail, null, 0, Items(rail.Path).Length, -1, limiters: StateOf(hot));
        if (feed is not null)
        {
            series.Add(ColdSeries(rail, feed, 0, Items(feed.Path).Length, -1, limiters: StateOf(hot)));
        }

        leg.Gaps.AddRange(series.Gaps);
        leg.Resistance = least ? series.Resistance.High : series.Resistance.Low;
        leg.Inductance = least ? (double.IsInfinity(series.Inductance.High) ? 1 : series.Inductance.High) : series.Inductance.Low;
        (leg.Drop, leg.OneWay, leg.Open) = (series.Drop, series.BlocksReverse, double.IsInfinity(leg.Resistance));
        if (leg.Size > MostParts)
        {
            leg.Capacitors = least ? [] : [(leg.Charged, 0, 0)];
            leg.Below = [];
        }

        leg.Key = FormattableString.Invariant($"{leg.Resistance:R}/{leg.Inductance:R}/{leg.Drop:R}/{leg.OneWay}")
            + string.Concat(leg.Capacitors.Select(one => FormattableString.Invariant($"|{one.Capacitance:R},{one.Esr:R},{one.Esl:R}")))
            + string.Concat(leg.Below.Select(one => $"[{one.Count}x{one.Leg.Key}]"));
        if (leg.Key.Length > 64)
        {
            if (!legKeys.TryGetValue(leg.Key, out var key))
            {
                legKeys.Add(leg.Key, key = "k" + legKeys.Count.ToString(System.Globalization.CultureInfo.InvariantCulture));
            }

            leg.Key = key;
        }

        return leg;
    }

    private sealed partial class FaultWalk
    {
        /// <summary>The current through a stretch whose far end holds empty capacitors, until they are charged.</summary>
        internal InrushEnd Start(
            PartPlace part, FaultSeries series, StartLeg behind, double voltage, List<StartLoad> loads, List<MissingDatum> missing, List<string> assumed, List<WorkingStep>? working)
        {
            var rail = part.Rail;
            Note(series);
            var resistance = least ? series.Resistance.High : series.Resistance.Low;
            if (double.IsInfinity(resistance))
            {
                missing.AddRange(gaps);
                return default;
            }

            int start = circuit.AddNode(), end = circuit.AddNode();
            var through = circuit.AddBranch(
                start, end, Math.Max(resistance, LeastResistance), Math.Max(least ? Bounded(series.Inductance.High) : series.Inductance.Low, LeastInductance), -series.Drop, oneWay: series.BlocksReverse);
            nodes.Add(rail, end);
            Charge(end, behind, 1);
            if (part.Feed is null)
            {
                Start(rail, start, Route.Of(series, least));
            }
            else
            {
                joints.Add(rail, end);
                Above(part.Feed.From, start, Route.Of(series, least), rail);
            }

            while (pending.Count > 0)
            {
                pending.Dequeue()();
            }

            missing.AddRange(gaps);
            if (circuit.HasOneWay)
            {
                // Only where nothing can swing back does the inductance change the integral.
                missing.AddRange(slowGaps);
            }

            assumed.AddRange(assumptions);
            if (unbounded)
            {
                return least ? default : new InrushEnd(double.PositiveInfinity, double.PositiveInfinity);
            }

            var fingerprint = circuit.Fingerprint();
            if (!network.solvedFaults.TryGetValue(fingerprint, out var solved))
            {
                network.solvedFaults.Add(fingerprint, solved = circuit.Solve());
            }

            if (solved is not { } currents)
            {
                return least ? default : new InrushEnd(double.PositiveInfinity, double.PositiveInfinity);
            }

            var current = currents[through];
            var peak = current.PeakCurrent;
            var level = current.Settled;
            double integral;
            if (level > 1e-6 * peak)
            {
                // A source at its limit goes on in the circuit for ever; in truth until the capacitors are charged.
                integral = UntilCharged(current, level, behind.Charged, voltage, resistance, loads);
                working?.Add(new WorkingStep("inrush at the limit of the source", "∫ i² dt until charged", "", new Figure(integral, "A²s"), $"limit {Figures.Text(level, "A")}"));
            }
            else
            {
                var last = current.Pieces[current.Pieces.Length - 1];
                var rest = Math.Abs(last.Initial) + last.Modes.Sum(mode => System.Numerics.Complex.Abs(mode.Factor));
                integral = current.SquareIntegral(last.Start) + (rest > 1e-6 * peak ? last.SquareIntegral(double.PositiveInfinity) : 0);
                var loop = behind.Charged * voltage * voltage / (2 * integral);
                working?.Add(new WorkingStep("loop resistance, least", "C V² / (2 ∫ i² dt)", "", new Figure(loop, "Ω"), "sources, path and return cold; series resistance of the capacitors"));
                integral += least ? 0 : WithLoads(behind.Charged, voltage, loads);
            }

            return new InrushEnd(integral, peak);
        }

        /// <summary>Empty capacitors on a node, and the rails below it.</summary>
        private void Charge(int node, StartLeg leg, int count)
        {
            foreach (var (capacitance, esr, esl) in leg.Capacitors)
            {
                circuit.AddCapacitor(0, node, capacitance * count, 0, Math.Max(esr, LeastSource) / count, Math.Max(esl, LeastInductance) / count);
            }

            foreach (var (below, more) in leg.Below)
            {
                var end = circuit.AddNode();
                circuit.AddBranch(
                    node, end, Math.Max(below.Resistance, LeastResistance) / (count * more), Math.Max(below.Inductance, LeastInductance) / (count * more), -below.Drop, oneWay: below.OneWay);
                Charge(end, below, count * more);
            }
        }

        /// <summary>Loads that are on add twice their current times the charge that flows meanwhile, what they draw for ever left out.</summary>
        private static double WithLoads(double capacitance, double voltage, List<StartLoad> loads) =>
            loads.Where(load => load.From < voltage).Sum(load => 2 * capacitance * (voltage - load.From) * (load.Current + (load.Conductance * voltage) + (load.Power > 0 ? load.Power / Math.Max(load.From, voltage / 10) : 0)));

        private static double UntilCharged(Waveform current, double level, double capacitance, double voltage, double resistance, List<StartLoad> loads)
        {
            var charging = new Charging(current, capacitance, 0);
            var pieces = current.Pieces;
            var longest = pieces[pieces.Length - 1].Start + (100 * capacitance * voltage / level);
            var charged = current.SquareIntegral(charging.TimeToVoltage(voltage, longest) ?? longest);

            // Near the end the resistance and no longer the limit decides: half of what the limit would have sent.
            charged -= capacitance * Math.Min(resistance, voltage / level) * level * level / 2;
            var on = loads.Where(load => load.From < voltage).Sum(load => load.Current + (load.Conductance * voltage) + (load.Power > 0 ? load.Power / Math.Max(load.From, voltage / 10) : 0));
            return on > 0 && on < level ? charged * level / (level - on) : charged;
        }
    }
}
