using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>What bounds the current in a place for long: devices and source limits above, and the bounds of all that leaves it.</content>
public sealed partial class Network
{
    private (ImmutableArray<Bound>[] Above, ImmutableArray<Bound>[] Leaving)? bounds;

    /// <summary>Something that bounds a current for long.</summary>
    /// <param name="Steady">What it lets flow for ever (A).</param>
    /// <param name="Sure">What it lets flow for no longer than its conventional time (A).</param>
    /// <param name="Label">What people call it.</param>
    /// <param name="Owner">The part or source; null where several together bound.</param>
    /// <param name="Missing">The data without which it is not exact.</param>
    internal sealed record Bound(Range Steady, Range Sure, string Label, object? Owner, ImmutableArray<MissingDatum> Missing)
    {
        /// <summary>How long more than <see cref="Steady"/> may flow, in words.</summary>
        internal string Until { get; init; } = "until it opens";
    }

    /// <summary>
    /// What bounds the current through a place for long, the surest first: devices in its series, those above and the limits of sources, and those of all that leaves it.
    /// Several feeds bound together, by their sum, and only if each is bounded. A return that several rails share carries the sum of what bounds each.
    /// </summary>
    internal ImmutableArray<Bound> BoundsOf(PartPlace place)
    {
        if (IsCyclic(place.Rail))
        {
            return [];
        }

        if (place.InReturn)
        {
            var back = place.Feed is null ? place.Rail.Return! : place.Feed.Return!;
            var all = Sharers(back);
            return all.Count > 1 ? Together([.. all.Select(one => Series(one.Rail, one.Supplier))], "the devices of the rails that share it") : Best(Series(place.Rail, place.Supplier));
        }

        var outer = Series(place.Rail, place.Supplier);
        foreach (var (group, branch) in place.Branches)
        {
            outer = outer.AddRange(Devices(place.Rail, Items(Items(group.Branches)[branch])));
        }

        return Best(outer);
    }

    /// <summary>What a bare parallel group of conductors bears for ever (A): the current at which the first branch, with the largest share it can take, reaches its own.</summary>
    internal Continuous ContinuousOf(PartPlace place, ParallelGroup group)
    {
        var branches = Items(group.Branches);
        var result = Anything with { Low = double.PositiveInfinity };
        var missing = ImmutableArray.CreateBuilder<MissingDatum>();
        for (var b = 0; b < branches.Length; b++)
        {
            var own = Anything with { Low = double.PositiveInfinity };
            var elements = Items(branches[b]);
            for (var i = 0; i < elements.Length; i++)
            {
                if (elements[i] is { } element && ContinuousCurrent(place.Rail, element, Label(element, place.Rail, i)) is { } bears)
                {
                    own = new Range(Math.Min(own.Low, bears.Range.Low), Math.Min(own.High, bears.Range.High));
                    missing.AddRange(bears.Missing);
                }
            }

            // Conductors of one kind and length share equally: IEC 60364-4-43, 433.4.1 (from memory).
            var alike = branches.All(other => Items(other).SequenceEqual(elements));
            var share = Range.Exactly(1.0 / branches.Length);
            if (!alike)
            {
                var (fraction, gaps, _, _) = LargestShare(place, group, b, Range.Exactly(1));
                share = fraction;
                missing.AddRange(gaps);
            }

            result = new Range(Math.Min(result.Low, own.Low / share.High), Math.Min(result.High, share.Low > 0 ? own.High / share.Low : double.PositiveInfinity));
        }

        return new Continuous(new Range(double.IsInfinity(result.Low) ? 0 : result.Low, result.High), missing.ToImmutable());
    }

    private ImmutableArray<Bound> Series(Rail rail, int supplier)
    {
        var (above, leaving) = bounds ??= FindBounds();
        var index = indexOf[rail];
        var own = Devices(rail, Items(rail.Path)).AddRange(leaving[index]);
        if (supplier < 0)
        {
            return above[index].AddRange(own);
        }

        var one = suppliers[index][supplier];
        return Arriving(rail, one, above).AddRange(own);
    }

    private (ImmutableArray<Bound>[] Above, ImmutableArray<Bound>[] Leaving) FindBounds()
    {
        var above = new ImmutableArray<Bound>[Rails.Length];
        var leaving = new ImmutableArray<Bound>[Rails.Length];
        for (var i = 0; i < Rails.Length; i++)
        {
            above[i] = leaving[i] = [];
        }

        foreach (var i in downstream)
        {
            var arriving = suppliers[i].Select(one => Arriving(Rails[i], one, above)).ToList();
            above[i] = arriving.Count == 1 ? Best(arriving[0]) : Together(arriving, "the devices of its feeds");
        }

        for (var n = downstream.Length - 1; n >= 0; n--)
        {
            leaving[downstream[n]] = Leaving(downstream[n], leaving);
        }

        return (above, leaving);
    }

    /// <summary>What bounds the current of one feed at the beginning of the rail's own path.</summary>
    private ImmutableArray<Bound> Arriving(Rail rail, Supplying one, ImmutableArray<Bound>[] above)
    {
        var result = one.Feed is { } feed ? Devices(rail, Items(feed.Path)) : [];
        return one.From switch
        {
            Rail parent => result.AddRange(above[indexOf[parent]]).AddRange(Devices(parent, Items(parent.Path))),
            { } source when LimitOf(source, rail) is { } limit => result.Add(limit),
            _ => result,
        };
    }

    private ImmutableArray<Bound> Leaving(int rail, ImmutableArray<Bound>[] leaving)
    {
        var parts = new List<ImmutableArray<Bound>>();
        var loads = Items(Rails[rail].Loads);
        for (var i = 0; i < loads.Length; i++)
        {
            if (loads[i] is { } load)
            {
                parts.Add(load.OverloadLimit is { } limit && !IsUnknown(load, nameof(Load.OverloadLimit))
                    ? [new Bound(Range.Exactly(limit.Amperes), Range.Exactly(limit.Amperes), Label(load, Rails[rail], i), load, []) { Until = "for ever" }]
                    : []);
            }
        }

        parts.AddRange(convertersOn[rail].Select(_ => ImmutableArray<Bound>.Empty));
        if (IsUnknown(Rails[rail], nameof(Rail.Loads)))
        {
            return [];
        }

        foreach (var child in children[rail])
        {
            foreach (var one in suppliers[child])
            {
                if (ReferenceEquals(one.From, Rails[rail]))
                {
                    var path = one.Feed is { } feed ? Devices(Rails[child], Items(feed.Path)) : [];
                    parts.Add(path.AddRange(Devices(Rails[child], Items(Rails[child].Path))).AddRange(leaving[child]));
                }
            }
        }

        return parts.Count == 0 ? [] : parts.Count == 1 ? Best(parts[0]) : Together(parts, "the devices of all that leaves it");
    }

    /// <summary>The devices of a path as bounds; a parallel group of them by their sum.</summary>
    private ImmutableArray<Bound> Devices(Rail rail, ImmutableArray<Element> path)
    {
        var result = ImmutableArray.CreateBuilder<Bound>();
        for (var i = 0; i < path.Length; i++)
        {
            if (path[i] is ParallelGroup group)
            {
                result.AddRange(Together([.. Items(group.Branches).Select(branch => Devices(rail, Items(branch)))], Label(group, rail, i)));
            }
            else if (path[i] is { } part && BoundOf(new PartPlace(part, rail, null, -1, new DatumPlace(rail, nameof(Rail.Path), i), Label(part, rail, i), false, [])) is { } bound)
            {
                result.Add(bound);
            }
        }

        return result.ToImmutable();
    }

    private Bound? BoundOf(PartPlace place)
    {
        if (SureOpening(place) is not { } sure)
        {
            return null;
        }

        var (steady, missing) = place.Part switch
        {
            Fuse fuse => Rated(fuse.RatedCurrent?.Amperes, nameof(Fuse.RatedCurrent)),
            CircuitBreaker breaker => Rated(breaker.RatedCurrent?.Amperes, nameof(CircuitBreaker.RatedCurrent)),
            ElectronicFuse electronic => Rated(electronic.TripLevel?.Max.Amperes, nameof(ElectronicFuse.TripLevel)),
            ResettableFuse resettable => HoldsInTheCold(place, resettable),
            _ => (Anything, []),
        };
        var hours = place.Part switch
        {
            Fuse { Characteristic: Characteristic.Iec60269gG, RatedCurrent: { } rated } => StandardGates.ConventionalTime(rated.Amperes) / 3600,
            Fuse or CircuitBreaker => 1.0,
            _ => 0,
        };
        return new Bound(steady, sure.Current, place.Label, place.Part, sure.Missing.AddRange(missing)) { Until = hours > 0 ? $"for up to {Figures.Digits(hours)} h" : "until it trips" };

        (Range, ImmutableArray<MissingDatum>) Rated(double? amperes, string datum) =>
            amperes is { } known ? (Range.Exactly(known), []) : (Anything, [new MissingDatum(new DatumPlace(place.Part, datum), place.Label)]);
    }

    /// <summary>The hold current of a resettable fuse in the coldest air: the most it carries for ever.</summary>
    private (Range Steady, ImmutableArray<MissingDatum> Missing) HoldsInTheCold(PartPlace place, ResettableFuse resettable)
    {
        if (resettable.HoldCurrent?.Amperes is not { } hold)
        {
            return (Anything, [new MissingDatum(new DatumPlace(resettable, nameof(ResettableFuse.HoldCurrent)), place.Label)]);
        }

        var air = AirAt(place.Rail, resettable.Surroundings, resettable);
        var points = Items(resettable.Derating).Where(point => point is not null).Select(point => (point.Ambient.DegreesCelsius, point.Factor)).OrderBy(point => point.DegreesCelsius).ToArray();
        return points.Length > 0 && air.Ambient is { } ambient
            ? (Range.Exactly(hold * Physics.Derating.Factor(points, ambient.Low).High), [])
            : (new Range(hold, ColdFactor * hold), [new MissingDatum(points.Length > 0 ? air.AmbientPlace : new DatumPlace(resettable, nameof(ResettableFuse.Derating)), points.Length > 0 ? AirLabel(air.AmbientPlace, place.Label) : place.Label)]);
    }

    /// <summary>The limit of a source as a bound: what is below its level flows for ever, whatever it does above. A limit made by firmware is not credited unless the policy says so.</summary>
    private Bound? LimitOf(Source source, Rail rail)
    {
        var limit = source switch { Supply { ProspectiveFault: null } supply => supply.CurrentLimit, Converter converter => converter.CurrentLimit, _ => null };
        if (limit?.Level is not { } level || (limit.LimitedBy == LimitedBy.Firmware && !PolicyAt(rail).Policy.CreditFirmwareLimits))
        {
            return null;
        }

        var shown = limit.LimitedBy is not null;
        var range = new Range(level.Max.Amperes, shown ? level.Max.Amperes : double.PositiveInfinity);
        return new Bound(range, range, Label(source), source, shown ? [] : [new MissingDatum(new DatumPlace(limit, nameof(CurrentLimit.LimitedBy)), Label(source))]) { Until = "for ever" };
    }

    /// <summary>The sum of what bounds each of several ways; none if one of them is not bounded.</summary>
    private static ImmutableArray<Bound> Together(List<ImmutableArray<Bound>> ways, string label)
    {
        if (ways.Count == 0 || ways.Any(way => way.IsEmpty))
        {
            return [];
        }

        var best = ways.Select(way => Best(way)[0]).ToList();
        var names = best.Select(one => one.Label).Distinct().ToList();
        return
        [
            new Bound(
                new Range(best.Sum(one => one.Steady.Low), best.Sum(one => one.Steady.High)),
                new Range(best.Sum(one => one.Sure.Low), best.Sum(one => one.Sure.High)),
                names.Count == 1 ? $"{best.Count} × {names[0]}" : label,
                null,
                [.. best.SelectMany(one => one.Missing)]) { Until = best[0].Until },
        ];
    }

    /// <summary>The surest and the one that lets least flow for ever, each once; a long chain of devices asks for no more.</summary>
    private static ImmutableArray<Bound> Best(ImmutableArray<Bound> all) => all.Length <= 1
        ? all
        : [.. new[]
        {
            all.OrderBy(one => one.Sure.High).ThenBy(one => one.Steady.High).First(),
            all.OrderBy(one => one.Sure.Low).ThenBy(one => one.Steady.High).First(),
            all.OrderBy(one => one.Steady.High).ThenBy(one => one.Sure.High).First(),
        }.Distinct()];
}
