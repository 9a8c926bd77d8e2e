using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>
/// RAIL0007: a broken topology. Structural: rails that feed themselves, a rail without source, one designator at two places.
/// </summary>
/// <remarks>
/// A part record used in many paths is a type of part, not one device, so object identity says nothing about places; only designators do.
/// A <see cref="Return"/> that several rails share is one conductor, so its elements stand at one place.
/// </remarks>
public sealed class BrokenTopology : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0007",
        "A broken topology",
        RuleSeverity.Error,
        "A rail feeds itself, has no source, or shares a designator with another place, so that no current can be worked out for it.")
    {
        Basis = "structural; designators: IEC 81346-1, one designation for one object (from memory)",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        var rails = Upstream.Rails(network.Rails);
        var faulty = new HashSet<Rail>();
        foreach (var check in Cycles(rails).Concat(rails.SelectMany(rail => Sources(rail, network))).Concat(Designators(rails)))
        {
            faulty.Add(check.Rail!);
            foreach (var place in check.Places)
            {
                if (place.Owner is Rail other)
                {
                    faulty.Add(other);
                }
            }

            yield return check;
        }

        foreach (var rail in rails)
        {
            if (!faulty.Contains(rail) && !network.IsUnknown(rail, nameof(Rail.From)) && !network.IsUnknown(rail, nameof(Rail.Feeds)))
            {
                yield return Of(rail, Verdict.Holds, $"'{rail.Name}' has a source, feeds no rail above it, and has its designators to itself", [new(rail)]);
            }
        }
    }

    private static Check Of(Rail rail, Verdict verdict, string message, ImmutableArray<DatumPlace> places) =>
        new("RAIL0007", $"'{rail.Name}': topology", verdict, null, message) { Rail = rail, Basis = "structural", Places = places };

    private static IEnumerable<Check> Cycles(ImmutableArray<Rail> rails)
    {
        var order = rails.Select((rail, index) => (rail, index)).ToDictionary(entry => (Source)entry.rail, entry => entry.index);
        foreach (var circle in Circles(rails))
        {
            var members = circle.OfType<Rail>().OrderBy(rail => order[rail]).ToList();
            if (members.Count == 0)
            {
                continue;
            }

            // The way round, from the first rail against the current.
            var first = members[0];
            var way = WayRound(first, [.. circle]);
            var through = way.Count == 0 ? "itself alone" : Listed(way.Select(source => source.Name));
            yield return Of(
                first,
                Verdict.Fails,
                $"'{first.Name}' feeds itself through {through}",
                [.. new[] { first }.Concat(way.OfType<Rail>()).Select(rail => new DatumPlace(rail, rail.From is null ? nameof(Rail.Feeds) : nameof(Rail.From)))]);
        }
    }

    private static string Listed(IEnumerable<string> names)
    {
        var list = names.ToList();
        return string.Join(", ", list.Take(5).Select(name => $"'{name}'")) + (list.Count > 5 ? $" and {list.Count - 5} more" : "");
    }

    /// <summary>The shortest way from a source up through a circle back to it, the source itself left out.</summary>
    private static List<Source> WayRound(Source start, HashSet<Source> circle)
    {
        var cameFrom = new Dictionary<Source, Source>();
        var work = new Queue<Source>();
        work.Enqueue(start);
        while (work.Count > 0)
        {
            var current = work.Dequeue();
            foreach (var above in Upstream.Of(current).Where(circle.Contains))
            {
                if (above == start)
                {
                    var way = new List<Source>();
                    for (var step = current; step != start; step = cameFrom[step])
                    {
                        way.Add(step);
                    }

                    way.Reverse();
                    return way;
                }

                if (!cameFrom.ContainsKey(above))
                {
                    cameFrom.Add(above, current);
                    work.Enqueue(above);
                }
            }
        }

        return [];
    }

    /// <summary>The sets of sources that feed each other in a circle (Tarjan's strongly connected components, with a stack of our own).</summary>
    private static IEnumerable<List<Source>> Circles(ImmutableArray<Rail> rails)
    {
        var numbers = new Dictionary<Source, int>();
        var lowest = new Dictionary<Source, int>();
        var open = new HashSet<Source>();
        var path = new Stack<Source>();
        var work = new Stack<(Source Source, IEnumerator<Source> Above)>();
        foreach (var rail in rails)
        {
            if (!numbers.ContainsKey(rail))
            {
                Enter(rail);
            }

            while (work.Count > 0)
            {
                var (current, above) = work.Peek();
                if (above.MoveNext())
                {
                    if (!numbers.ContainsKey(above.Current))
                    {
                        Enter(above.Current);
                    }
                    else if (open.Contains(above.Current))
                    {
                        lowest[current] = Math.Min(lowest[current], numbers[above.Current]);
                    }

                    continue;
                }

                work.Pop();
                if (work.Count > 0)
                {
                    var below = work.Peek().Source;
                    lowest[below] = Math.Min(lowest[below], lowest[current]);
                }

                if (lowest[current] == numbers[current])
                {
                    var circle = new List<Source>();
                    Source member;
                    do
                    {
                        member = path.Pop();
                        open.Remove(member);
                        circle.Add(member);
                    }
                    while (member != current);

                    if (circle.Count > 1 || Upstream.Of(current).Contains(current))
                    {
                        yield return circle;
                    }
                }
            }
        }

        void Enter(Source source)
        {
            numbers[source] = lowest[source] = numbers.Count;
            open.Add(source);
            path.Push(source);
            work.Push((source, Upstream.Of(source).GetEnumerator()));
        }
    }

    private static IEnumerable<Check> Sources(Rail rail, Network network)
    {
        if (network.IsUnknown(rail, nameof(Rail.From)) || network.IsUnknown(rail, nameof(Rail.Feeds)))
        {
            yield break;
        }

        if (rail.Feeds.IsDefaultOrEmpty)
        {
            if (rail.From is null)
            {
                yield return Of(rail, Verdict.Fails, $"'{rail.Name}' has no source; state From, or Feeds where there are several", [new(rail, nameof(Rail.From)), new(rail)]);
            }

            yield break;
        }

        if (rail.From is { } from)
        {
            yield return Of(
                rail,
                Verdict.Fails,
                $"'{rail.Name}' has both From ('{from.Name}') and Feeds; a rail has one source or a list of feeds, so make '{from.Name}' a feed too",
                [new(rail, nameof(Rail.From)), new(rail, nameof(Rail.Feeds))]);
        }

        for (var index = 0; index < rail.Feeds.Length; index++)
        {
            if (rail.Feeds[index] is not { } feed)
            {
                yield return Of(rail, Verdict.Fails, $"'{rail.Name}' has no source in feed {index + 1}: the feed is null", [new(rail, nameof(Rail.Feeds), index)]);
            }
            else if (feed.From is null && !network.IsUnknown(feed, nameof(Feed.From)))
            {
                yield return Of(rail, Verdict.Fails, $"'{rail.Name}' has no source in feed {index + 1}; state its From", [new(feed, nameof(Feed.From)), new(rail, nameof(Rail.Feeds), index)]);
            }
        }
    }

    private static IEnumerable<Check> Designators(ImmutableArray<Rail> rails)
    {
        var first = new Dictionary<string, Place>(StringComparer.Ordinal);
        var returns = new HashSet<object>(Network.ByReference.Instance);
        foreach (var place in rails.SelectMany(rail => PlacesOn(rail, returns)))
        {
            if (!first.TryGetValue(place.Designator, out var other))
            {
                first.Add(place.Designator, place);
                continue;
            }

            // One breaker with poles in the live conductor and in the return stands in both.
            if (place.Rail == other.Rail && place.Part is CircuitBreaker && place.Part.Equals(other.Part) && (place.Where.Datum == nameof(Rail.Return)) != (other.Where.Datum == nameof(Rail.Return)))
            {
                continue;
            }

            yield return Of(
                place.Rail,
                Verdict.Fails,
                place.Rail == other.Rail ? $"'{place.Rail.Name}' contains {place.Designator} twice" : $"'{other.Rail.Name}' and '{place.Rail.Name}' both contain {place.Designator}",
                [place.Where, new(place.Part, nameof(Element.Designator)), other.Where, new(other.Part, nameof(Element.Designator))]);
        }
    }

    private static IEnumerable<Place> PlacesOn(Rail rail, HashSet<object> returns)
    {
        foreach (var place in Along(rail, rail.Path, rail, nameof(Rail.Path)).Concat(Back(rail, rail.Return, rail, returns)))
        {
            yield return place;
        }

        foreach (var feed in rail.Feeds.IsDefault ? [] : rail.Feeds)
        {
            if (feed is not null)
            {
                foreach (var place in Along(rail, feed.Path, feed, nameof(Feed.Path)).Concat(Back(rail, feed.Return, feed, returns)))
                {
                    yield return place;
                }
            }
        }

        for (var index = 0; !rail.Clamps.IsDefault && index < rail.Clamps.Length; index++)
        {
            if (rail.Clamps[index] is { Designator: { Length: > 0 } designator } clamp)
            {
                yield return new Place(designator, rail, clamp, new(rail, nameof(Rail.Clamps), index));
            }
        }

        for (var index = 0; !rail.Capacitors.IsDefault && index < rail.Capacitors.Length; index++)
        {
            if (rail.Capacitors[index] is { Designator: { Length: > 0 } designator } capacitor)
            {
                yield return new Place(designator, rail, capacitor, new(rail, nameof(Rail.Capacitors), index));
            }
        }
    }

    private static IEnumerable<Place> Back(Rail rail, Return? back, object owner, HashSet<object> returns) =>
        back is null || back.IsMirrored || !returns.Add(back) ? [] : Along(rail, back.Elements, owner, nameof(Rail.Return));

    private static IEnumerable<Place> Along(Rail rail, ImmutableArray<Element> path, object owner, string datum)
    {
        for (var index = 0; !path.IsDefault && index < path.Length; index++)
        {
            // A return is one datum of its rail; the elements of a path and of a group's branches are shown at the element of the path.
            var where = new DatumPlace(owner, datum, datum == nameof(Rail.Return) ? null : index);
            var work = new Stack<Element?>();
            work.Push(path[index]);
            while (work.Count > 0)
            {
                var element = work.Pop();
                if (element is { Designator: { Length: > 0 } designator })
                {
                    yield return new Place(designator, rail, element, where);
                }

                if (element is ParallelGroup { Branches: { IsDefault: false } branches })
                {
                    foreach (var inner in branches.Where(branch => !branch.IsDefault).SelectMany(branch => branch).Reverse())
                    {
                        work.Push(inner);
                    }
                }
            }
        }
    }

    private readonly record struct Place(string Designator, Rail Rail, object Part, DatumPlace Where);
}
