using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>How soon devices open, where they stand.</content>
public sealed partial class Network
{
    /// <summary>Time (s) in which the magnetic part of a circuit breaker opens where its curve says no less. IEC 60898-1 (from memory).</summary>
    private const double MagneticTime = 0.1;

    private readonly Dictionary<(DatumPlace Place, Element Part), DeviceOpening?> openings = [];

    /// <summary>How soon a device opens where it stands; null: it is none.</summary>
    internal DeviceOpening? OpeningOf(PartPlace place)
    {
        if (!openings.TryGetValue((place.Place, place.Part), out var known))
        {
            openings.Add((place.Place, place.Part), known = SureOpening(place) is { } sure ? new DeviceOpening(this, place, sure.Current, sure.Missing, sure.Step) : null);
        }

        return known;
    }

    /// <summary>How soon a device opens: the longest time until the current is gone and the shortest until it begins to open, between bounds where data are absent.</summary>
    internal sealed class DeviceOpening
    {
        private readonly Element part;
        private readonly TimeCurrentCurve? edges;
        private readonly bool stated;
        private readonly Range? melting;
        private readonly double adiabaticLimit;
        private readonly double conventionalTime;
        private readonly int branches = 1;
        private readonly Range clearing = new(double.PositiveInfinity, double.PositiveInfinity);
        private readonly double clearingCurrent = double.PositiveInfinity;
        private readonly double? fastIntegral;

        internal DeviceOpening(Network network, PartPlace place, Range sure, ImmutableArray<MissingDatum> sureMissing, WorkingStep step)
        {
            part = place.Part;
            Place = place;
            Sure = sure;
            SureMissing = sureMissing;
            Step = step;
            var margins = network.PolicyAt(place.Rail, part.Policy, part);
            var policy = margins.Policy;
            adiabaticLimit = policy.AdiabaticLimit.Seconds;
            conventionalTime = policy.ConventionalTime.Seconds;
            foreach (var (group, _) in place.Branches)
            {
                branches *= Math.Max(1, Items(group.Branches).Length);
            }

            Sure = new Range(Sure.Low * branches, Sure.High * branches);
            var melts = network.SureOpening(place, breaks: false)?.Current ?? sure;
            Begins = new Range(melts.Low * branches, melts.High * branches);
            var missing = new List<MissingDatum>();
            if (network.UnknownMargin(margins, nameof(DesignPolicy.AdiabaticLimit), nameof(DesignPolicy.ConventionalTime), nameof(DesignPolicy.AssumedTimeConstant)) is { } unknown)
            {
                missing.Add(new MissingDatum(unknown, policy.Name));
            }

            switch (part)
            {
                case Fuse fuse:
                    (edges, stated, Basis) = EdgesOf(fuse);
                    if (fuse.Characteristic is Characteristic.Iec60269gG && fuse.RatedCurrent is { } rated && edges is not null && Items(fuse.Curve).IsEmpty)
                    {
                        conventionalTime = Math.Max(conventionalTime, StandardGates.ConventionalTime(rated.Amperes));
                    }

                    melting = fuse.MeltingIntegral is { } band ? new Range(band.Min.AmpereSquaredSeconds, band.Max.AmpereSquaredSeconds) : null;
                    LeastInterrupted = fuse.MinimumBreakingCurrent is { } least ? Range.Exactly(least.Amperes * branches) : fuse.BreakingRange == BreakingRange.Partial ? new Range(0, double.PositiveInfinity) : default;
                    (clearing, clearingCurrent) = ClearingOf(network, place, Items(fuse.ClearingIntegrals), fuse.DcVoltageRating?.Volts, melting, policy, missing);
                    if (!IsDrawn)
                    {
                        missing.Add(new MissingDatum(new DatumPlace(part, nameof(Fuse.Curve)), place.Label));
                    }

                    if (!LeastInterrupted.IsExact)
                    {
                        missing.Add(new MissingDatum(new DatumPlace(part, nameof(Fuse.MinimumBreakingCurrent)), place.Label));
                    }

                    break;
                case CircuitBreaker breaker:
                    edges = TimeCurrentCurve.Of(Items(breaker.Curve).Where(point => point is not null).Select(point => (point.Current.Amperes, point.MinimumMelting?.Seconds, point.MaximumClearing?.Seconds)));
                    stated = edges.HasClearing;
                    Basis = stated ? "curve" : breaker.MagneticTrip is null ? "no curve" : "magnetic level";
                    (clearing, clearingCurrent) = ClearingOf(network, place, Items(breaker.ClearingIntegrals), breaker.DcVoltageRating?.Volts, null, policy, missing);
                    missing.Add(new MissingDatum(new DatumPlace(part, nameof(CircuitBreaker.Curve)), place.Label));
                    break;
                case ResettableFuse resettable:
                    edges = TimeCurrentCurve.Of(Items(resettable.TimeToTrip).Where(point => point is not null).Select(point => (point.Current.Amperes, (double?)null, (double?)point.Time.Seconds)));
                    stated = edges.HasClearing;
                    Basis = "time to trip";
                    missing.AddRange(sureMissing);
                    if (!stated)
                    {
                        missing.Add(new MissingDatum(new DatumPlace(part, nameof(ResettableFuse.TimeToTrip)), place.Label));
                    }

                    break;
                case ElectronicFuse electronic:
                    stated = true;
                    Basis = "trip delay and response";
                    if (electronic is { ShortCircuitLevel: { } level, ShortCircuitResponse: { } response } && place.Place.Index is { } index
                        && network.LargestFault(place, index, reverse: false, least: false).Current is { } current)
                    {
                        fastIntegral = Physics.Openings.ElectronicLetThrough(current, level.Max.Amperes, response.Max.Seconds)?.Integral;
                    }

                    if (electronic.TripDelay is null)
                    {
                        missing.Add(new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.TripDelay)), place.Label));
                    }

                    if (electronic is { ShortCircuitLevel: not null, ShortCircuitResponse: null })
                    {
                        missing.Add(new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.ShortCircuitResponse)), place.Label));
                    }

                    break;
            }

            Missing = [.. missing.Distinct()];
            Basis ??= "";
        }

        internal PartPlace Place { get; }

        /// <summary>How many parallel devices share the current, this one included.</summary>
        internal int Branches => branches;

        /// <summary>The current that opens it for certain (A); of parallel devices all together.</summary>
        internal Range Sure { get; }

        /// <summary>The current that melts or trips it for certain (A), whether or not it can break it.</summary>
        internal Range Begins { get; }

        internal ImmutableArray<MissingDatum> SureMissing { get; }

        internal WorkingStep Step { get; }

        /// <summary>Below this current (A) a partial-range fuse melts without breaking; 0: it breaks all that melts it.</summary>
        internal Range LeastInterrupted { get; }

        /// <summary>Whether its times are drawn in a curve of its own, rather than bounded by a standard or by nothing.</summary>
        internal bool IsDrawn => stated && part is not Fuse { Characteristic: not null, Curve.IsDefaultOrEmpty: true };

        /// <summary>What the times rest on, in words.</summary>
        internal string Basis { get; }

        /// <summary>The data that bound the times.</summary>
        internal ImmutableArray<MissingDatum> Missing { get; }

        /// <summary>What was assumed of the clearing data.</summary>
        internal ImmutableArray<string> Assumptions { get; private set; } = [];

        /// <summary>The time (s) within which the device must have opened at its sure-opening current: the policy's, or that of its standard where longer.</summary>
        internal double ConventionalTime => conventionalTime;

        /// <summary>Bounds of the longest time (s) until a constant current (A) is gone; infinite: it need not open.</summary>
        internal Range Longest(double current)
        {
            var each = current / branches;
            switch (part)
            {
                case Fuse:
                    return LongestOfFuse(current, each);
                case CircuitBreaker breaker:
                    return LongestOfBreaker(breaker, each);
                case ResettableFuse resettable:
                    {
                        var factor = resettable.TripCurrent is { Amperes: > 0 } trip ? new Range(Sure.Low / branches / trip.Amperes, Sure.High / branches / trip.Amperes) : new Range(1, 2);
                        var slow = Trip(each / factor.High);
                        var fast = Trip(each / factor.Low);
                        return new Range(Math.Min(slow.Low, fast.Low), Math.Max(slow.High, fast.High));

                        Range Trip(double at) => each < Sure.Low / branches * (1 - Weight) ? Range.Exactly(double.PositiveInfinity)
                            : stated && edges!.LongestTime(at) is var time && !double.IsInfinity(time) ? Range.Exactly(time)
                            : new Range(0, double.PositiveInfinity);
                    }

                case ElectronicFuse electronic:
                    {
                        double? fast = electronic.ShortCircuitLevel?.Max.Amperes;
                        double Time(double unknown) => electronic.TripLevel is not { } level ? unknown
                            : Physics.Openings.ElectronicLongest(each, level.Max.Amperes, electronic.TripDelay?.Max.Seconds ?? unknown, fast, electronic.ShortCircuitResponse?.Max.Seconds ?? unknown);
                        return new Range(Time(0), Time(double.PositiveInfinity));
                    }

                default:
                    return new Range(0, double.PositiveInfinity);
            }
        }

        /// <summary>Bounds of the Joule integral (A²s) let through at a constant current (A): I² × longest time, in which clearing I²t counts where melting is adiabatic.</summary>
        internal Range LetThrough(double current)
        {
            if (part is ElectronicFuse { ShortCircuitLevel: { } level } && fastIntegral is { } fast && current >= level.Max.Amperes * (1 - Weight))
            {
                return Range.Exactly(fast);
            }

            var time = Longest(current);
            return new Range(current * current * time.Low, current * current * time.High);
        }

        /// <summary>
        /// Bounds of the shortest time (s) until the device begins to open at a constant current (A), of which a share of its melting I²t is left. Below what it
        /// carries it never does.
        /// </summary>
        internal Range Shortest(double current, double share)
        {
            var each = current / branches;
            switch (part)
            {
                case Fuse fuse:
                    {
                        if (fuse.RatedCurrent is not { Amperes: var rated })
                        {
                            return new Range(0, double.PositiveInfinity);
                        }

                        var carries = fuse.RatingBasis == RatingBasis.CarriesThreeQuarters ? 0.75 * rated : fuse.RatingBasis == RatingBasis.CarriesRating ? rated : 0;
                        if (each <= carries * (1 + Weight))
                        {
                            return Range.Exactly(double.PositiveInfinity);
                        }

                        // Heat that is lost only makes melting later, so that the melting I²t bounds the time from below at every current.
                        var floor = melting is { } integral ? share * integral.Low / (each * each) : 0;
                        if (edges is { HasMelting: true })
                        {
                            return Range.Exactly(Math.Max(floor, edges.ShortestTime(each)));
                        }

                        return melting is { } whole && whole.Low / (each * each) <= adiabaticLimit ? Range.Exactly(floor) : new Range(floor, double.PositiveInfinity);
                    }

                case CircuitBreaker breaker:
                    {
                        var carries = (breaker.RatingBasis == RatingBasis.CarriesThreeQuarters ? 0.75 : breaker.RatingBasis == RatingBasis.CarriesRating ? 1 : 0) * (breaker.RatedCurrent?.Amperes ?? 0);
                        if (each <= carries * (1 + Weight))
                        {
                            return Range.Exactly(double.PositiveInfinity);
                        }

                        return edges is { HasMelting: true } && edges.ShortestTime(each) is var drawn && (drawn > 0 || breaker.MagneticTrip is null)
                            ? Range.Exactly(drawn)
                            : breaker.MagneticTrip is { } magnetic && each >= magnetic.Min.Amperes ? Range.Exactly(0) : new Range(0, double.PositiveInfinity);
                    }

                case ElectronicFuse electronic:
                    {
                        if (electronic.TripLevel is not { } level)
                        {
                            return new Range(0, double.PositiveInfinity);
                        }

                        var fast = electronic.ShortCircuitLevel is { } fastLevel && each >= fastLevel.Min.Amperes * (1 - Weight);
                        return each < level.Min.Amperes * (1 - Weight) && !fast ? Range.Exactly(double.PositiveInfinity)
                            : fast ? (electronic.ShortCircuitResponse is { } response ? Range.Exactly(response.Min.Seconds) : new Range(0, double.PositiveInfinity))
                            : electronic.TripDelay is { } delay ? Range.Exactly(delay.Min.Seconds) : new Range(0, double.PositiveInfinity);
                    }

                default:
                    return new Range(0, double.PositiveInfinity);
            }
        }

        /// <summary>The data that bound the shortest time.</summary>
        internal IEnumerable<MissingDatum> ShortestMissing => part switch
        {
            Fuse { RatedCurrent: null } => [new MissingDatum(new DatumPlace(part, nameof(Fuse.RatedCurrent)), Place.Label)],
            Fuse when melting is null => [new MissingDatum(new DatumPlace(part, nameof(Fuse.MeltingIntegral)), Place.Label)],
            Fuse or CircuitBreaker => [new MissingDatum(new DatumPlace(part, nameof(Fuse.Curve)), Place.Label)],
            ElectronicFuse { TripLevel: null } => [new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.TripLevel)), Place.Label)],
            ElectronicFuse electronic => [new MissingDatum(new DatumPlace(part, electronic.TripDelay is null ? nameof(ElectronicFuse.TripDelay) : nameof(ElectronicFuse.ShortCircuitResponse)), Place.Label)],
            _ => [new MissingDatum(new DatumPlace(part, nameof(ResettableFuse.TimeToTrip)), Place.Label)],
        };

        /// <summary>Least melting I²t (A²s) of a fuse; null: not stated, or no fuse.</summary>
        internal double? LeastMelting => melting?.Low * branches * branches;

        /// <summary>Clearing I²t (A²s) at the voltage and time constant of the place, between bounds; infinite: none is known.</summary>
        internal Range Clearing => new(clearing.Low * branches * branches, clearing.High * branches * branches);

        /// <summary>Currents (A) at which the times change their course.</summary>
        internal IEnumerable<double> Corners
        {
            get
            {
                IEnumerable<double> all = [.. edges?.ClearingCurrents ?? [], Begins.Low / branches, Begins.High / branches, Sure.Low / branches, Sure.High / branches, LeastInterrupted.High / branches, clearingCurrent];
                if (melting is { } integral)
                {
                    all = all.Concat([Math.Sqrt(integral.High / adiabaticLimit), Math.Sqrt(integral.Low / adiabaticLimit)]);
                }

                if (!double.IsInfinity(clearing.High))
                {
                    all = all.Append(Math.Sqrt(clearing.High / adiabaticLimit));
                }

                all = part switch
                {
                    ElectronicFuse { ShortCircuitLevel: { } level } => all.Append(level.Max.Amperes),
                    CircuitBreaker { MagneticTrip: { } magnetic } breaker => all.Append(magnetic.Max.Amperes * (breaker.MagneticTripDcFactor ?? 1)),
                    _ => all,
                };
                return all.Select(one => one * branches).Where(one => one > 0 && !double.IsInfinity(one) && !double.IsNaN(one));
            }
        }

        private const double Weight = 1e-9;

        private Range LongestOfFuse(double current, double each)
        {
            if (current < LeastInterrupted.Low * (1 - Weight))
            {
                return Range.Exactly(double.PositiveInfinity);
            }

            Range time;
            if (stated)
            {
                // Beyond the last gate of a standard nothing is promised but that a greater current opens no later.
                var longest = edges!.LongestTime(each);
                time = IsDrawn || each <= edges.GreatestClearing * (1 + Weight) ? Range.Exactly(longest) : new Range(0, longest);
            }
            else if (current < Begins.Low * (1 - Weight))
            {
                time = Range.Exactly(double.PositiveInfinity);
            }
            else
            {
                time = new Range(0, current >= Begins.High * (1 - Weight) ? conventionalTime : double.PositiveInfinity);
            }

            // Where melting is adiabatic the clearing I²t is what passes. Without melting data the clearing I²t bounds it.
            var square = each * each;
            var melts = melting?.High ?? clearing.High;
            if (square > 0 && melts / square <= adiabaticLimit && each <= clearingCurrent * (1 + Weight))
            {
                time = new Range(Math.Min(time.Low, clearing.Low / square), Math.Min(time.High, clearing.High / square));
            }
            else if (square > 0 && melting is { } known && known.High / square <= adiabaticLimit)
            {
                time = time with { Low = Math.Min(time.Low, known.High / square) };
            }

            if (!time.IsExact && melting is { } least)
            {
                time = time with { Low = Math.Max(time.Low, Math.Min(time.High, least.Low / square)) };
            }

            return current < LeastInterrupted.High * (1 - Weight) ? time with { High = double.PositiveInfinity } : time;
        }

        private Range LongestOfBreaker(CircuitBreaker breaker, double each)
        {
            var level = breaker.MagneticTrip?.Max.Amperes * (breaker.MagneticTripDcFactor ?? 1);
            if (breaker.RatedCurrent is not { Amperes: var rated })
            {
                return level is { } only && each >= only * (1 - Weight) ? Cleared(new Range(0, MagneticTime)) : new Range(stated ? 0 : double.PositiveInfinity, double.PositiveInfinity);
            }

            var slow = Physics.Openings.BreakerLongest(each, edges, level, MagneticTime, breaker.ConventionalTripMultiple ?? 1.45, rated, conventionalTime);
            var magnetic = level is { } at && each >= at * (1 - Weight);
            var time = (stated && slow != MagneticTime) || double.IsInfinity(slow) ? Range.Exactly(slow) : new Range(0, slow);
            return magnetic ? Cleared(time) : time;

            Range Cleared(Range known) => each <= clearingCurrent * (1 + Weight)
                ? new Range(Math.Min(known.Low, clearing.Low / (each * each)), Math.Min(known.High, clearing.High / (each * each)))
                : known;
        }

        /// <summary>The edges of a fuse: its curve, else the gates of its family.</summary>
        private static (TimeCurrentCurve? Edges, bool Stated, string Basis) EdgesOf(Fuse fuse)
        {
            var points = Items(fuse.Curve).Where(point => point is not null).Select(point => (point.Current.Amperes, point.MinimumMelting?.Seconds, point.MaximumClearing?.Seconds)).ToList();
            if (points.Count > 0)
            {
                var drawn = TimeCurrentCurve.Of(points);
                return (drawn, drawn.HasClearing, "curve");
            }

            if (fuse is { Characteristic: { } family, RatedCurrent: { } rated })
            {
                var gates = TimeCurrentCurve.Of(StandardGates.Of(family, rated.Amperes), rated.Amperes);
                return (gates, gates.HasClearing, "gates of its standard family");
            }

            return (null, false, "no curve");
        }

        /// <summary>The clearing I²t that counts at the place, and the greatest current for which it does.</summary>
        private (Range Clearing, double UpTo) ClearingOf(
            Network network, PartPlace place, ImmutableArray<ClearingIntegral> data, double? rated, Range? melts, DesignPolicy policy, List<MissingDatum> missing)
        {
            var least = melts?.High ?? 0;
            var open = (new Range(least, double.PositiveInfinity), double.PositiveInfinity);
            var name = new MissingDatum(new DatumPlace(part, nameof(Fuse.ClearingIntegrals)), place.Label);
            var entries = data.Where(one => one is { Kind: CurrentKind.Dc, Value: not null }).ToList();
            var peak = network.VoltagesOf(place.Rail).Peak;
            if (entries.Count == 0 || place.InReturn || !peak.IsAny)
            {
                missing.Add(name);
                return open;
            }

            var fault = network.LargestFault(place, place.Place.Index ?? 0, reverse: false, least: false);
            var current = fault.Current is null ? double.PositiveInfinity : fault.Peak / branches;
            // Tests at the fault current or above count; where there are none, those at the greatest current count up to it.
            var most = entries.Max(one => one.Current?.Amperes ?? double.PositiveInfinity);
            var tests = entries.Where(one => (one.Current?.Amperes ?? double.PositiveInfinity) >= Math.Min(most, current) * (1 - Weight))
                .Select(one => (Test: new ClearingTest(one.Value!.Value.AmpereSquaredSeconds, one.Voltage?.Volts ?? rated ?? double.NaN, one.TimeConstant?.Seconds ?? double.NaN), Assumed: one.Voltage is null)).ToList();
            var known = tests.Where(one => !double.IsNaN(one.Test.Voltage)).ToList();
            if (peak.IsKnown && ClearingData.Of(known.Select(one => one.Test), melts?.High, peak.Value, fault.TimeConstant, policy.AssumedTimeConstant.Seconds) is { } value)
            {
                if (known.Any(one => one.Assumed))
                {
                    Assumptions = Assumptions.Add($"clearing I²t of '{place.Label}' without a test voltage is taken to be proven at its DC voltage rating");
                }

                return (Range.Exactly(value), most);
            }

            // Unproven here: at least what melts it. Where nothing is said of the test it may be found wanting as stated, but not pass.
            var unproven = tests.Where(one => double.IsNaN(one.Test.Voltage)).Select(one => one.Test.Value).DefaultIfEmpty(0).Min();
            missing.Add(known.Count == 0 ? new MissingDatum(new DatumPlace(entries[0], nameof(ClearingIntegral.Voltage)), place.Label) : name);
            if (entries.All(one => one.TimeConstant is null))
            {
                missing.AddRange(fault.SlowGaps.Take(1));
            }

            return (new Range(Math.Max(least, unproven), double.PositiveInfinity), most);
        }
    }
}
