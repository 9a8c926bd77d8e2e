using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>The smallest fault: lowest voltage, one feed, lowest limit, hot copper. And what surely opens a device.</content>
public sealed partial class Network
{
    /// <summary>How many ways from a place up to its sources are followed; beyond, nothing bounds the smallest fault.</summary>
    private const int MostRoutes = 256;

    /// <summary>Bounds of the multiple of the rated current that surely opens a fuse of which nothing is stated. IEC 60127-2 (from memory): 2.1.</summary>
    private static readonly Range SureMultiple = new(1, 2.1);

    /// <summary>How many times its stated hold and trip current a resettable fuse has at most in the cold, where no derating is stated. Common practice, no source.</summary>
    private const double ColdFactor = 2;

    private readonly Dictionary<(Rail Rail, int Supplier), (Range Resistance, double Drop, ImmutableArray<(MissingDatum Datum, bool Unbounded)> Gaps)> hotPaths = [];

    /// <summary>The settled current of the smallest fault at a place: bounds, and why it is no larger.</summary>
    /// <param name="Current">Bounds of the current (A).</param>
    /// <param name="BySource">Whether the limit of the source decides rather than resistance.</param>
    /// <param name="Gaps">The data that were bounded and matter: those without any bound alone, if there are any.</param>
    /// <param name="Working">The route that decides.</param>
    internal sealed record SmallFault(Range Current, bool BySource, ImmutableArray<MissingDatum> Gaps, ImmutableArray<WorkingStep> Working)
    {
        /// <summary>Whether the path surely lets so much through that every source which latches off does so.</summary>
        internal bool Latches { get; init; }
    }

    /// <summary>The smallest fault behind an element of a rail's own path (supplier −1) or of one of its feeds, with one feed.</summary>
    /// <param name="rail">The rail.</param>
    /// <param name="supplier">The feed; −1: the rail's own path.</param>
    /// <param name="behind">The index of the element.</param>
    /// <param name="through">A device through which the current flows: feeds that do not reach the fault through it are no business of its.</param>
    internal SmallFault SmallestFault(Rail rail, int supplier, int behind, PartPlace? through = null)
    {
        var policy = PolicyAt(rail).Policy;
        var end = (Resistance: Range.Exactly(policy.FaultResistance.Ohms), Drop: policy.ArcVoltage.Volts, Gaps: ImmutableArray<(MissingDatum Datum, bool Unbounded)>.Empty);
        var best = default(SmallFault);
        double low = double.PositiveInfinity, high = double.PositiveInfinity;
        var gaps = new List<MissingDatum>();
        var latches = true;
        var routes = 0;
        var pending = new Stack<(Rail Rail, int Supplier, int Behind, (Range Resistance, double Drop, ImmutableArray<(MissingDatum Datum, bool Unbounded)> Gaps) Sum, bool Passed)>();
        pending.Push((rail, supplier, behind, end, through is null));
        while (pending.Count > 0)
        {
            var (here, feed, upTo, sum, passed) = pending.Pop();
            passed |= through is not null && ReferenceEquals(here, through.Rail) && feed == through.Supplier;
            var stretch = Hot(here, feed, upTo);
            sum = (new Range(sum.Resistance.Low + stretch.Resistance.Low, sum.Resistance.High + stretch.Resistance.High), sum.Drop + stretch.Drop, sum.Gaps.AddRange(stretch.Gaps));
            var all = Suppliers(here);
            if (IsCyclic(here) || ++routes > MostRoutes)
            {
                return new SmallFault(new Range(0, double.PositiveInfinity), false, [new MissingDatum(new DatumPlace(here, nameof(Rail.From)), Label(here))], []);
            }

            for (var k = 0; k < all.Length; k++)
            {
                if (feed >= 0 && k != feed)
                {
                    continue;
                }

                if (feed < 0 && all[k].Feed is not null)
                {
                    pending.Push((here, k, int.MaxValue, sum, passed));
                }
                else if (all[k].From is Rail above)
                {
                    pending.Push((above, -1, int.MaxValue, sum, passed));
                }
                else if (passed)
                {
                    var one = FromSource(all[k].From, here, sum);
                    gaps.AddRange(one.Gaps);
                    latches &= one.Latches;
                    low = Math.Min(low, one.Current.Low);
                    high = Math.Min(high, one.Current.High);
                    best = best is null || one.Current.Low < best.Current.Low || (one.Current.Low == best.Current.Low && one.Current.High < best.Current.High) ? one : best;
                }
            }
        }

        return best is null
            ? new SmallFault(new Range(0, double.PositiveInfinity), false, [new MissingDatum(new DatumPlace(rail, nameof(Rail.From)), Label(rail))], [])
            : best with { Current = new Range(low, high), Gaps = [.. gaps.Distinct()], Latches = latches };
    }

    /// <summary>Resistance and drop of a path up to an element, hot, with its return; the whole of it beyond the last.</summary>
    private (Range Resistance, double Drop, ImmutableArray<(MissingDatum Datum, bool Unbounded)> Gaps) Hot(Rail rail, int supplier, int behind)
    {
        var feed = supplier < 0 ? null : Suppliers(rail)[supplier].Feed;
        var path = Items(supplier < 0 ? rail.Path : feed?.Path ?? []);
        if (behind >= path.Length - 1)
        {
            if (!hotPaths.TryGetValue((rail, supplier), out var known))
            {
                hotPaths.Add((rail, supplier), known = supplier >= 0 && feed is null ? (default, 0, []) : Hot(StretchOf(rail, feed), rail, supplier));
            }

            return known;
        }

        var stretch = new Stretch();
        object owner = (object?)feed ?? rail;
        if (Unworkable(owner, Label(rail), nameof(Rail.Path)) is { } hidden)
        {
            stretch.Add(hidden, unbounded: true);
        }

        var back = supplier < 0 ? rail.Return : feed?.Return;
        for (var i = 0; i <= behind; i++)
        {
            if (path[i] is { } element)
            {
                var label = Label(element, rail, i);
                AddElement(stretch, rail, element, label);
                if (back is { IsMirrored: true } && IsConductor(element))
                {
                    AddElement(stretch, rail, ConductorsOf(element), label);
                }
            }
        }

        if (back is null && behind >= 0)
        {
            stretch.Add(new MissingDatum(new DatumPlace(owner, nameof(Rail.Return)), Label(rail)), unbounded: true);
        }
        else if (back is { IsMirrored: false } && behind >= 0)
        {
            // How much of the return lies before the place is not known; all of it gives the least current.
            if (back.Resistance is { } stated)
            {
                stretch.AddResistance(Finite(stated.Max.Ohms));
            }

            var elements = Items(back.Elements);
            for (var i = 0; i < elements.Length; i++)
            {
                if (elements[i] is { } element)
                {
                    AddElement(stretch, rail, element, Label(element, rail, i));
                }
            }
        }

        return Hot(stretch, rail, supplier);
    }

    private (Range Resistance, double Drop, ImmutableArray<(MissingDatum Datum, bool Unbounded)> Gaps) Hot(Stretch stretch, Rail rail, int supplier)
    {
        // At the running temperature where the current is known, else at the limit.
        var flow = supplier < 0 ? CurrentOf(rail) : Operating(false).Feeds[indexOf[rail]][supplier];
        var current = flow.Reason == FlowReason.Solved ? flow.High : double.PositiveInfinity;
        var (most, drop) = stretch.At(true, double.IsInfinity(current) ? 1e12 : current);
        var (least, _) = stretch.At(false, double.IsInfinity(current) ? 1e12 : current);
        return (new Range(Math.Min(least, most), stretch.Unbounded ? double.PositiveInfinity : most), drop, [.. stretch.Gaps]);
    }

    private SmallFault FromSource(Source? source, Rail rail, (Range Resistance, double Drop, ImmutableArray<(MissingDatum Datum, bool Unbounded)> Gaps) route)
    {
        var gaps = route.Gaps.ToList();
        if (source is null)
        {
            return new SmallFault(new Range(0, double.PositiveInfinity), false, [new MissingDatum(new DatumPlace(rail, nameof(Rail.From)), Label(rail))], []);
        }

        var label = Label(source);
        var voltages = VoltagesOf(source, new DatumPlace(rail, nameof(Rail.From)), Label(rail));
        if (!voltages.Low.IsKnown)
        {
            return new SmallFault(new Range(0, double.PositiveInfinity), false, voltages.Low.Missing, []);
        }

        var inside = Range.Exactly(0);
        var level = Range.Exactly(double.PositiveInfinity);
        var limit = source switch { Supply supply => supply.CurrentLimit, Converter converter => converter.CurrentLimit, _ => null };
        switch (source)
        {
            case Supply { ProspectiveFault.Current: { } stated } when stated.Min.Amperes > 0 && voltages.High.IsKnown:
                inside = Range.Exactly(voltages.High.Value / stated.Min.Amperes);
                limit = null;
                break;
            case Supply supply:
                if (supply.SourceResistance is { } ohms)
                {
                    inside = Range.Exactly(Finite(ohms.Max.Ohms));
                }
                else if (limit?.Level is null)
                {
                    inside = new Range(0, double.PositiveInfinity);
                    gaps.Add((new MissingDatum(new DatumPlace(supply, nameof(Supply.SourceResistance)), label), true));
                }

                level = SmallestLevel(supply, label, limit, gaps);
                break;
            case Converter converter:
                level = SmallestLevel(converter, label, limit, gaps);
                break;
            case Battery battery:
                if (battery.InternalResistance is { } cells)
                {
                    inside = Range.Exactly(Finite(cells.Max.Ohms / Math.Max(1, battery.Strings ?? 1)));
                }
                else
                {
                    inside = new Range(0, double.PositiveInfinity);
                    gaps.Add((new MissingDatum(new DatumPlace(battery, nameof(Battery.InternalResistance)), label), true));
                }

                break;
        }

        var driving = Math.Max(0, voltages.Low.Value - route.Drop);
        var byResistance = new Range(Divide(driving, route.Resistance.High + inside.High), Divide(driving, route.Resistance.Low + inside.Low));
        var current = new Range(Math.Min(byResistance.Low, level.Low), Math.Min(byResistance.High, level.High));
        var shown = double.IsInfinity(route.Resistance.High + inside.High) ? route.Resistance.Low + inside.Low : route.Resistance.High + inside.High;
        var working = ImmutableArray.CreateBuilder<WorkingStep>();
        working.Add(voltages.Low.Step("lowest voltage"));
        working.Add(new WorkingStep("loop resistance, hot", "", "", new Figure(shown, "Ω"), "source, path and return, devices included"));
        if (!double.IsInfinity(level.High))
        {
            working.Add(new WorkingStep($"lowest limit of '{label}'", "", "", new Figure(level.High, "A"), "data of the source", new DatumPlace(limit!, nameof(CurrentLimit.Level))));
        }

        working.Add(new WorkingStep("smallest fault current", double.IsInfinity(level.High) ? "V / R" : "the smaller of V / R and the limit",
            $"{Figures.Text(driving, "V")} / {Figures.Text(shown, "Ω")}{(double.IsInfinity(level.High) ? "" : $", at most {Figures.Text(level.High, "A")},")}", new Figure(current.IsExact ? current.Low : current.High, "A")));
        var telling = current.IsExact ? [] : gaps.Any(gap => gap.Unbounded) ? gaps.Where(gap => gap.Unbounded) : gaps;
        return new SmallFault(current, level.High < byResistance.High, [.. telling.Select(gap => gap.Datum)], working.ToImmutable())
        {
            Latches = limit?.Level is { } trips && byResistance.Low >= trips.Max.Amperes,
        };

        static double Divide(double volts, double ohms) => ohms <= 0 ? double.PositiveInfinity : double.IsInfinity(ohms) ? 0 : volts / ohms;
    }

    /// <summary>What a source gives for ever at its lowest limit. Without a limit stated it is unknown.</summary>
    private Range SmallestLevel(Source source, string label, CurrentLimit? limit, List<(MissingDatum Datum, bool Unbounded)> gaps)
    {
        if (limit is null)
        {
            gaps.Add((new MissingDatum(new DatumPlace(source, nameof(Supply.CurrentLimit)), label), true));
            return new Range(0, double.PositiveInfinity);
        }

        if (limit.Level is not { } level)
        {
            gaps.Add((new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.Level)), label), true));
            return new Range(0, double.PositiveInfinity);
        }

        var least = level.Min.Amperes;
        switch (limit.Style)
        {
            case CurrentLimitStyle.Foldback when limit.FoldbackCurrent is { } folded:
                return Range.Exactly(Math.Min(least, folded.Min.Amperes));
            case CurrentLimitStyle.Foldback:
                gaps.Add((new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.FoldbackCurrent)), label), true));
                return new Range(0, least);
            case CurrentLimitStyle.Hiccup when limit is { OnTime: { } on, OffTime: { } off } && on.Seconds > 0:
                return Range.Exactly(LimitedSource.HiccupEffective(least, on.Seconds, off.Seconds));
            case CurrentLimitStyle.Hiccup:
                gaps.Add((new MissingDatum(new DatumPlace(limit, limit.OnTime is null ? nameof(CurrentLimit.OnTime) : nameof(CurrentLimit.OffTime)), label), true));
                return new Range(0, least);
            default:
                return Range.Exactly(least);
        }
    }

    /// <summary>
    /// The current that surely opens a device: fuse: multiple × rated current, for a partial range not below its minimum breaking current; circuit breaker: I₂; resettable fuse:
    /// trip current in the coldest air; electronic fuse: highest trip level. Null: no such device.
    /// </summary>
    /// <param name="place">The device in its place.</param>
    /// <param name="breaks">Whether it must break the current too; without, the current at which a partial-range fuse begins to melt for certain.</param>
    internal (Range Current, ImmutableArray<MissingDatum> Missing, WorkingStep Step)? SureOpening(PartPlace place, bool breaks = true)
    {
        var part = place.Part;
        switch (part)
        {
            case Fuse fuse:
                {
                    if (fuse.RatedCurrent?.Amperes is not { } rated)
                    {
                        return Unknown(nameof(Fuse.RatedCurrent));
                    }

                    var missing = ImmutableArray<MissingDatum>.Empty;
                    Range multiple;
                    string source;
                    var drawn = Items(fuse.Curve).Where(point => point is { MaximumClearing: not null }).Select(point => point.Current.Amperes).DefaultIfEmpty(double.NaN).Min();
                    if (!double.IsNaN(drawn))
                    {
                        (multiple, source) = (Range.Exactly(drawn / rated), "least current of the curve's clearing edge");
                    }
                    else if (fuse.Characteristic is { } family && StandardGates.SureOpeningMultiple(family, rated) is { } sure)
                    {
                        (multiple, source) = (Range.Exactly(sure), "standard family");
                    }
                    else if (fuse.RatingBasis == RatingBasis.CarriesThreeQuarters)
                    {
                        (multiple, source) = (Range.Exactly(1.35), "rating basis three quarters: UL 248-14, 135 % (by the trade)");
                    }
                    else
                    {
                        (multiple, source) = (SureMultiple, "no curve and no family: 1 to 2.1 (common practice)");
                        missing = [new MissingDatum(new DatumPlace(fuse, nameof(Fuse.Characteristic)), place.Label)];
                    }

                    var current = new Range(multiple.Low * rated, multiple.High * rated);
                    if (!breaks)
                    {
                        return (current, missing, new WorkingStep("current that surely melts it", "", "", new Figure(current.High, "A"), source));
                    }

                    if (fuse.MinimumBreakingCurrent is { } least)
                    {
                        current = new Range(Math.Max(current.Low, least.Amperes), Math.Max(current.High, least.Amperes));
                    }
                    else if (fuse.BreakingRange == BreakingRange.Partial)
                    {
                        current = current with { High = double.PositiveInfinity };
                        missing = missing.Add(new MissingDatum(new DatumPlace(fuse, nameof(Fuse.MinimumBreakingCurrent)), place.Label));
                    }

                    return (current, missing, new WorkingStep("current that surely opens it", "multiple × rated current", $"{(multiple.IsExact ? Figures.Digits(multiple.High) : "1 to 2.1")} × {Figures.Text(rated, "A")}", new Figure(double.IsInfinity(current.High) ? current.Low : current.High, "A"), source, new DatumPlace(fuse, nameof(Fuse.RatedCurrent))));
                }

            case CircuitBreaker breaker:
                {
                    if (breaker is { MagneticTrip: { } magnetic, ConventionalTripMultiple: null, RatedCurrent: null })
                    {
                        var trips = magnetic.Max.Amperes * (breaker.MagneticTripDcFactor ?? 1);
                        return (Range.Exactly(trips), [], new WorkingStep("current that surely trips it", "magnetic level × DC factor", "", new Figure(trips, "A"), "data of the part", new DatumPlace(breaker, nameof(CircuitBreaker.MagneticTrip))));
                    }

                    if (breaker.RatedCurrent?.Amperes is not { } rated)
                    {
                        return Unknown(nameof(CircuitBreaker.RatedCurrent));
                    }

                    var multiple = breaker.ConventionalTripMultiple ?? 1.45;
                    return (Range.Exactly(multiple * rated), [], new WorkingStep(
                        "current that surely trips it", "I₂ = multiple × rated current", $"{Figures.Digits(multiple)} × {Figures.Text(rated, "A")}", new Figure(multiple * rated, "A"),
                        breaker.ConventionalTripMultiple is null ? "IEC 60898-1: 1.45 (from memory)" : "data of the part", new DatumPlace(breaker, nameof(CircuitBreaker.ConventionalTripMultiple))));
                }

            case ResettableFuse resettable:
                {
                    if (resettable.TripCurrent?.Amperes is not { } trip)
                    {
                        return Unknown(nameof(ResettableFuse.TripCurrent));
                    }

                    var points = Items(resettable.TripDerating.IsDefaultOrEmpty ? resettable.Derating : resettable.TripDerating)
                        .Where(point => point is not null).Select(point => (point.Ambient.DegreesCelsius, point.Factor)).ToArray();
                    var coldest = AirAt(place.Rail, part.Surroundings, part).Ambient?.Low;
                    if (points.Length == 0 || coldest is not { } celsius)
                    {
                        return (new Range(trip, ColdFactor * trip), [new MissingDatum(new DatumPlace(resettable, nameof(ResettableFuse.TripDerating)), place.Label)], new WorkingStep("trip current", "", "", new Figure(trip, "A"), "data of the part"));
                    }

                    var factor = Physics.Derating.Factor(points, celsius).High;
                    return (Range.Exactly(trip * factor), [], new WorkingStep("trip current in the coldest air", "trip current × factor", $"{Figures.Text(trip, "A")} × {Figures.Digits(factor)}", new Figure(trip * factor, "A"), "data of the part", new DatumPlace(resettable, nameof(ResettableFuse.TripCurrent))));
                }

            case ElectronicFuse electronic:
                return electronic.TripLevel is { } tripLevel
                    ? (Range.Exactly(tripLevel.Max.Amperes), [], new WorkingStep("highest trip level", "", "", new Figure(tripLevel.Max.Amperes, "A"), "data of the part", new DatumPlace(electronic, nameof(ElectronicFuse.TripLevel))))
                    : Unknown(nameof(ElectronicFuse.TripLevel));
            default:
                return null;
        }

        (Range, ImmutableArray<MissingDatum>, WorkingStep)? Unknown(string datum) =>
            (new Range(0, double.PositiveInfinity), [new MissingDatum(new DatumPlace(part, datum), place.Label)], new WorkingStep("current that surely opens it", "", "", new Figure(double.NaN, "A")));
    }

    /// <summary>
    /// The largest current that all sources of a rail together can give for longer than the conventional time, by their own limits: their levels, 0 after latch-off. Infinite where one has no limit that counts.
    /// </summary>
    /// <param name="rail">The rail.</param>
    /// <param name="policy">Whether limits made by firmware count.</param>
    /// <param name="latches">Whether what flows surely makes the sources latch off; a smaller current flows on.</param>
    /// <returns>The current, and whether what makes a limit is not stated.</returns>
    internal (double Limit, bool IsUnstated) SustainedLimit(Rail rail, DesignPolicy policy, bool latches)
    {
        double total = 0;
        var isUnstated = false;
        var seen = new HashSet<Source>(ByReference.Instance);
        var pending = new Stack<Source>();
        pending.Push(rail);
        while (pending.Count > 0)
        {
            var source = pending.Pop();
            if (!seen.Add(source))
            {
                continue;
            }

            if (source is Rail above)
            {
                if (IsCyclic(above))
                {
                    return (double.PositiveInfinity, false);
                }

                foreach (var supplying in Suppliers(above))
                {
                    if (supplying.From is null)
                    {
                        return (double.PositiveInfinity, false);
                    }

                    pending.Push(supplying.From);
                }

                continue;
            }

            var (effective, unstated) = SustainedLimitOf(source, policy, latches);
            isUnstated |= unstated;
            total += effective;
        }

        return (total, isUnstated);
    }

    /// <summary>The same of one source.</summary>
    internal (double Limit, bool IsUnstated) SustainedLimitOf(Source source, DesignPolicy policy, bool latches)
    {
        var limit = source switch { Supply supply => supply.CurrentLimit, Converter converter => converter.CurrentLimit, _ => null };
        var effective = source is Supply { ProspectiveFault: not null } || limit?.Level is not { } level || (limit.LimitedBy == LimitedBy.Firmware && !policy.CreditFirmwareLimits) || IsUnknown(source, nameof(Supply.CurrentLimit))
            ? double.PositiveInfinity
            : limit.Style switch
            {
                CurrentLimitStyle.LatchOff when latches => 0,
                CurrentLimitStyle.Foldback when limit.FoldbackCurrent is { } folded => Math.Max(level.Max.Amperes, folded.Max.Amperes),
                CurrentLimitStyle.Hiccup when limit is { OnTime: { } on, OffTime: { } off } && on.Seconds > 0 => LimitedSource.HiccupEffective(level.Max.Amperes, on.Seconds, off.Seconds),
                _ => level.Max.Amperes,
            };
        return (effective, limit is { LimitedBy: null });
    }

    /// <summary>
    /// The Joule integral (A²s) that the capacitors above a part send into a fault at a place below it, each by itself: C V²/(2 R) at the lowest voltage, least capacitance, hot
    /// copper. Only along single feeds; 0 where a resistance is not known.
    /// </summary>
    internal double StoredIntegral(PartPlace part, Rail rail, int supplier, int behind)
    {
        var resistance = 0.0;
        double total = 0;
        var (here, feed, upTo) = (rail, supplier, behind);
        var below = true;
        for (var step = 0; step < MostRoutes && !IsCyclic(here); step++)
        {
            resistance += Hot(here, feed, upTo).Resistance.High;
            below &= !(ReferenceEquals(here, part.Rail) && feed == part.Supplier);
            var all = Suppliers(here);
            var index = feed >= 0 ? feed : all.Length == 1 ? 0 : -1;
            if (index < 0 || double.IsInfinity(resistance))
            {
                break;
            }

            if (feed < 0 && all[index].Feed is not null)
            {
                (feed, upTo) = (index, int.MaxValue);
                continue;
            }

            switch (all[index].From)
            {
                case Rail above:
                    if (!below)
                    {
                        foreach (var one in Items(above.Capacitors))
                        {
                            Add(above, one?.Capacitance?.Min.Farads, one?.Esr?.Max.Ohms);
                        }
                    }

                    (here, feed, upTo) = (above, -1, int.MaxValue);
                    continue;
                case Supply supply when !below:
                    Add(supply, supply.OutputCapacitance?.Min.Farads, supply.OutputCapacitorEsr?.Max.Ohms);
                    break;
                case Converter converter when !below:
                    Add(converter, converter.OutputCapacitance?.Min.Farads, converter.OutputCapacitorEsr?.Max.Ohms);
                    break;
            }

            break;
        }

        return total;

        void Add(Source source, double? capacitance, double? esr)
        {
            var low = VoltagesOf(source, new DatumPlace(source), Label(source)).Low;
            if (capacitance is > 0 and var farads && esr is { } ohms && low.IsKnown && resistance + ohms > 0)
            {
                total += PulseIntegral.CapacitorDischarge(farads, low.Value, resistance + ohms);
            }
        }
    }

    /// <summary>What an element bears for ever (A); null: nothing is asked of it.</summary>
    internal Continuous? BearsForEver(Rail rail, Element element, string label) => element switch
    {
        Inductor inductor => Known(inductor.RatedCurrent?.Amperes, element, nameof(Inductor.RatedCurrent), label),
        BlockingDiode diode => Known(diode.RatedCurrent?.Amperes, element, nameof(BlockingDiode.RatedCurrent), label),
        SenseResistor sense => Known(sense is { RatedPower: { } power, Resistance: { } ohms } && ohms.Max.Ohms > 0 ? Math.Sqrt((double)power.Watts / ohms.Max.Ohms) : null, element, nameof(SenseResistor.RatedPower), label),
        InrushLimiter limiter => Known(limiter.MaxCurrent?.Amperes, element, nameof(InrushLimiter.MaxCurrent), label),
        ParallelGroup => new Continuous(new Range(0, double.PositiveInfinity), [new MissingDatum(new DatumPlace(element, nameof(ParallelGroup.Branches)), label)]),
        _ => ContinuousCurrent(rail, element, label),
    };
}
