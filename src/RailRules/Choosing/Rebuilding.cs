using System.Collections.Immutable;

namespace RailRules.Choosing;

/// <summary>A board with some of its records replaced: what rests on a changed source is made anew, everything else is the same object.</summary>
internal sealed class Rebuilding
{
    private readonly Dictionary<object, object> originals = new(Network.ByReference.Instance);
    private readonly Dictionary<Source, Source> replaced = [];

    private Rebuilding()
    {
    }

    /// <summary>The board's rails, in their order.</summary>
    internal ImmutableArray<Rail> Rails { get; private set; }

    /// <summary>Rebuilds a board.</summary>
    /// <param name="rails">The rails; all that feed them are rebuilt too.</param>
    /// <param name="change">Gives a source's replacement, or the source itself; it may note which new record stands for which old one.</param>
    internal static Rebuilding Of(ImmutableArray<Rail> rails, Func<Source, Rebuilding, Source> change)
    {
        var result = new Rebuilding();
        foreach (var source in Upstream.FirstToLast(rails))
        {
            var made = change(source, result);
            made = made switch
            {
                Rail rail => result.Rewired(rail),
                Converter { Input: { } input } converter when result.Now(input) is var now && !ReferenceEquals(now, input) => converter with { Input = (Rail)now },
                _ => made,
            };
            if (!ReferenceEquals(made, source))
            {
                result.replaced[source] = made;
                result.Note(made, source);
            }
        }

        result.Rails = [.. rails.Select(rail => (Rail)result.Now(rail))];
        return result;
    }

    /// <summary>The board with a part in places; null takes away what stands there.</summary>
    internal static Rebuilding With(ImmutableArray<Rail> rails, ImmutableArray<Place> places, object? part) => Of(rails, (source, result) =>
    {
        if (source is Rail rail)
        {
            // From the last position to the first, so that positions keep their meaning while parts are put in or taken away.
            foreach (var place in places.Where(place => ReferenceEquals(place.Rail, rail)).OrderByDescending(place => place.Index))
            {
                source = result.Put((Rail)source, place, part);
            }
        }

        return source;
    });

    /// <summary>Notes which record a new one stands for.</summary>
    internal void Note(object made, object original) => originals[made] = Original(original);

    /// <summary>The record that the board has where this one stands; the record itself if nothing was replaced.</summary>
    internal object Original(object one) => originals.TryGetValue(one, out var original) ? original : one;

    internal Source Now(Source source) => replaced.TryGetValue(source, out var now) ? now : source;

    /// <summary>A part with what belongs to the place and not to the part: designator, surroundings, margins.</summary>
    internal object Placed(object part, object? before)
    {
        switch (part, before)
        {
            case (Element element, Element there) when there.Designator is not null || there.Surroundings is not null || there.Policy is not null:
                var placed = element with
                {
                    Designator = there.Designator ?? element.Designator,
                    Surroundings = there.Surroundings ?? element.Surroundings,
                    Policy = there.Policy ?? element.Policy,
                };
                Note(placed, element);
                return placed;
            case (TransientSuppressor clamp, TransientSuppressor { Designator: { } designator }):
                var named = clamp with { Designator = designator };
                Note(named, clamp);
                return named;
            default:
                return part;
        }
    }

    private Rail Put(Rail rail, Place place, object? part)
    {
        if (place.IsClamp)
        {
            return rail with { Clamps = Put(Network.Items(rail.Clamps), place.Index, place.IsEmpty, [], part) };
        }

        if (place.Feed is not { } number)
        {
            return rail with { Path = Put(Network.Items(rail.Path), place.Index, place.IsEmpty, place.Branches, part) };
        }

        var feed = rail.Feeds[number];
        var changed = feed with { Path = Put(Network.Items(feed.Path), place.Index, place.IsEmpty, place.Branches, part) };
        Note(changed, feed);
        return rail with { Feeds = rail.Feeds.SetItem(number, changed) };
    }

    private ImmutableArray<T> Put<T>(ImmutableArray<T> items, int index, bool isEmpty, ImmutableArray<(int Branch, int Index)> branches, object? part)
        where T : class
    {
        if (!branches.IsDefaultOrEmpty)
        {
            var group = (ParallelGroup)(object)items[index];
            var (branch, inner) = branches[0];
            var changed = group with { Branches = group.Branches.SetItem(branch, Put(Network.Items(group.Branches[branch]), inner, isEmpty, branches.RemoveAt(0), part)) };
            Note(changed, group);
            return items.SetItem(index, (T)(object)changed);
        }

        return (isEmpty, part) switch
        {
            (true, null) => items,
            (true, _) => items.Insert(index, (T)part!),
            (false, null) => items.RemoveAt(index),
            _ => items.SetItem(index, (T)Placed(part!, items[index])),
        };
    }

    private Rail Rewired(Rail rail)
    {
        var from = rail.From is { } above ? Now(above) : null;
        var feeds = Network.Items(rail.Feeds);
        var rewired = feeds.Any(feed => feed?.From is { } fed && !ReferenceEquals(Now(fed), fed));
        if (ReferenceEquals(from, rail.From) && !rewired)
        {
            return rail;
        }

        return rail with { From = from, Feeds = rewired ? [.. feeds.Select(Rewired)] : rail.Feeds };
    }

    private Feed Rewired(Feed feed)
    {
        if (feed?.From is not { } from || ReferenceEquals(Now(from), from))
        {
            return feed!;
        }

        var changed = feed with { From = Now(from) };
        Note(changed, feed);
        return changed;
    }
}
