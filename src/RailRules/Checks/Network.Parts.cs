using System.Collections.Immutable;

namespace RailRules;

/// <content>Parts in their places.</content>
public sealed partial class Network
{
    /// <summary>The series elements of a rail in their places: of its feeds, of its path, of its return; parallel groups opened up.</summary>
    internal IEnumerable<PartPlace> Parts(Rail rail)
    {
        var all = Suppliers(rail);
        for (var k = 0; k < all.Length; k++)
        {
            if (all[k].Feed is { } feed)
            {
                foreach (var part in Parts(rail, feed, k, nameof(Feed.Path), Items(feed.Path), false).Concat(Parts(rail, feed, k, nameof(Feed.Return), Of(feed.Return), true)))
                {
                    yield return part;
                }
            }
        }

        foreach (var part in Parts(rail, null, -1, nameof(Rail.Path), Items(rail.Path), false).Concat(Parts(rail, null, -1, nameof(Rail.Return), Of(rail.Return), true)))
        {
            yield return part;
        }
    }

    /// <summary>What hides parts of a rail: paths, feeds, returns or branches that were written but could not be worked out.</summary>
    internal ImmutableArray<MissingDatum> HiddenParts(Rail rail)
    {
        if (isUnknown is null)
        {
            return [];
        }

        var label = Label(rail);
        var result = ImmutableArray.CreateBuilder<MissingDatum>();
        Note(rail, label, nameof(Rail.Feeds));
        Note(rail, label, nameof(Rail.Path));
        Note(rail, label, nameof(Rail.Return));
        foreach (var supplying in Suppliers(rail))
        {
            if (supplying.Feed is { } feed)
            {
                Note(feed, label, nameof(Feed.Path));
                Note(feed, label, nameof(Feed.Return));
            }
        }

        foreach (var group in Parts(rail).Where(part => part.Part is ParallelGroup))
        {
            Note(group.Part, group.Label, nameof(ParallelGroup.Branches));
        }

        return result.ToImmutable();

        void Note(object owner, string of, string datum)
        {
            if (IsUnknown(owner, datum))
            {
                result.Add(new MissingDatum(new DatumPlace(owner, datum), of));
            }
        }
    }

    private static ImmutableArray<Element> Of(Return? back) => back is null ? [] : Items(back.Elements);

    private static IEnumerable<PartPlace> Parts(Rail rail, Feed? feed, int supplier, string datum, ImmutableArray<Element> elements, bool inReturn)
    {
        for (var i = 0; i < elements.Length; i++)
        {
            if (elements[i] is not { } element)
            {
                continue;
            }

            var place = new DatumPlace((object?)feed ?? rail, datum, i);
            foreach (var part in Open(new PartPlace(element, rail, feed, supplier, place, Label(element, rail, i), inReturn, []), i))
            {
                yield return part;
            }
        }
    }

    /// <summary>The part, and what stands in its branches if it is a group. Groups nest by construction only, so never for ever.</summary>
    private static IEnumerable<PartPlace> Open(PartPlace place, int position)
    {
        yield return place;
        if (place.Part is not ParallelGroup group)
        {
            yield break;
        }

        var branches = Items(group.Branches);
        for (var b = 0; b < branches.Length; b++)
        {
            var branch = Items(branches[b]);
            for (var i = 0; i < branch.Length; i++)
            {
                if (branch[i] is { } element)
                {
                    var label = Label(element, place.Rail, i);
                    foreach (var part in Open(place with { Part = element, Label = label, Branches = place.Branches.Add((group, b)) }, position))
                    {
                        yield return part;
                    }
                }
            }
        }
    }

    /// <summary>The live conductor of a feed, or (supplier −1) a rail's own path.</summary>
    internal ImmutableArray<Element> PathOf(Rail rail, int supplier) => Items(supplier < 0 ? rail.Path : Suppliers(rail)[supplier].Feed?.Path ?? []);

    /// <summary>The place of an element of a path.</summary>
    internal PartPlace PlaceOf(Rail rail, int supplier, int index)
    {
        var feed = supplier < 0 ? null : Suppliers(rail)[supplier].Feed;
        var element = PathOf(rail, supplier)[index];
        return new PartPlace(element, rail, feed, feed is null ? -1 : supplier, new DatumPlace((object?)feed ?? rail, nameof(Rail.Path), index), Label(element, rail, index), false, []);
    }

    /// <summary>The places of a path's element: itself, or what stands in its branches.</summary>
    internal IEnumerable<PartPlace> PlacesAt(Rail rail, int supplier, int index) => Open(PlaceOf(rail, supplier, index), index);

    /// <summary>The conductors of a return of its own.</summary>
    internal IEnumerable<PartPlace> ReturnOf(Rail rail, int supplier)
    {
        var feed = supplier < 0 ? null : Suppliers(rail)[supplier].Feed;
        return Parts(rail, feed, feed is null ? -1 : supplier, nameof(Rail.Return), Of(supplier < 0 ? rail.Return : feed?.Return), true)
            .Where(place => place.Branches.IsEmpty && place.Part is not (Fuse or CircuitBreaker or ElectronicFuse or ResettableFuse));
    }

    /// <summary>A part in its place.</summary>
    /// <param name="Part">The part.</param>
    /// <param name="Rail">The rail on which it stands.</param>
    /// <param name="Feed">The feed in which it stands; null: in the rail's own path.</param>
    /// <param name="Supplier">The index of the feed among what feeds the rail; -1: in the rail's own path.</param>
    /// <param name="Place">The place in the path.</param>
    /// <param name="Label">What people call it.</param>
    /// <param name="InReturn">Whether it stands in the return.</param>
    /// <param name="Branches">The parallel groups around it, outermost first, each with the branch in which it stands.</param>
    internal sealed record PartPlace(
        Element Part, Rail Rail, Feed? Feed, int Supplier, DatumPlace Place, string Label, bool InReturn, ImmutableArray<(ParallelGroup Group, int Branch)> Branches);
}
