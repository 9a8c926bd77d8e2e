using System.Collections.Immutable;
using RailRules.Physics;
using UnitsNet;

namespace RailRules;

/// <content>Resistance and drop of paths with their returns, hot, with bounds where data are absent.</content>
public sealed partial class Network
{
    /// <summary>
    /// Highest temperature (°C) that is assumed of a conductor of which neither a limit nor a continuous current is stated: the class of most wire
    /// insulations and laminates. Common practice, no source.
    /// </summary>
    internal const double UnstatedTemperatureLimit = 105;

    /// <summary>Largest drop (V) at rated current from which the resistance of a compact device is bounded. Common practice, no source.</summary>
    internal const double CompactDrop = 0.5;

    private Stretch StretchOf(Rail rail, Feed? feed)
    {
        var stretch = new Stretch();
        object owner = (object?)feed ?? rail;
        var label = Label(rail);
        var path = Items(feed is null ? rail.Path : feed.Path);
        var back = feed is null ? rail.Return : feed.Return;
        if (Unworkable(owner, label, nameof(Rail.Path)) is { } hidden)
        {
            stretch.Add(hidden, unbounded: true);
        }

        for (var i = 0; i < path.Length; i++)
        {
            if (path[i] is { } element)
            {
                AddElement(stretch, rail, element, Label(element, rail, i));
            }
        }

        if (back is null)
        {
            if (path.Length > 0 || IsUnknown(owner, nameof(Rail.Return)))
            {
                stretch.Add(new MissingDatum(new DatumPlace(owner, nameof(Rail.Return)), label), unbounded: true);
            }

            return stretch;
        }

        if (back.Resistance is { } stated)
        {
            stretch.AddResistance(Finite(stated.Max.Ohms));
        }

        var elements = back.IsMirrored ? path.Where(IsConductor).ToImmutableArray() : Items(back.Elements);
        for (var i = 0; i < elements.Length; i++)
        {
            if (elements[i] is { } element)
            {
                AddElement(stretch, rail, back.IsMirrored ? ConductorsOf(element) : element, Label(element, rail, i));
            }
        }

        return stretch;
    }

    /// <summary>Whether an element has conductors or contacts, which a mirrored return repeats.</summary>
    private static bool IsConductor(Element? element) => element switch
    {
        Wire or Trace or Busbar or Connector => true,
        ParallelGroup group => Items(group.Branches).Any(branch => Items(branch).Any(IsConductor)),
        _ => false,
    };

    private static Element ConductorsOf(Element element) => element is ParallelGroup group
        ? group with
        {
            Branches = [.. Items(group.Branches).Select(branch => Items(branch).Where(IsConductor).Select(ConductorsOf).ToImmutableArray()).Where(branch => branch.Length > 0)],
        }
        : element;

    private void AddElement(Stretch stretch, Rail rail, Element element, string label)
    {
        switch (element)
        {
            case Wire wire:
                AddConductor(stretch, rail, element, label, wire.Resistance, wire.Length?.Meters, wire.Section?.SquareMeters, wire.Ampacity?.Amperes, wire.Material, wire.TemperatureLimit);
                break;
            case Busbar busbar:
                AddConductor(stretch, rail, element, label, busbar.Resistance, busbar.Length?.Meters, busbar.Section?.SquareMeters, busbar.Ampacity?.Amperes, busbar.Material, busbar.TemperatureLimit);
                break;
            case Trace trace:
                AddTrace(stretch, rail, trace, label);
                break;
            case Connector connector:
                var contacts = Math.Max(1, connector.Contacts ?? 1);
                if (IsUnknown(connector, nameof(Connector.Contacts)))
                {
                    stretch.Add(new MissingDatum(new DatumPlace(connector, nameof(Connector.Contacts)), label), unbounded: false);
                }

                AddCompact(stretch, element, label, nameof(Connector.ContactResistance), Ohms(stretch, connector.ContactResistance) / contacts, connector.ContactRating?.Amperes * contacts);
                break;
            case Fuse fuse:
                AddCompact(stretch, element, label, nameof(Fuse.ColdResistance), StatedResistance(fuse, stretch.IsLeast), fuse.RatedCurrent?.Amperes);
                break;
            case CircuitBreaker breaker:
                AddCompact(stretch, element, label, nameof(CircuitBreaker.Resistance), StatedResistance(breaker, stretch.IsLeast), breaker.RatedCurrent?.Amperes);
                break;
            case ResettableFuse resettable:
                AddCompact(stretch, element, label, nameof(ResettableFuse.Resistance), StatedResistance(resettable, stretch.IsLeast), resettable.HoldCurrent?.Amperes);
                break;
            case ElectronicFuse electronic:
                AddCompact(stretch, element, label, nameof(ElectronicFuse.OnResistance), StatedResistance(electronic, stretch.IsLeast), electronic.TripLevel?.Max.Amperes);
                break;
            case Switch contact:
                AddCompact(stretch, element, label, nameof(Switch.OnResistance), StatedResistance(contact, stretch.IsLeast), contact.RatedCurrent?.Amperes);
                break;
            case FuseHolder holder:
                AddCompact(stretch, element, label, nameof(FuseHolder.ContactResistance), StatedResistance(holder, stretch.IsLeast), holder.RatedCurrent?.Amperes);
                break;
            case SenseResistor sense:
                AddCompact(stretch, element, label, nameof(SenseResistor.Resistance), StatedResistance(sense, stretch.IsLeast), null);
                break;
            case Inductor inductor:
                AddCompact(stretch, element, label, nameof(Inductor.Resistance), Ohms(stretch, inductor.Resistance) * Conductors.TemperatureFactor(Conductors.CopperCoefficient, UnstatedTemperatureLimit), inductor.RatedCurrent?.Amperes);
                break;
            case InrushLimiter limiter:
                if (limiter.HotResistance is null && limiter.ColdResistance is { } cold)
                {
                    stretch.AddResistance(0, Finite(cold.Max.Ohms));
                    stretch.Add(new MissingDatum(new DatumPlace(limiter, nameof(InrushLimiter.HotResistance)), label), unbounded: false);
                }
                else
                {
                    AddCompact(stretch, element, label, nameof(InrushLimiter.HotResistance), Ohms(stretch, limiter.HotResistance), limiter.MaxCurrent?.Amperes);
                }

                break;
            case BlockingDiode diode:
                stretch.OneWay = true;
                if (diode.ForwardDrop is null && diode.Resistance is null)
                {
                    stretch.Add(new MissingDatum(new DatumPlace(diode, nameof(BlockingDiode.ForwardDrop)), label), unbounded: true);
                }

                stretch.AddDrop(Finite(diode.ForwardDrop is { } forward ? stretch.Of(forward).Volts : 0));
                stretch.AddResistance(Finite(Ohms(stretch, diode.Resistance) ?? 0));
                break;
            case ParallelGroup group:
                AddGroup(stretch, rail, group, label);
                break;
        }

        if (element is ElectronicFuse { ReverseBlocking: true })
        {
            stretch.OneWay = true;
        }
    }

    private void AddGroup(Stretch stretch, Rail rail, ParallelGroup group, string label)
    {
        if (Unworkable(group, label, nameof(ParallelGroup.Branches)) is { } hidden)
        {
            stretch.Add(hidden, unbounded: true);
        }

        var branches = new List<Stretch>();
        foreach (var branch in Items(group.Branches))
        {
            var inner = stretch.Inner();
            var elements = Items(branch);
            for (var i = 0; i < elements.Length; i++)
            {
                if (elements[i] is { } element)
                {
                    AddElement(inner, rail, element, Label(element, rail, i));
                }
            }

            branches.Add(inner);
        }

        stretch.AddGroup(group, branches);
    }

    private void AddTrace(Stretch stretch, Rail rail, Trace trace, string label)
    {
        var section = trace.Width?.Meters * trace.Thickness?.Meters;
        var bound = trace.Ampacity?.Amperes is { } known && TraceRiseAt(rail, trace) is > 0 and var rise ? Conductors.TraceSection(known, rise, inner: false) : (double?)null;
        var cold = ColdResistance(stretch, trace, label, trace.Resistance, trace.Length?.Meters, section, bound, Conductors.CopperResistivity, trace.Length is null ? nameof(Trace.Length) : nameof(Trace.Width));
        if (cold is { } range)
        {
            AddHot(stretch, rail, trace, label, range, Conductors.CopperCoefficient, trace.TemperatureLimit, TraceRiseAt(rail, trace), ContinuousCurrent(rail, trace));
        }
    }

    private void AddConductor(
        Stretch stretch, Rail rail, Element element, string label, Band<ElectricResistance>? stated, double? length, double? section, double? ampacity, ConductorMaterial? material, Temperature? limit)
    {
        var aluminium = material == ConductorMaterial.Aluminium;
        var cold = ColdResistance(
            stretch, element, label, stated, length, section, ampacity / Conductors.HighestDensity, aluminium ? Conductors.AluminiumResistivity : Conductors.CopperResistivity,
            length is null ? nameof(Wire.Length) : nameof(Wire.Section));
        if (cold is { } range)
        {
            var ambient = AirAt(rail, element.Surroundings, element);
            var rise = limit?.DegreesCelsius - ambient.Ambient?.High;
            AddHot(stretch, rail, element, label, range, aluminium ? Conductors.AluminiumCoefficient : Conductors.CopperCoefficient, limit, rise, ampacity);
        }
    }

    /// <summary>Resistance at 20 °C (Ω), as stated or from geometry, with bounds where the section is known by the continuous current alone.</summary>
    private static Range? ColdResistance(
        Stretch stretch, Element element, string label, Band<ElectricResistance>? stated, double? length, double? section, double? leastSection, double resistivity, string missing)
    {
        if (stated is { } band)
        {
            return Range.Exactly(Finite(stretch.Of(band).Ohms));
        }

        if (length is { } known && section is > 0 and var area)
        {
            return Range.Exactly(Finite(Conductors.Resistance(resistivity, known, area)));
        }

        var gap = new MissingDatum(new DatumPlace(element, missing), label);
        if (length is { } far && leastSection is > 0 and var least)
        {
            stretch.Add(gap, unbounded: false);
            return new Range(0, Finite(Conductors.Resistance(resistivity, far, least)));
        }

        stretch.Add(gap, unbounded: true);
        return null;
    }

    /// <summary>Adds a conductor at its running temperature where that can be worked out, else at its limit, else between ambient and the limit of its kind.</summary>
    private void AddHot(Stretch stretch, Rail rail, Element element, string label, Range cold, double coefficient, Temperature? limit, double? rise, double? continuous)
    {
        var air = AirAt(rail, element.Surroundings, element);
        var segment = new Segment { ColdLow = cold.Low, ColdHigh = cold.High, Coefficient = coefficient };
        if (continuous is > 0 and var carried && rise is { } risen && air.Ambient is { } ambient && air.HeatUnknown is null)
        {
            segment.Ambient = ambient.High;
            segment.Rise = Math.Max(0, risen);
            segment.Continuous = carried;
        }
        else if (limit is { } highest)
        {
            segment.HotLow = segment.HotHigh = highest.DegreesCelsius;
        }
        else
        {
            segment.HotLow = air.Ambient?.High ?? LowestAmbient;
            segment.HotHigh = Math.Max(UnstatedTemperatureLimit, Math.Min(air.Hottest.High, HighestAmbient));
            stretch.Add(new MissingDatum(new DatumPlace(element, nameof(Wire.TemperatureLimit)), label), unbounded: false);
        }

        stretch.Add(segment);
    }

    private static void AddCompact(Stretch stretch, Element element, string label, string datum, double? resistance, double? rated)
    {
        if (resistance is { } known)
        {
            stretch.AddResistance(Finite(known));
        }
        else if (rated is > 0 and var amperes)
        {
            stretch.AddResistance(0, CompactDrop / amperes);
            stretch.Add(new MissingDatum(new DatumPlace(element, datum), label), unbounded: false);
        }
        else
        {
            stretch.Add(new MissingDatum(new DatumPlace(element, datum), label), unbounded: true);
        }
    }

    /// <summary>The largest resistance (Ω) that a device states for running, or the least; null: none stated, or the element is no compact device.</summary>
    internal static double? StatedResistance(Element element, bool least = false)
    {
        return element switch
        {
            Fuse fuse => AtRated(fuse.VoltageDrop, fuse.RatedCurrent) ?? Ohms(fuse.ColdResistance),
            CircuitBreaker breaker => AtRated(breaker.VoltageDrop, breaker.RatedCurrent) ?? Ohms(breaker.Resistance),
            ResettableFuse resettable => (least ? null : resettable.ResistanceAfterTrip?.Ohms) ?? Ohms(resettable.Resistance),
            ElectronicFuse electronic => Ohms(electronic.OnResistance),
            Switch contact => Ohms(contact.OnResistance),
            FuseHolder holder => Ohms(holder.ContactResistance),
            SenseResistor sense => Ohms(sense.Resistance),
            _ => null,
        };

        double? Ohms(Band<ElectricResistance>? resistance) => resistance is { } band ? (least ? band.Min : band.Max).Ohms : null;

        double? AtRated(Band<ElectricPotential>? drop, ElectricCurrent? rated) =>
            rated?.Amperes is > 0 and var amperes && drop is { } band ? (least ? band.Min : band.Max).Volts / amperes : null;
    }

    private static double? Ohms(Stretch stretch, Band<ElectricResistance>? resistance) => resistance is { } band ? stretch.Of(band).Ohms : null;

    /// <summary>Contradictory numbers are RAIL0003's; here they only must do no harm.</summary>
    private static double Finite(double value) => double.IsNaN(value) || double.IsInfinity(value) ? 0 : Math.Max(0, value);

    /// <summary>The rise (K) at which a trace carries its continuous current: the policy's, or what its limit leaves above the hottest air.</summary>
    internal double? TraceRiseAt(Rail rail, Trace trace)
    {
        var margins = PolicyAt(rail, trace.Policy, trace);
        if (UnknownMargin(margins, nameof(DesignPolicy.TraceRise)) is not null)
        {
            return null;
        }

        var allowed = margins.Policy.TraceRise.Kelvins;
        return trace.TemperatureLimit is not { } limit ? allowed
            : AirAt(rail, trace.Surroundings, trace).Ambient is { } ambient ? Math.Min(allowed, limit.DegreesCelsius - ambient.High)
            : null;
    }

    /// <summary>Continuous current I_z (A) of a trace: as known from test, else by IPC-2221; null where data are missing.</summary>
    internal double? ContinuousCurrent(Rail rail, Trace trace)
    {
        if (trace.Ampacity is { } known)
        {
            return known.Amperes;
        }

        return trace.Width?.Meters * trace.Thickness?.Meters is > 0 and var section && trace.Inner is { } inner && TraceRiseAt(rail, trace) is { } rise
            ? Conductors.TraceCurrent(section, rise, inner)
            : null;
    }

    /// <summary>One conductor of a stretch.</summary>
    internal sealed class Segment
    {
        internal double ColdLow;
        internal double ColdHigh;
        internal double Coefficient;
        internal double HotLow = 20;
        internal double HotHigh = 20;
        internal double Ambient;
        internal double Rise;
        internal double Continuous;

        internal double Resistance(bool worst, double current)
        {
            var hot = Continuous > 0 ? Conductors.RunningTemperature(Ambient, Rise, current, Continuous) : worst ? HotHigh : HotLow;
            return (worst ? ColdHigh : ColdLow) * Conductors.TemperatureFactor(Coefficient, hot);
        }
    }

    /// <summary>A path with its return as one branch of the circuit: resistance and drop, and what is missing for them.</summary>
    internal sealed class Stretch
    {
        private readonly bool least;
        private readonly List<Segment> segments = [];
        private readonly List<(ParallelGroup Group, List<Stretch> Branches)> groups = [];
        private double low;
        private double high;
        private double drop;

        /// <summary>An empty stretch; with resistances and drops at the least end of their bands, or at the largest.</summary>
        internal Stretch(bool least = false) => this.least = least;

        /// <summary>The end of a band that counts.</summary>
        internal T Of<T>(Band<T> band)
            where T : struct, IComparable<T> => least ? band.Min : band.Max;

        internal List<(MissingDatum Datum, bool Unbounded)> Gaps { get; } = [];

        internal bool IsLeast => least;

        internal Stretch Inner() => new(least);

        internal bool OneWay { get; set; }

        internal bool Unbounded { get; private set; }

        /// <summary>Whether the resistance depends on the current.</summary>
        internal bool Varies { get; private set; }

        internal void Add(MissingDatum datum, bool unbounded)
        {
            Gaps.Add((datum, unbounded));
            Unbounded |= unbounded;
        }

        internal void Add(Segment segment)
        {
            segments.Add(segment);
            Varies |= segment.Continuous > 0;
        }

        internal void AddResistance(double exact) => AddResistance(exact, exact);

        internal void AddResistance(double least, double most)
        {
            low += least;
            high += most;
        }

        internal void AddDrop(double volts) => drop += volts;

        internal void AddGroup(ParallelGroup group, List<Stretch> branches)
        {
            if (branches.Count == 0)
            {
                return;
            }

            groups.Add((group, branches));
            Varies = true;
            foreach (var branch in branches)
            {
                Gaps.AddRange(branch.Gaps);
                Unbounded |= branch.Unbounded;
            }

            OneWay |= branches.All(branch => branch.OneWay);
        }

        /// <summary>Resistance (Ω) and drop (V) at a current (A), at the best or the worst end of what is unknown.</summary>
        internal (double Resistance, double Drop) At(bool worst, double current)
        {
            var (resistance, volts) = (worst ? high : low, drop);
            foreach (var segment in segments)
            {
                resistance += segment.Resistance(worst, current);
            }

            foreach (var (_, branches) in groups)
            {
                var (equivalent, offset, _) = Share(branches, worst, current);
                resistance += equivalent;
                volts += offset;
            }

            return (resistance, volts);
        }

        /// <summary>The currents (A) in the branches of a group of this stretch, opened from outside in.</summary>
        internal double[]? SharesOf(ParallelGroup group, bool worst, double current)
        {
            foreach (var (candidate, branches) in groups)
            {
                if (ReferenceEquals(candidate, group))
                {
                    return Share(branches, worst, current).Currents;
                }

                foreach (var branch in branches)
                {
                    if (branch.SharesOf(group, worst, current) is { } found)
                    {
                        return found;
                    }
                }
            }

            return null;
        }

        /// <summary>A total current shared by branches of resistance and drop; the straight line through the point where they work.</summary>
        private static (double Resistance, double Drop, double[] Currents) Share(List<Stretch> branches, bool worst, double current)
        {
            var parts = new (double Resistance, double Drop)[branches.Count];
            var currents = new double[branches.Count];
            for (var i = 0; i < currents.Length; i++)
            {
                currents[i] = current / branches.Count;
            }

            (double Resistance, double Drop) line = default;
            for (var round = 0; round < 8; round++)
            {
                for (var i = 0; i < parts.Length; i++)
                {
                    parts[i] = branches[i].At(worst, currents[i]);
                }

                line = Sharing.Share(parts, current, currents);
                if (!branches.Any(branch => branch.Varies))
                {
                    break;
                }
            }

            return (line.Resistance, line.Drop, currents);
        }
    }
}
