using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>Faults: the largest and the smallest current at a place, over time, with bounds where data are absent.</content>
/// <remarks>
/// <para>
/// A fault place lies behind an element of a path (or at the beginning of a path, element −1), pole to pole, without resistance for the largest current. Such a fault
/// parts the board: through a device flows only what comes from its own side.
/// </para>
/// <para>
/// Branches below a node that only feed back (capacitors) are drawn together where they are alike. Beyond <see cref="MostBranches"/> different ones at a node the
/// smaller are lumped: conductances and capacitances added, which never lowers the current.
/// </para>
/// </remarks>
public sealed partial class Network
{
    /// <summary>Inductance of the loop of a conductor and its return (H/m): least and largest, where none is stated. Common practice, no source.</summary>
    private static readonly Range LoopInductance = new(0.2e-6, 2e-6);

    /// <summary>Largest inductance (H) of a compact device where none is stated. Common practice, no source.</summary>
    private const double CompactInductance = 50e-9;

    /// <summary>How many different back-feeding branches at a node are followed one by one.</summary>
    private const int MostBranches = 4;

    /// <summary>How many capacitors in such a branch are followed one by one; beyond, they count as one without resistance between.</summary>
    private const int MostParts = 6;

    private readonly Dictionary<(DatumPlace Part, int Behind, bool Reverse, bool Least), FaultCurrent> faults = [];
    private readonly Dictionary<string, ImmutableArray<Waveform>?> solvedFaults = new(StringComparer.Ordinal);

    /// <summary>
    /// The largest current through a part when a fault lies on its own path, on its load side (or, in reverse, on its source side). The part's own resistance is
    /// left out. Highest voltage, all feeds, capacitances at their largest, cold and new.
    /// </summary>
    /// <param name="part">The part; for one in a parallel group the current is that of the whole group, which the last branch to open must interrupt.</param>
    /// <param name="behind">The index in the part's path of the element behind which the fault lies, not before the part; not used in reverse: the fault then lies just before the part.</param>
    /// <param name="reverse">Whether the current comes from the load side.</param>
    /// <param name="least">Absent data at the end of their bounds that gives the least current, instead of the most.</param>
    internal FaultCurrent LargestFault(PartPlace part, int behind, bool reverse, bool least)
    {
        var key = (part.Place, reverse ? 0 : behind, reverse, least);
        if (!faults.TryGetValue(key, out var known))
        {
            faults.Add(key, known = new FaultWalk(this, least).Run(part, behind, reverse));
        }

        return known;
    }

    /// <summary>The current of a fault through a part.</summary>
    /// <param name="Current">Over time; null where nothing bounds it.</param>
    /// <param name="TimeConstant">Largest L/R (s) of a source that gives a tenth of the peak or more.</param>
    /// <param name="Gaps">The data that were bounded or are missing; for the current, and those for the time constant alone.</param>
    /// <param name="SlowGaps">Inductances that were bounded.</param>
    /// <param name="Assumptions">What was assumed where data are silent.</param>
    /// <param name="Sources">What gives the current, for the working.</param>
    internal sealed record FaultCurrent(
        Waveform? Current, double TimeConstant, ImmutableArray<MissingDatum> Gaps, ImmutableArray<MissingDatum> SlowGaps, ImmutableArray<string> Assumptions, ImmutableArray<WorkingStep> Sources)
    {
        internal double Peak => Current?.PeakCurrent ?? double.PositiveInfinity;

        internal double Settled => Current?.Settled ?? double.PositiveInfinity;
    }

    /// <summary>A stretch of a path as a fault sees it: resistance and inductance between bounds, what blocks, what is missing.</summary>
    private sealed class FaultSeries
    {
        internal Range Resistance { get; private set; }

        /// <summary>Inductance for the current: bands at their least.</summary>
        internal Range Inductance { get; private set; }

        /// <summary>Inductance for the time constant: bands at their largest.</summary>
        internal Range SlowInductance { get; private set; }

        internal double Drop { get; private set; }

        /// <summary>Whether current from load to source is blocked.</summary>
        internal bool BlocksReverse { get; set; }

        internal List<MissingDatum> Gaps { get; } = [];

        internal List<MissingDatum> SoftGaps { get; } = [];

        internal void AddResistance(Range ohms) => Resistance = Sum(Resistance, ohms);

        internal void AddInductance(Range henries, Range slow) => (Inductance, SlowInductance) = (Sum(Inductance, henries), Sum(SlowInductance, slow));

        internal void AddDrop(double volts) => Drop += volts;

        internal void Add(FaultSeries other)
        {
            AddResistance(other.Resistance);
            AddInductance(other.Inductance, other.SlowInductance);
            Drop += other.Drop;
            BlocksReverse |= other.BlocksReverse;
            Gaps.AddRange(other.Gaps);
            SoftGaps.AddRange(other.SoftGaps);
        }

        /// <summary>Branches side by side.</summary>
        internal static FaultSeries Parallel(IReadOnlyList<FaultSeries> branches)
        {
            var result = new FaultSeries();
            if (branches.Count == 0)
            {
                return result;
            }

            result.AddResistance(Together(branches, branch => branch.Resistance));
            result.AddInductance(Together(branches, branch => branch.Inductance), Together(branches, branch => branch.SlowInductance));
            result.Drop = branches.Min(branch => branch.Drop);
            result.BlocksReverse = branches.All(branch => branch.BlocksReverse);
            result.Gaps.AddRange(branches.SelectMany(branch => branch.Gaps));
            result.SoftGaps.AddRange(branches.SelectMany(branch => branch.SoftGaps));
            return result;

            static Range Together(IReadOnlyList<FaultSeries> all, Func<FaultSeries, Range> of) =>
                new(1 / all.Sum(branch => 1 / of(branch).Low), 1 / all.Sum(branch => 1 / of(branch).High));
        }

        private static Range Sum(Range a, Range b) => new(a.Low + b.Low, a.High + b.High);
    }

    /// <summary>How inrush limiters stand.</summary>
    private enum Limiters
    {
        /// <summary>The rail is up: they are hot or bypassed.</summary>
        Running,

        /// <summary>The rail starts after a long time: they are cold.</summary>
        Cold,

        /// <summary>The rail starts again after its shortest outage: they are hot but for those whose bypass has opened or that have cooled down.</summary>
        Restarted,
    }

    private bool IsCold(Rail rail, InrushLimiter limiter, Limiters limiters) =>
        limiters == Limiters.Cold || (limiters == Limiters.Restarted && (limiter.Bypass == true || HasCooled(rail, limiter)));

    /// <summary>Elements from one index up to another (exclusive) of a path, with their share of the return, cold and new.</summary>
    /// <param name="rail">The rail.</param>
    /// <param name="feed">The feed whose path it is; null: the rail's own.</param>
    /// <param name="first">The first element's index.</param>
    /// <param name="end">The index after the last element.</param>
    /// <param name="without">The element of the path that is left out; −1: none.</param>
    /// <param name="withoutInReturn">The element of the return that is left out.</param>
    /// <param name="limiters">How inrush limiters stand.</param>
    private FaultSeries ColdSeries(Rail rail, Feed? feed, int first, int end, int without, Element? withoutInReturn = null, Limiters limiters = Limiters.Running)
    {
        var path = Items(feed is null ? rail.Path : feed.Path);
        var result = new FaultSeries();
        object owner = (object?)feed ?? rail;
        if (Unworkable(owner, Label(rail), nameof(Rail.Path)) is { } hidden)
        {
            result.Gaps.Add(hidden);
            result.AddResistance(new Range(0, double.PositiveInfinity));
        }

        for (var i = first; i < end; i++)
        {
            if (path[i] is { } element && i != without)
            {
                result.Add(ColdElement(rail, element, Label(element, rail, i), loop: true, limiters));
            }
            else if (path[i] is { } own && i == without)
            {
                result.BlocksReverse |= Blocks(own);
            }
        }

        if (first < end && path.Length > 0)
        {
            AddColdReturn(result, rail, feed, path, first, end, withoutInReturn, limiters);
        }

        return result;
    }

    private void AddColdReturn(FaultSeries result, Rail rail, Feed? feed, ImmutableArray<Element> path, int first, int end, Element? without, Limiters limiters)
    {
        object owner = (object?)feed ?? rail;
        var back = feed is null ? rail.Return : feed.Return;
        if (back is null)
        {
            result.Gaps.Add(new MissingDatum(new DatumPlace(owner, nameof(Rail.Return)), Label(rail)));
            result.AddResistance(new Range(0, double.PositiveInfinity));
            return;
        }

        var whole = first == 0 && end == path.Length;
        if (back.IsMirrored)
        {
            for (var i = first; i < end; i++)
            {
                if (path[i] is { } element && IsConductor(element))
                {
                    result.Add(ColdElement(rail, ConductorsOf(element), Label(element, rail, i), loop: false));
                }
            }

            return;
        }

        var series = new FaultSeries();
        if (back.Resistance is { } stated)
        {
            series.AddResistance(Range.Exactly(Finite(stated.Min.Ohms)));
        }

        var elements = Items(back.Elements);
        for (var i = 0; i < elements.Length; i++)
        {
            if (elements[i] is { } element && !ReferenceEquals(element, without))
            {
                series.Add(ColdElement(rail, element, Label(element, rail, i), loop: false, limiters));
            }
        }

        if (whole)
        {
            result.Add(series);
        }
        else if (series.Resistance.High > 0 || series.Inductance.High > 0)
        {
            // How much of the return lies before a place within the path is not known: none for the largest current, all of it for its lower bound.
            result.AddResistance(new Range(0, series.Resistance.High));
            result.AddInductance(new Range(0, series.Inductance.High), new Range(0, series.SlowInductance.High));
            result.Gaps.AddRange(series.Gaps);
            result.Gaps.Add(new MissingDatum(new DatumPlace(owner, nameof(Rail.Return)), Label(rail)));
        }
    }

    /// <summary>One element, cold and new. The inductance of a loop counts once, with the live conductor; a stated one counts for each conductor.</summary>
    private FaultSeries ColdElement(Rail rail, Element element, string label, bool loop, Limiters limiters = Limiters.Running)
    {
        var result = new FaultSeries { BlocksReverse = Blocks(element) };
        if (element is ParallelGroup group)
        {
            if (Unworkable(group, label, nameof(ParallelGroup.Branches)) is { } hidden)
            {
                result.Gaps.Add(hidden);
                result.AddResistance(new Range(0, double.PositiveInfinity));
            }

            var branches = new List<FaultSeries>();
            foreach (var branch in Items(group.Branches))
            {
                var inner = new FaultSeries();
                var parts = Items(branch);
                for (var i = 0; i < parts.Length; i++)
                {
                    if (parts[i] is { } part)
                    {
                        inner.Add(ColdElement(rail, part, Label(part, rail, i), loop, limiters));
                    }
                }

                branches.Add(inner);
            }

            result.Add(FaultSeries.Parallel(branches));
            return result;
        }

        var cold = Math.Min(20, AirAt(rail, element.Surroundings, element).Ambient?.Low ?? LowestAmbient);
        var resistance = element switch
        {
            Wire wire => Conductor(wire.Resistance?.Min.Ohms, wire.Length?.Meters, wire.Section?.SquareMeters, wire.Ampacity?.Amperes / Conductors.HighestDensity, wire.Material == ConductorMaterial.Aluminium),
            Busbar bar => Conductor(bar.Resistance?.Min.Ohms, bar.Length?.Meters, bar.Section?.SquareMeters, bar.Ampacity?.Amperes / Conductors.HighestDensity, bar.Material == ConductorMaterial.Aluminium),
            Trace trace => Conductor(trace.Resistance?.Min.Ohms, trace.Length?.Meters, trace.Width?.Meters * trace.Thickness?.Meters, null, false),
            Connector connector => Compact(nameof(Connector.ContactResistance), connector.ContactResistance?.Min.Ohms / Math.Max(1, connector.Contacts ?? 1), connector.ContactRating?.Amperes * Math.Max(1, connector.Contacts ?? 1)),
            Fuse fuse => Compact(nameof(Fuse.ColdResistance), fuse.ColdResistance?.Min.Ohms, fuse.RatedCurrent?.Amperes),
            CircuitBreaker breaker => Compact(nameof(CircuitBreaker.Resistance), breaker.Resistance?.Min.Ohms, breaker.RatedCurrent?.Amperes),
            ResettableFuse resettable => Compact(nameof(ResettableFuse.Resistance), resettable.Resistance?.Min.Ohms, resettable.HoldCurrent?.Amperes),
            ElectronicFuse electronic => Compact(nameof(ElectronicFuse.OnResistance), electronic.OnResistance?.Min.Ohms, electronic.TripLevel?.Max.Amperes),
            Switch contact => Compact(nameof(Switch.OnResistance), contact.OnResistance?.Min.Ohms, contact.RatedCurrent?.Amperes),
            FuseHolder holder => Compact(nameof(FuseHolder.ContactResistance), holder.ContactResistance?.Min.Ohms, holder.RatedCurrent?.Amperes),
            SenseResistor sense => Compact(nameof(SenseResistor.Resistance), sense.Resistance?.Min.Ohms, null),
            Inductor inductor => Compact(nameof(Inductor.Resistance), inductor.Resistance?.Min.Ohms * Conductors.TemperatureFactor(Conductors.CopperCoefficient, cold), inductor.RatedCurrent?.Amperes),

            InrushLimiter limiter when IsCold(rail, limiter, limiters) => Compact(nameof(InrushLimiter.ColdResistance), limiter.ColdResistance?.Min.Ohms, null),
            InrushLimiter { HotResistance: null, ColdResistance: { } most } limiter when !IsUnknown(limiter, nameof(InrushLimiter.HotResistance)) =>
                Compact(nameof(InrushLimiter.HotResistance), null, null) with { High = Finite(most.Max.Ohms) },
            InrushLimiter limiter => Compact(nameof(InrushLimiter.HotResistance), limiter.HotResistance?.Min.Ohms, null),
            BlockingDiode diode => Range.Exactly(Finite(diode.Resistance?.Min.Ohms ?? 0)),
            _ => Range.Exactly(0),
        };
        result.AddResistance(resistance);
        result.AddDrop(Finite((element as BlockingDiode)?.ForwardDrop?.Min.Volts ?? 0));
        AddInductance();
        return result;

        Range Conductor(double? stated, double? length, double? section, double? leastSection, bool aluminium)
        {
            var factor = Conductors.TemperatureFactor(aluminium ? Conductors.AluminiumCoefficient : Conductors.CopperCoefficient, cold);
            var resistivity = aluminium ? Conductors.AluminiumResistivity : Conductors.CopperResistivity;
            if (stated is { } ohms)
            {
                return Range.Exactly(Finite(ohms * factor));
            }

            if (length is { } meters && section is > 0 and var area)
            {
                return Range.Exactly(Finite(Conductors.Resistance(resistivity, meters, area) * factor));
            }

            result.Gaps.Add(new MissingDatum(new DatumPlace(element, length is null ? nameof(Wire.Length) : element is Trace ? nameof(Trace.Width) : nameof(Wire.Section)), label));
            return new Range(0, length is { } far && leastSection is > 0 and var least ? Finite(Conductors.Resistance(resistivity, far, least) * factor) : double.PositiveInfinity);
        }

        Range Compact(string datum, double? stated, double? rated)
        {
            if (stated is { } ohms)
            {
                return Range.Exactly(Finite(ohms));
            }

            result.Gaps.Add(new MissingDatum(new DatumPlace(element, datum), label));
            return new Range(0, rated is > 0 and var amperes && !IsUnknown(element, datum) ? CompactDrop / amperes : double.PositiveInfinity);
        }

        void AddInductance()
        {
            if (element.Inductance is { } stated)
            {
                result.AddInductance(Range.Exactly(Finite(stated.Min.Henries)), Range.Exactly(Finite(stated.Max.Henries)));
                return;
            }

            var length = element switch { Wire wire => wire.Length?.Meters, Busbar bar => bar.Length?.Meters, Trace trace => trace.Length?.Meters, _ => null };
            var bound = element switch
            {
                Wire or Busbar or Trace when !loop => Range.Exactly(0),
                Wire or Busbar or Trace when length is { } meters => new Range(LoopInductance.Low * meters, LoopInductance.High * meters),

                // A conductor known by its resistance: no slower than the time constant that is assumed of circuits.
                Wire or Busbar or Trace => new Range(0, (double.IsInfinity(resistance.High) ? 0 : resistance.High) * PolicyAt(rail).Policy.AssumedTimeConstant.Seconds),
                Inductor => new Range(0, double.PositiveInfinity),
                _ => new Range(0, CompactInductance),
            };
            if (element is Inductor || IsUnknown(element, nameof(Element.Inductance)))
            {
                result.Gaps.Add(new MissingDatum(new DatumPlace(element, nameof(Element.Inductance)), label));
                bound = new Range(0, double.PositiveInfinity);
            }

            result.AddInductance(bound, bound);
            if (!bound.IsExact)
            {
                result.SoftGaps.Add(new MissingDatum(new DatumPlace(element, element is Wire or Busbar or Trace && length is null ? nameof(Wire.Length) : nameof(Element.Inductance)), label));
            }
        }
    }
}
