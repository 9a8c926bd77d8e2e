using System.Collections.Immutable;

namespace RailRules;

/// <summary>
/// A board with another part in one place: copies of the rail, of all that it feeds and of nothing else, in a network of the rails that depend on each other. Its checks
/// are said of the board's own objects.
/// </summary>
internal sealed class Substitution
{
    private readonly Network network;
    private readonly Dictionary<object, object> originals = new(Network.ByReference.Instance);
    private readonly Dictionary<Source, Source> copies = new(Network.ByReference.Instance);

    /// <param name="network">The board.</param>
    /// <param name="place">The place.</param>
    /// <param name="index">Its number among the parts of its rail, as <see cref="Network.Parts(Rail)"/> counts.</param>
    /// <param name="part">The part that takes the place.</param>
    internal Substitution(Network network, Network.PartPlace place, int index, Element part)
    {
        this.network = network;
        Place = place;

        // What the place says of itself stays with the place.
        Part = part with
        {
            Designator = place.Part.Designator,
            Surroundings = part.Surroundings ?? place.Part.Surroundings,
            Policy = part.Policy ?? place.Part.Policy,
            Alternates = [],
        };
        originals.Add(Part, part);
        var below = Below(place.Rail);
        foreach (var source in below)
        {
            Copy(source, below, index);
        }

        var connected = network.ConnectedWith(place.Rail);
        var near = new HashSet<Source>(below.Concat(Above(place.Rail)), Network.ByReference.Instance);
        Network = new Network(connected.Select(rail => (Rail)Copied(rail)!), (owner, datum) => network.IsUnknown(Original(owner), datum));
        Network.JudgedRails = [.. connected.Where(near.Contains).Select(rail => (Rail)Copied(rail)!)];
    }

    /// <summary>The place in the board.</summary>
    internal Network.PartPlace Place { get; }

    /// <summary>The part, as it stands there.</summary>
    internal Element Part { get; }

    /// <summary>The network with the part in its place; judged are the rail, those that feed it and those that it feeds.</summary>
    internal Network Network { get; }

    /// <summary>The same check, of the board's own objects; what it says of the part that took the place it says of the part that stands there.</summary>
    internal Check ToOriginal(Check check) => check with
    {
        Rail = check.Rail is null ? null : (Rail)Original(check.Rail),
        Part = check.Part is null ? null : ReferenceEquals(check.Part, Part) ? Place.Part : Original(check.Part),
        Places = [.. check.Places.Select(ToOriginal)],
        Working = [.. check.Working.Select(step => step.Place is { } place ? step with { Place = ToOriginal(place) } : step)],
        Missing = [.. check.Missing.Select(datum => datum with { Place = ToOriginal(datum.Place) })],
        Named = [.. check.Named.Select(named => named with { Place = ToOriginal(named.Place), Element = Original(named.Element) })],
    };

    private DatumPlace ToOriginal(DatumPlace place) => place.Owner is { } owner ? place with { Owner = Original(owner) } : place;

    private object Original(object owner) => originals.TryGetValue(owner, out var found) ? found : owner;

    private Source? Copied(Source? source) => source is not null && copies.TryGetValue(source, out var copy) ? copy : source;

    /// <summary>The rail and all that it feeds, converters included.</summary>
    private HashSet<Source> Below(Rail rail)
    {
        var result = new HashSet<Source>(Network.ByReference.Instance);
        var open = new Stack<Source>([rail]);
        while (open.Count > 0)
        {
            var source = open.Pop();
            if (!result.Add(source))
            {
                continue;
            }

            foreach (var fed in network.FedBy(source).Concat(source is Rail above ? network.ConvertersOn(above) : Enumerable.Empty<Source>()))
            {
                open.Push(fed);
            }
        }

        return result;
    }

    private IEnumerable<Source> Above(Rail rail)
    {
        var seen = new HashSet<Rail>();
        var open = new Stack<Rail>([rail]);
        while (open.Count > 0)
        {
            var at = open.Pop();
            if (!seen.Add(at))
            {
                continue;
            }

            foreach (var supplying in network.Suppliers(at))
            {
                if ((supplying.From as Rail ?? (supplying.From as Converter)?.Input) is { } above)
                {
                    open.Push(above);
                }
            }
        }

        return seen;
    }

    private Source Copy(Source source, HashSet<Source> below, int index)
    {
        if (copies.TryGetValue(source, out var made))
        {
            return made;
        }

        Source? From(Source? from) => from is not null && below.Contains(from) && !(from is Rail rail && network.IsCyclic(rail)) ? Copy(from, below, index) : from;

        made = source switch
        {
            Converter converter => converter with { Input = (Rail?)From(converter.Input) },
            Rail rail => Copy(rail, From, ReferenceEquals(rail, Place.Rail) ? index : -1),
            _ => source,
        };
        copies[source] = made;
        originals[made] = source;
        return made;
    }

    private Rail Copy(Rail rail, Func<Source?, Source?> from, int wanted)
    {
        var count = 0;
        var feeds = Network.Items(rail.Feeds).Select(feed =>
        {
            if (feed is null)
            {
                return feed!;
            }

            var copy = feed with { From = from(feed.From), Path = Map(feed.Path, ref count, wanted), Return = Map(feed.Return, ref count, wanted) };
            originals[copy] = feed;
            return copy;
        }).ToImmutableArray();
        return rail with { From = from(rail.From), Feeds = feeds, Path = Map(rail.Path, ref count, wanted), Return = Map(rail.Return, ref count, wanted) };
    }

    private Return? Map(Return? back, ref int count, int wanted)
    {
        if (back is null || wanted < 0 || Network.Items(back.Elements).IsEmpty)
        {
            return back;
        }

        var before = count;
        var elements = Map(back.Elements, ref count, wanted);
        if (wanted < before || wanted >= count)
        {
            return back;
        }

        var copy = Return.Of([.. elements]);
        originals[copy] = back;
        return copy;
    }

    private ImmutableArray<Element> Map(ImmutableArray<Element> elements, ref int count, int wanted)
    {
        if (wanted < 0 || elements.IsDefault)
        {
            return elements;
        }

        var result = elements.ToBuilder();
        for (var i = 0; i < result.Count; i++)
        {
            result[i] = Map(result[i], ref count, wanted);
        }

        return result.ToImmutable();
    }

    private Element Map(Element element, ref int count, int wanted)
    {
        if (element is null)
        {
            return element!;
        }

        if (count++ == wanted)
        {
            // The parts inside a group that is replaced count on.
            count = int.MaxValue / 2;
            return Part;
        }

        if (element is not ParallelGroup group || count > wanted)
        {
            return element;
        }

        var branches = Network.Items(group.Branches).ToBuilder();
        for (var b = 0; b < branches.Count; b++)
        {
            branches[b] = Map(branches[b], ref count, wanted);
        }

        if (count < int.MaxValue / 2)
        {
            return element;
        }

        var copy = group with { Branches = branches.ToImmutable() };
        originals[copy] = element;
        return copy;
    }
}
