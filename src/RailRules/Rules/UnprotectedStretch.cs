using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0307: a stretch of conductor, or a load, with no protection upstream of it.</summary>
public sealed partial class UnprotectedStretch : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0307",
        "A stretch of conductor, or a load, without protection",
        RuleSeverity.Error,
        "A conductor, contact or load can be reached from a source, from either side, through no fuse, breaker or electronic fuse, and the source has no hardware limit that it bears.")
    {
        Basis = "A device at the source end of each conductor: AC 43.13-1B, 11-47; 46 CFR 111.50-3(a); free length: common practice, no source",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        var reached = new Dictionary<DatumPlace, Reach>();
        foreach (var source in network.Sources)
        {
            new Walk(network, source, reached).Run();
        }

        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail, nameof(Rail.Loads)))
            {
                yield return hidden;
            }

            if (!IsFed(network, rail))
            {
                var from = new DatumPlace(rail, nameof(Rail.From));
                yield return Subject.Of(Description, rail, from).ToUndecided([new MissingDatum(from, Network.Label(rail))]);
                continue;
            }

            foreach (var place in TopLevel(network, rail))
            {
                if (IsJudged(place.Part) && place.Part.ShortCircuitProof != true && !place.InReturn)
                {
                    var subject = Subject.Of(Description, place, DatumOf(place.Part));
                    if (Judge(subject, reached.TryGetValue(place.Place, out var found) ? found : null, () => Guard(network, place)) is { } check)
                    {
                        yield return check;
                    }
                }
            }

            var loads = Network.Items(rail.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                if (loads[i] is { OverloadLimit: null } load)
                {
                    var subject = Subject.Of(Description, rail, nameof(Rail.Loads), i, load, Network.Label(load, rail, i), nameof(Load.OverloadLimit));
                    if (Judge(subject, reached.TryGetValue(new DatumPlace(rail, nameof(Rail.Loads), i), out var found) ? found : null, () => GuardAtEnd(network, rail)) is { } check)
                    {
                        yield return check;
                    }
                }
            }

            foreach (var converter in network.ConvertersOn(rail))
            {
                var place = new DatumPlace(converter, nameof(Converter.Input));
                if (Judge(Subject.Of(Description, rail, place, converter, place), reached.TryGetValue(place, out var found) ? found : null, () => GuardAtEnd(network, rail)) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private static Check? Judge(Subject subject, Reach? found, Func<string?> guard)
    {
        if (found is null)
        {
            return subject.ToStructural(true, guard() is { } device ? $"{subject.Where} is reached through '{device}' only" : $"{subject.Where} is reached from no source without a device");
        }

        switch (found.Outcome)
        {
            case Outcome.Free:
                return null;
            case Outcome.Holds:
                return subject.ToStructural(true, $"{subject.Where} is bounded by the limit of '{found.Source}'", [.. found.Working]) with { Assumptions = ["bounded by the source"] };
            case Outcome.Undecided:
                return subject.ToUndecided(found.Missing) with { Working = [.. found.Working] };
            default:
                var length = found.Length is { } meters ? $"{Figures.Text(meters, "m")} of " : "";
                var current = found.Current is { } amperes ? $"carries up to {Figures.Text(amperes, "A")} from '{found.Source}'" : $"carries whatever '{found.Source}' delivers";
                return subject.ToStructural(false, $"{length}{subject.Where} {current} before any device", [.. found.Working]) with
                {
                    Demand = found.Current is { } demand ? new Figure(demand, "A") : null,
                    Corner = "highest voltage, each source in both directions",
                };
        }
    }

    private static bool IsFed(Network network, Rail rail) =>
        !network.IsCyclic(rail) && network.Suppliers(rail).Any(supplying => supplying.From is not null and not Rail || (supplying.From is Rail above && network.FedRails.Contains(above)));

    /// <summary>Conductors and contacts; other elements in series pass the walk on but are not judged here.</summary>
    internal static bool IsJudged(Element element) => element is Wire or Trace or Busbar or Connector or FuseHolder or Switch or ParallelGroup;

    /// <summary>Fuses, breakers, resettable and electronic fuses; a parallel group if each branch has one.</summary>
    internal static bool IsDevice(Element element) => element switch
    {
        Fuse or CircuitBreaker or ResettableFuse or ElectronicFuse => true,
        ParallelGroup group => Network.Items(group.Branches) is { Length: > 0 } branches && branches.All(branch => Network.Items(branch).Any(one => one is not null && IsDevice(one))),
        _ => false,
    };

    private static string DatumOf(Element element) => element switch
    {
        Wire or Trace or Busbar => nameof(Wire.Length),
        Connector => nameof(Connector.ContactRating),
        ParallelGroup => nameof(ParallelGroup.Branches),
        _ => nameof(Switch.RatedCurrent),
    };

    private static IEnumerable<Network.PartPlace> TopLevel(Network network, Rail rail) => network.Parts(rail).Where(place => place.Branches.IsEmpty && !IsDevice(place.Part));

    private static string? Guard(Network network, Network.PartPlace place)
    {
        var path = Network.Items(place.Feed is { } feed ? feed.Path : place.Rail.Path);
        for (var i = (place.Place.Index ?? 0) - 1; i >= 0; i--)
        {
            if (path[i] is { } element && IsDevice(element))
            {
                return Network.Label(element, place.Rail, i);
            }
        }

        return place.Supplier >= 0 ? GuardAbove(network, place.Rail, place.Supplier) : GuardOfFeeds(network, place.Rail);
    }

    private static string? GuardAtEnd(Network network, Rail rail) => Last(Network.Items(rail.Path), rail) ?? GuardOfFeeds(network, rail);

    private static string? GuardOfFeeds(Network network, Rail rail)
    {
        var feeds = network.Suppliers(rail);
        for (var k = 0; k < feeds.Length; k++)
        {
            if ((feeds[k].Feed is { } feed ? Last(Network.Items(feed.Path), rail) : null) is { } own)
            {
                return own;
            }

            if (GuardAbove(network, rail, k) is { } above)
            {
                return above;
            }
        }

        return null;
    }

    private static string? GuardAbove(Network network, Rail rail, int supplier)
    {
        // Along the first feeds, so that a deep board is no deep recursion.
        var source = network.Suppliers(rail)[supplier].From;
        while (source is Rail above && !network.IsCyclic(above))
        {
            if (Last(Network.Items(above.Path), above) is { } own)
            {
                return own;
            }

            var next = network.Suppliers(above).FirstOrDefault();
            if (next.Feed is { } feed && Last(Network.Items(feed.Path), above) is { } fed)
            {
                return fed;
            }

            source = next.From;
        }

        return null;
    }

    private static string? Last(ImmutableArray<Element> path, Rail rail)
    {
        for (var i = path.Length - 1; i >= 0; i--)
        {
            if (path[i] is { } element && IsDevice(element))
            {
                return Network.Label(element, rail, i);
            }
        }

        return null;
    }
}
