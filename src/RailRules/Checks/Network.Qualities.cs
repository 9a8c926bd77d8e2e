using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>Material and quality: what surroundings ask of parts, what parts state, and the power that is available at them.</content>
public sealed partial class Network
{
    /// <summary>The surroundings of a part, nearest first: its own, its rail's, those of what feeds the rail; and what hides some of them.</summary>
    internal (ImmutableArray<(Surroundings Surroundings, string Label)> Stated, MissingDatum? Hidden) SurroundingsOf(PartPlace place) => SurroundingsOf(place.Rail, place);

    /// <summary>The surroundings of a rail, nearest first.</summary>
    internal (ImmutableArray<(Surroundings Surroundings, string Label)> Stated, MissingDatum? Hidden) SurroundingsOf(Rail rail) => SurroundingsOf(rail, null);

    private (ImmutableArray<(Surroundings Surroundings, string Label)> Stated, MissingDatum? Hidden) SurroundingsOf(Rail? rail, PartPlace? place)
    {
        var result = ImmutableArray.CreateBuilder<(Surroundings, string)>();
        MissingDatum? hidden = null;
        if (place is not null)
        {
            Add(place.Part, place.Part.Surroundings, place.Label);
        }

        var seen = new HashSet<Rail>();
        while (rail is not null && seen.Add(rail))
        {
            Add(rail, rail.Surroundings, Label(rail));
            rail = Suppliers(rail).Select(supplying => supplying.From as Rail ?? (supplying.From as Converter)?.Input).FirstOrDefault(above => above is not null);
        }

        return (result.ToImmutable(), hidden);

        void Add(object owner, Surroundings? surroundings, string label)
        {
            if (surroundings is not null)
            {
                result.Add((surroundings, label));
            }
            else if (IsUnknown(owner, nameof(Rail.Surroundings)))
            {
                hidden ??= new MissingDatum(new DatumPlace(owner, nameof(Rail.Surroundings)), label);
            }
        }
    }

    /// <summary>What a part states of its material and make; null: a kind of part that has no such data.</summary>
    internal static Make? MakeOf(Element part) => part switch
    {
        Fuse fuse => new(fuse.Flammability, fuse.Joint, fuse.Qualifications),
        CircuitBreaker breaker => new(breaker.Flammability, breaker.Joint, breaker.Qualifications),
        ResettableFuse resettable => new(resettable.Flammability, resettable.Joint, resettable.Qualifications),
        ElectronicFuse electronic => new(electronic.Flammability, electronic.Joint, electronic.Qualifications),
        Connector connector => new(connector.Flammability, connector.Joint, connector.Qualifications),
        FuseHolder holder => new(holder.Flammability, holder.Joint, holder.Qualifications),
        _ => null,
    };

    /// <summary>Material and make of a part.</summary>
    internal sealed record Make(Flammability? Flammability, Joint? Joint, ImmutableArray<string>? Qualifications);

    /// <summary>
    /// Power (W) that can stay available at a part, V_high × the current that may flow for longer than conventional times: the smallest of what surely opens each
    /// device up to and with the part, of the sustained limits of the sources, and of what the path lets through; never below the steady current. Bounds.
    /// </summary>
    internal (Range Power, ImmutableArray<MissingDatum> Missing) AvailablePower(PartPlace place)
    {
        var missing = new List<MissingDatum>();
        var voltage = VoltagesOf(place.Rail).High;
        missing.AddRange(voltage.Missing);
        var persistent = PersistentUpTo(place, missing);
        var steady = CurrentOf(place);
        var least = steady.Reason == FlowReason.Solved && !double.IsInfinity(steady.Low) ? steady.Low : 0;
        var current = new Range(Math.Max(persistent.Low, Math.Min(least, persistent.High)), persistent.High);
        var volts = voltage.IsKnown ? Range.Exactly(voltage.Value) : new Range(voltage.Value, double.PositiveInfinity);
        return (new Range(volts.Low * current.Low, current.High == 0 ? 0 : volts.High * current.High), Rules.Subject.Distinct(missing));
    }

    private Range PersistentUpTo(PartPlace place, List<MissingDatum> missing)
    {
        var rail = place.Rail;
        var index = place.Place.Index ?? 0;
        if (place.InReturn)
        {
            // Behind the whole path: the return carries what the path lets through.
            return OfRail(rail, Items(rail.Path).Length, missing, 0);
        }

        return place.Feed is { } feed
            ? Least(OfSource(rail, feed.From, missing, 0), Through(rail, Items(feed.Path), index + 1, missing))
            : OfRail(rail, index + 1, missing, 0);
    }

    private Range OfRail(Rail rail, int count, List<MissingDatum> missing, int depth)
    {
        if (depth > Rails.Length)
        {
            return Anything;
        }

        var all = Suppliers(rail);
        double low = 0, high = 0;
        foreach (var supplying in all)
        {
            var one = OfSource(rail, supplying.From, missing, depth + 1);
            if (supplying.Feed is { } feed)
            {
                one = Least(one, Through(rail, Items(feed.Path), int.MaxValue, missing));
            }

            (low, high) = (Math.Max(low, one.Low), high + one.High);
        }

        return Least(new Range(low, high), Through(rail, Items(rail.Path), count, missing));
    }

    private Range OfSource(Rail below, Source? source, List<MissingDatum> missing, int depth)
    {
        switch (source)
        {
            case Rail rail:
                return OfRail(rail, int.MaxValue, missing, depth);
            case Supply supply:
                return Sustained(below, supply.CurrentLimit, supply, supply.SourceResistance is { } inner && supply.Voltage is { } volts && inner.Max.Ohms > 0 ? volts.Max.Volts / inner.Max.Ohms : null, missing);
            case Converter converter:
                return Sustained(below, converter.CurrentLimit, converter, null, missing);
            default:
                return Anything;
        }
    }

    /// <summary>What a source sustains: its limit where hardware makes it, nothing after a latch-off. Not limited: at least nothing, at most everything.</summary>
    private Range Sustained(Rail below, CurrentLimit? limit, Source source, double? stiff, List<MissingDatum> missing)
    {
        if (IsUnknown(source, nameof(Supply.CurrentLimit)))
        {
            missing.Add(new MissingDatum(new DatumPlace(source, nameof(Supply.CurrentLimit)), Label(source)));
            return Anything;
        }

        if (limit?.Level is not { } level || (limit.LimitedBy == LimitedBy.Firmware && !PolicyAt(below).Policy.CreditFirmwareLimits))
        {
            return new Range(stiff ?? 0, double.PositiveInfinity);
        }

        var most = limit.Style == CurrentLimitStyle.LatchOff && limit.TripTime is not null ? 0 : level.Max.Amperes;
        var least = limit.Style is CurrentLimitStyle.ConstantCurrent ? level.Min.Amperes : 0;
        return new Range(Math.Min(least, most), most);
    }

    /// <summary>The smallest current that surely opens one of the devices among the first elements of a path.</summary>
    private Range Through(Rail rail, ImmutableArray<Element> path, int count, List<MissingDatum> missing)
    {
        var result = Anything with { Low = double.PositiveInfinity };
        for (var i = 0; i < path.Length && i < count; i++)
        {
            if (path[i] is { } element && SureOpening(element, rail, Label(element, rail, i), missing) is { } sure)
            {
                result = Least(result, sure);
            }
        }

        return result;
    }

    /// <summary>Current (A) that opens a device for certain within its conventional time, between bounds; null: no such device.</summary>
    private Range? SureOpening(Element element, Rail rail, string label, List<MissingDatum> missing)
    {
        switch (element)
        {
            case Fuse { RatedCurrent: { } rated } fuse:
                var multiple = fuse.Characteristic is { } family ? StandardGates.SureOpeningMultiple(family, rated.Amperes)
                    : fuse.RatingBasis == RatingBasis.CarriesThreeQuarters ? 1.35 : null;
                var partial = fuse.MinimumBreakingCurrent?.Amperes ?? 0;
                return multiple is { } sure
                    ? Range.Exactly(Math.Max(partial, sure * rated.Amperes))
                    : new Range(Math.Max(partial, rated.Amperes), Math.Max(partial, 2.1 * rated.Amperes));
            case CircuitBreaker { RatedCurrent: { } rated } breaker:
                return Range.Exactly(rated.Amperes * (breaker.ConventionalTripMultiple ?? 1.45));
            case ResettableFuse { TripCurrent: { } trip } resettable:
                return TripRange(resettable, rail, trip.Amperes);
            case ElectronicFuse { TripLevel: { } level }:
                return Range.Exactly(level.Max.Amperes);
            case Fuse or CircuitBreaker or ResettableFuse or ElectronicFuse:
                missing.Add(new MissingDatum(
                    new DatumPlace(element, element is ElectronicFuse ? nameof(ElectronicFuse.TripLevel) : element is ResettableFuse ? nameof(ResettableFuse.TripCurrent) : nameof(Fuse.RatedCurrent)), label));
                return Anything;
            default:
                return null;
        }
    }

    /// <summary>Trip current (A) in the coldest air; without a curve at least that at the reference, and without bound.</summary>
    private Range TripRange(ResettableFuse resettable, Rail rail, double trip)
    {
        var points = Items(resettable.TripDerating.IsDefaultOrEmpty ? resettable.Derating : resettable.TripDerating)
            .Where(point => point is not null).Select(point => (point.Ambient.DegreesCelsius, point.Factor)).ToArray();
        if (points.Length == 0)
        {
            return new Range(trip, double.PositiveInfinity);
        }

        var coldest = AirAt(rail, resettable.Surroundings, resettable).Ambient?.Low ?? LowestAmbient;
        var factor = Physics.Derating.Factor(points, coldest);
        return new Range(trip * factor.Low, trip * factor.High);
    }

    private static Range Least(Range a, Range b) => new(Math.Min(a.Low, b.Low), Math.Min(a.High, b.High));
}
