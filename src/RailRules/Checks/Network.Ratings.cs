using System.Collections.Immutable;
using RailRules.Physics;
using UnitsNet;

namespace RailRules;

/// <content>What devices and sources may carry for ever, where they stand.</content>
public sealed partial class Network
{
    /// <summary>How far (K) the air may be above the reference without a derating curve. Common practice, no source.</summary>
    internal const double ReferenceTolerance = 5;

    private static readonly Range UnstatedReference = new(20, 25);

    private static readonly Range Anything = new(0, double.PositiveInfinity);

    /// <summary>What a device in its place may carry; null: this is not judged by a continuous rating of its own.</summary>
    internal Rating? RatingOf(PartPlace place)
    {
        var margins = PolicyAt(place.Rail, place.Part.Policy, place.Part);
        var air = AirAt(place.Rail, place.Part.Surroundings, place.Part);
        return place.Part switch
        {
            Fuse fuse => RatingOf(fuse, place.Label, margins, air),
            CircuitBreaker breaker => RatingOf(breaker, place.Label, margins, air),
            ElectronicFuse electronic => RatingOf(electronic, place.Label, margins),
            Switch { RatedCurrent: { } rated } => Plain(place, nameof(Switch.RatedCurrent), rated, air),
            BlockingDiode { RatedCurrent: { } rated } => Plain(place, nameof(BlockingDiode.RatedCurrent), rated, air),
            FuseHolder { RatedCurrent: { } rated } => Plain(place, nameof(FuseHolder.RatedCurrent), rated, air),
            Inductor { RatedCurrent: { } rated } => Plain(place, nameof(Inductor.RatedCurrent), rated, air),
            _ => null,
        };
    }

    private Rating RatingOf(Fuse fuse, string label, Margins margins, Air air)
    {
        var rating = new Rating(fuse, nameof(Fuse.RatedCurrent), label, fuse.RatedCurrent?.Amperes);
        if (margins.Policy.FuseContinuous is { } stated)
        {
            MultiplyByPolicy(rating, margins.Policy, nameof(DesignPolicy.FuseContinuous), stated, "continuous use");
        }
        else
        {
            AddBasis(rating, fuse.RatingBasis, fuse);
        }

        AddSite(rating, margins, air, Items(fuse.Derating), fuse.ReferenceAmbient, Items(fuse.AltitudeDerating), hasReference: true);
        return Judged(rating, margins, nameof(DesignPolicy.FuseContinuous));
    }

    private Rating RatingOf(CircuitBreaker breaker, string label, Margins margins, Air air)
    {
        var rating = new Rating(breaker, nameof(CircuitBreaker.RatedCurrent), label, breaker.RatedCurrent?.Amperes);
        var withoutBasis = breaker.RatingBasis is null && !IsUnknown(breaker, nameof(CircuitBreaker.RatingBasis));
        if (withoutBasis)
        {
            MultiplyByPolicy(rating, margins.Policy, nameof(DesignPolicy.BreakerContinuous), margins.Policy.BreakerContinuous, "continuous use");
        }
        else
        {
            AddBasis(rating, breaker.RatingBasis, breaker);
        }

        AddSite(rating, margins, air, Items(breaker.Derating), breaker.ReferenceAmbient, Items(breaker.AltitudeDerating), hasReference: true);
        return Judged(rating, margins, withoutBasis ? nameof(DesignPolicy.BreakerContinuous) : null);
    }

    private Rating RatingOf(ElectronicFuse electronic, string label, Margins margins)
    {
        var rating = new Rating(electronic, nameof(ElectronicFuse.TripLevel), label, electronic.TripLevel?.Min.Amperes);
        MultiplyByPolicy(rating, margins.Policy, nameof(DesignPolicy.ElectronicTrip), margins.Policy.ElectronicTrip, "of its lowest trip level");
        return Judged(rating, margins, nameof(DesignPolicy.ElectronicTrip));
    }

    /// <summary>What a resettable fuse holds for ever in the hottest air; no further factor for continuous use is due.</summary>
    internal Rating HoldOf(PartPlace place)
    {
        var resettable = (ResettableFuse)place.Part;
        var margins = PolicyAt(place.Rail, resettable.Policy, resettable);
        var rating = new Rating(resettable, nameof(ResettableFuse.HoldCurrent), place.Label, resettable.HoldCurrent?.Amperes);
        MultiplyByPolicy(rating, margins.Policy, nameof(DesignPolicy.ResettableHold), margins.Policy.ResettableHold, "of its hold current");
        AddSite(rating, margins, AirAt(place.Rail, resettable.Surroundings, resettable), Items(resettable.Derating), resettable.ReferenceAmbient, null, hasReference: true);
        return Judged(rating, margins, nameof(DesignPolicy.ResettableHold));
    }

    /// <summary>Power (W) that a part bears in the hottest air: that of a fuse which a holder accepts, or a resistor's own.</summary>
    internal Rating PowerOf(PartPlace place, string datum, UnitsNet.Power? rated, ImmutableArray<DeratingPoint> derating)
    {
        var margins = PolicyAt(place.Rail, place.Part.Policy, place.Part);
        var rating = new Rating(place.Part, datum, place.Label, (double?)rated?.Watts, "W");
        AddSite(rating, margins, AirAt(place.Rail, place.Part.Surroundings, place.Part), Items(derating), null, null, hasReference: false);
        return Judged(rating, margins, null);
    }

    /// <summary>What an inrush limiter carries for ever in the hottest air.</summary>
    internal Rating CarriedBy(PartPlace place)
    {
        var limiter = (InrushLimiter)place.Part;
        var margins = PolicyAt(place.Rail, limiter.Policy, limiter);
        var rating = new Rating(limiter, nameof(InrushLimiter.MaxCurrent), place.Label, limiter.MaxCurrent?.Amperes);
        AddSite(rating, margins, AirAt(place.Rail, limiter.Surroundings, limiter), Items(limiter.Derating), null, null, hasReference: false);
        return Judged(rating, margins, null);
    }

    private static void MultiplyByPolicy(Rating rating, DesignPolicy policy, string datum, double share, string words) =>
        rating.Multiply(Range.Exactly(share), words, $"{Figures.Digits(share)} {words}", PolicySource(policy, datum), new DatumPlace(policy, datum));

    /// <summary>What a supply, converter or battery may give; null where it does not say.</summary>
    internal Rating? RatingOf(Source source, Rail rail)
    {
        var label = Label(source);
        var margins = PolicyAt(rail);
        var air = AirAt(rail);
        var (continuous, derating, level) = source switch
        {
            Supply supply => (supply.ContinuousCurrent?.Amperes, Items(supply.Derating), supply.CurrentLimit?.Level?.Min.Amperes),
            Converter converter => (converter.ContinuousCurrent?.Amperes, Items(converter.Derating), converter.CurrentLimit?.Level?.Min.Amperes),
            Battery { ContinuousCurrent: { } one } battery => (one.Amperes * Math.Max(1, battery.Strings ?? 1), [], null),
            _ => (null, ImmutableArray<DeratingPoint>.Empty, (double?)null),
        };
        if (source is Battery)
        {
            return continuous is null && !IsUnknown(source, nameof(Battery.ContinuousCurrent)) ? null : new Rating(source, nameof(Battery.ContinuousCurrent), label, continuous);
        }

        var limit = source switch
        {
            Supply supply => supply.CurrentLimit,
            Converter converter => converter.CurrentLimit,
            _ => null,
        };
        var levelUnknown = IsUnknown(source, nameof(Supply.CurrentLimit)) || (limit is not null && IsUnknown(limit, nameof(CurrentLimit.Level)));
        var hidden = levelUnknown || IsUnknown(source, nameof(Supply.ContinuousCurrent));
        if (continuous is null && level is null && !hidden)
        {
            return null; // Of rated current and limit those stated are compared; a source that states neither is judged by what it feeds.
        }

        if (continuous is null && level is { } only && !hidden)
        {
            return new Rating(limit!, nameof(CurrentLimit.Level), label, only);
        }

        var rating = new Rating(source, nameof(Supply.ContinuousCurrent), label, continuous);
        if (continuous is not null)
        {
            AddSite(rating, margins, air, derating, null, null, hasReference: false);
        }

        if (level is { } lowest)
        {
            rating.Limit(lowest, new DatumPlace(limit!, nameof(CurrentLimit.Level)));
        }

        if (levelUnknown)
        {
            rating.Capacity = rating.Capacity with { Low = 0 };
            rating.Missing.Add(new MissingDatum(limit is null ? new DatumPlace(source, nameof(Supply.CurrentLimit)) : new DatumPlace(limit, nameof(CurrentLimit.Level)), label));
        }

        return rating;
    }

    private Rating Plain(PartPlace place, string datum, ElectricCurrent rated, Air air)
    {
        var rating = new Rating(place.Part, datum, place.Label, rated.Amperes);
        rating.Assumptions.Add($"the rated current of '{place.Label}' is taken to hold at {(air.Ambient is { } ambient ? Figures.Text(ambient.High, "°C") : "the ambient")}; its data have no derating");
        return rating;
    }

    /// <summary>A margin that was written but could not be worked out leaves the rating open.</summary>
    private Rating Judged(Rating rating, Margins margins, string? own)
    {
        var used = new[] { own, nameof(DesignPolicy.UnknownDeratingFloor), nameof(DesignPolicy.CreditCold), nameof(DesignPolicy.AltitudeRule) }.OfType<string>().ToArray();
        if (UnknownMargin(margins, used) is { } unknown)
        {
            rating.Capacity = Anything;
            rating.Missing.Add(new MissingDatum(unknown, margins.Policy.Name));
        }

        return rating;
    }

    private static void AddBasis(Rating rating, RatingBasis? basis, Element part)
    {
        var place = new DatumPlace(part, nameof(Fuse.RatingBasis));
        switch (basis)
        {
            case RatingBasis.CarriesRating:
                rating.Multiply(Range.Exactly(1), "continuous use", "1 continuous use", "rating basis: carries its rating", place);
                break;
            case RatingBasis.CarriesThreeQuarters:
                rating.Multiply(Range.Exactly(0.75), "continuous use", "0.75 continuous use", "rating basis: carries three quarters of its rating", place);
                break;
            default:
                rating.Multiply(new Range(0.75, 1), "continuous use", null, "rating basis unstated: 0.75 to 1 (common practice)", place);
                rating.Missing.Add(new MissingDatum(place, rating.Label));
                break;
        }
    }

    /// <summary>Factors for the hottest air and the highest site.</summary>
    private void AddSite(
        Rating rating, Margins margins, Air air, ImmutableArray<DeratingPoint> derating, Temperature? reference, ImmutableArray<AltitudePoint>? altitudes, bool hasReference)
    {
        var policy = margins.Policy;
        var hottest = air.Hottest;
        var owner = rating.Place.Owner;
        var ambientText = air.Missing is null ? Figures.Text(hottest.High, "°C") : "an unstated ambient";
        rating.Hottest = hottest;
        var curve = new DatumPlace(owner, nameof(Fuse.Derating));
        var points = derating.Where(point => point is not null).Select(point => (point.Ambient.DegreesCelsius, point.Factor)).OrderBy(point => point.DegreesCelsius).ToArray();
        rating.Working.Add(new WorkingStep("hottest air", "", "", new Figure(hottest.High, "°C"), air.Missing is null ? "surroundings, heat of neighbours included" : "unstated: -40 to 85 °C (common practice)", air.AmbientPlace));
        if (points.Length > 0)
        {
            var (coolest, worst) = (Physics.Derating.Factor(points, hottest.Low), Physics.Derating.Factor(points, hottest.High));
            var factor = new Range(Credited(Math.Min(coolest.Low, worst.Low), policy), Credited(Math.Max(coolest.High, worst.High), policy));
            rating.Multiply(factor, $"derating for {ambientText}", null, "derating curve, straight lines between points", curve, $" for {ambientText}");
            if (worst.Low < worst.High)
            {
                rating.Missing.Add(new MissingDatum(curve, rating.Label));
                rating.Assumptions.Add($"the derating curve of '{rating.Label}' ends before {ambientText}");
            }

            if (air.Missing is { } missing && !factor.IsExact)
            {
                rating.Missing.Add(new MissingDatum(missing, AirLabel(missing, rating.Label)));
            }
        }
        else
        {
            var standard = reference is { } stated ? Range.Exactly(stated.DegreesCelsius) : UnstatedReference;
            var mayDiffer = hottest.High > standard.Low + ReferenceTolerance;
            rating.Reference = standard;
            rating.DeratingHidden = IsUnknown(owner, nameof(Fuse.Derating));
            rating.NeedsDerating = !rating.DeratingHidden && hottest.Low > standard.High + ReferenceTolerance;
            rating.MayNeedDerating = mayDiffer;
            if (mayDiffer || rating.DeratingHidden)
            {
                rating.Multiply(new Range(Math.Min(1, policy.UnknownDeratingFloor), 1), $"derating for {ambientText}", null, $"no derating stated: {PolicySource(policy, nameof(DesignPolicy.UnknownDeratingFloor))} to 1", curve, $" for {ambientText}");
                rating.Missing.Add(rating.NeedsDerating || rating.DeratingHidden || air.Missing is null && (reference is not null || !hasReference)
                    ? new MissingDatum(curve, rating.Label)
                    : air.Missing is { } missing ? new MissingDatum(missing, AirLabel(missing, rating.Label)) : new MissingDatum(new DatumPlace(owner, nameof(Fuse.ReferenceAmbient)), rating.Label));
            }
            else
            {
                rating.Multiply(Range.Exactly(1), $"derating for {ambientText}", null, "within reference conditions", hasReference ? new DatumPlace(owner, nameof(Fuse.ReferenceAmbient)) : null, $" for {ambientText}");
            }
        }

        if (altitudes is { } stages)
        {
            AddAltitude(rating, policy, air, stages);
        }
    }

    private void AddAltitude(Rating rating, DesignPolicy policy, Air air, ImmutableArray<AltitudePoint> stages)
    {
        var owner = rating.Place.Owner;
        var site = air.Altitude is { } stated ? Range.Exactly(stated) : new Range(0, Physics.Derating.OrdinaryAltitude);
        var curve = new DatumPlace(owner, nameof(Fuse.AltitudeDerating));
        var points = stages.Where(point => point is not null).Select(point => (point.Altitude.Meters, point.Factor)).OrderBy(point => point.Meters).ToArray();
        var altitudeText = Figures.Digits(site.High) + " m";
        Range factor;
        string source;
        DatumPlace? place;
        if (points.Length > 0)
        {
            var (lowest, highest) = (Physics.Derating.Factor(points, site.Low), Physics.Derating.Factor(points, site.High));
            factor = new Range(Credited(Math.Min(lowest.Low, highest.Low), policy), Credited(Math.Max(lowest.High, highest.High), policy));
            (source, place) = ("altitude curve, straight lines between points", curve);
            if (!factor.IsExact)
            {
                rating.Missing.Add(air.Altitude is null ? new MissingDatum(air.AltitudePlace, AirLabel(air.AltitudePlace, rating.Label)) : new MissingDatum(curve, rating.Label));
            }
        }
        else if (IsUnknown(owner, nameof(Fuse.AltitudeDerating)))
        {
            (factor, source, place) = (new Range(Math.Min(1, policy.UnknownDeratingFloor), 1), "altitude derating unknown", curve);
            rating.Missing.Add(new MissingDatum(curve, rating.Label));
        }
        else if (site.High <= Physics.Derating.OrdinaryAltitude)
        {
            return;
        }
        else if (policy.AltitudeRule)
        {
            factor = Range.Exactly(Physics.Derating.AltitudeRule(site.High));
            (source, place) = ($"1 - (h - 2000 m)/20 km, {PolicySource(policy, nameof(DesignPolicy.AltitudeRule))}", air.AltitudePlace);
        }
        else
        {
            rating.NeedsAltitudeDerating = true;
            (factor, source, place) = (new Range(Math.Min(1, policy.UnknownDeratingFloor), 1), $"no altitude derating stated: {PolicySource(policy, nameof(DesignPolicy.UnknownDeratingFloor))} to 1", curve);
            rating.Missing.Add(new MissingDatum(curve, rating.Label));
        }

        rating.Altitude = site.High;
        rating.Multiply(factor, $"factor for {altitudeText}", null, source, place, $" for {altitudeText}");
    }

    /// <summary>The policy's datum with the policy's name and where its margins come from.</summary>
    internal static string PolicySource(DesignPolicy policy, string datum) =>
        $"policy {datum} ({(ReferenceEquals(policy, DesignPolicy.Default) ? "default" : $"'{policy.Name}'")}{(policy.Citation is { } citation ? ", " + citation : "")})";

    private static string AirLabel(DatumPlace place, string label) => place.Owner switch
    {
        Rail rail => Label(rail),
        _ => label,
    };

    private static double Credited(double factor, DesignPolicy policy) => Math.Max(0, policy.CreditCold ? factor : Math.Min(1, factor));

    /// <summary>A continuous rating on its way from the data sheet to the place.</summary>
    internal sealed class Rating
    {
        private readonly List<(string? Text, Range Factor, string Suffix)> factors = [];

        internal Rating(object owner, string datum, string label, double? rated, string unit = "A")
        {
            Place = new DatumPlace(owner, datum);
            Label = label;
            Rated = rated is { } value ? Finite(value) : null;
            Capacity = Rated is { } known ? Range.Exactly(known) : Anything;
            if (Rated is { } shown)
            {
                Working.Add(new WorkingStep(datum, "", "", new Figure(shown, unit), "data of the part", Place));
            }
            else
            {
                Missing.Add(new MissingDatum(Place, label));
            }
        }

        internal DatumPlace Place { get; }

        internal string Label { get; }

        internal double? Rated { get; }

        /// <summary>What it may carry (A), between bounds where data are absent.</summary>
        internal Range Capacity { get; set; }


        internal Range Hottest { get; set; }

        internal Range Reference { get; set; }

        internal double Altitude { get; set; }

        internal bool NeedsDerating { get; set; }

        internal bool MayNeedDerating { get; set; }

        internal bool DeratingHidden { get; set; }

        internal bool NeedsAltitudeDerating { get; set; }

        internal List<MissingDatum> Missing { get; } = [];

        internal List<WorkingStep> Working { get; } = [];

        internal List<string> Assumptions { get; } = [];

        /// <summary>Rating and share for continuous use (A), at their best.</summary>
        internal double Nominal { get; private set; }

        /// <summary>The most it may carry (A) where absent deratings are at their least.</summary>
        internal double CapacityAtFloor { get; private set; } = double.PositiveInfinity;

        internal void Multiply(Range factor, string quantity, string? text, string source, DatumPlace? place, string suffix = " continuous use")
        {
            var exact = factor.IsExact;
            var first = factors.Count == 0;
            Nominal = first ? (Rated ?? 0) * factor.High : Nominal;
            CapacityAtFloor = first ? (Rated is null ? double.PositiveInfinity : Nominal) : Product(CapacityAtFloor, factor.Low);
            Capacity = new Range(Product(Capacity.Low, factor.Low), Product(Capacity.High, factor.High));
            factors.Add((text, factor, suffix));
            Working.Add(new WorkingStep(quantity, "", exact ? "" : $"{Figures.Digits(factor.Low)} to {Figures.Digits(factor.High)}", new Figure(exact ? factor.Low : factor.High, ""), source, place));
        }

        internal void Limit(double level, DatumPlace place)
        {
            Capacity = new Range(Math.Min(Capacity.Low, level), Math.Min(Capacity.High, level));
            Working.Add(new WorkingStep("lowest current limit", "", "", new Figure(level, "A"), "data of the source", place));
            Limited = level;
        }

        internal double? Limited { get; private set; }

        /// <summary>The factors in words at one end of their bounds, e.g. "0.75 continuous use and 0.86 for 55 °C".</summary>
        internal string Factors(bool best)
        {
            var texts = factors.Select(factor => factor.Text ?? Figures.Digits(best ? factor.Factor.High : factor.Factor.Low) + factor.Suffix).ToList();
            return texts.Count <= 1 ? string.Concat(texts) : string.Join(", ", texts.Take(texts.Count - 1)) + " and " + texts[texts.Count - 1];
        }

        private static double Product(double a, double b) => a == 0 || b == 0 ? 0 : a * b;
    }
}
