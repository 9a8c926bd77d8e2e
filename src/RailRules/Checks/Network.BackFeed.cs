using System.Collections.Immutable;

namespace RailRules;

/// <content>What can drive current from the load side to the source side.</content>
public sealed partial class Network
{
    /// <summary>Something that can drive current backwards.</summary>
    /// <param name="Origin">The supply, battery, converter or load.</param>
    /// <param name="Label">What people call it.</param>
    /// <param name="Current">The most it can drive (A), where that is known.</param>
    /// <param name="Doubts">Data without which it is not known whether the way back is open.</param>
    internal sealed record BackFeed(object Origin, string Label, double? Current, ImmutableArray<MissingDatum> Doubts);

    /// <summary>
    /// What can drive current back through a place of a live conductor: the other feeds of its rail and of rails below, batteries among them, converters that do not block,
    /// loads that regenerate. Nothing where an element of the same path blocks.
    /// </summary>
    internal ImmutableArray<BackFeed> BackFeeds(PartPlace place)
    {
        var found = new Dictionary<object, BackFeed>(ByReference.Instance);
        var order = new List<object>();
        var seen = new HashSet<(Rail, bool)>();
        var pending = new Stack<(Rail Rail, bool AtEnd, ImmutableArray<MissingDatum> Doubts)>();
        var path = Items(place.Feed is { } own ? own.Path : place.Rail.Path);
        if (IsCyclic(place.Rail) || Back(place.Rail, path, place.Place.Index, []) is not { } first)
        {
            return [];
        }

        if (place.Supplier >= 0)
        {
            OtherFeeds(place.Rail, place.Supplier, first);
            pending.Push((place.Rail, false, first));
        }
        else
        {
            pending.Push((place.Rail, true, first));
        }

        while (pending.Count > 0)
        {
            var (rail, atEnd, doubts) = pending.Pop();
            if (IsCyclic(rail) || !seen.Add((rail, atEnd)))
            {
                continue;
            }

            if (!atEnd)
            {
                if (Back(rail, Items(rail.Path), null, doubts) is { } through)
                {
                    pending.Push((rail, true, through));
                }

                continue;
            }

            var loads = Items(rail.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                if (loads[i] is { Regenerates: true } load)
                {
                    Add(load, Label(load, rail, i), load.RegeneratedCurrent?.Amperes, doubts);
                }
                else if (loads[i] is { } other && IsUnknown(other, nameof(Load.Regenerates)))
                {
                    Add(other, Label(other, rail, i), other.RegeneratedCurrent?.Amperes, doubts.Add(new MissingDatum(new DatumPlace(other, nameof(Load.Regenerates)), Label(other, rail, i))));
                }
            }

            foreach (var child in Children(rail))
            {
                Enter(child, rail, doubts);
            }

            foreach (var converter in ConvertersOn(rail))
            {
                if (converter.ReverseBlocking != true)
                {
                    var open = converter.ReverseBlocking is null ? doubts.Add(new MissingDatum(new DatumPlace(converter, nameof(Converter.ReverseBlocking)), Label(converter))) : doubts;
                    foreach (var fed in FedBy(converter))
                    {
                        Enter(fed, converter, open);
                    }
                }
            }
        }

        return [.. order.Select(origin => found[origin])];

        void Enter(Rail rail, Source from, ImmutableArray<MissingDatum> doubts)
        {
            var all = Suppliers(rail);
            for (var k = 0; k < all.Length; k++)
            {
                if (ReferenceEquals(all[k].From, from) && Back(rail, all[k].Feed is { } feed ? Items(feed.Path) : [], null, doubts) is { } through)
                {
                    OtherFeeds(rail, k, through);
                    pending.Push((rail, false, through));
                }
            }
        }

        void OtherFeeds(Rail rail, int without, ImmutableArray<MissingDatum> doubts)
        {
            var all = Suppliers(rail);
            for (var k = 0; k < all.Length; k++)
            {
                if (k != without)
                {
                    foreach (var source in SourcesAbove(all[k].From))
                    {
                        Add(source, Label(source), MostFrom(source), doubts);
                    }
                }
            }
        }

        void Add(object origin, string label, double? current, ImmutableArray<MissingDatum> doubts)
        {
            if (!found.TryGetValue(origin, out var known))
            {
                order.Add(origin);
                found.Add(origin, new BackFeed(origin, label, current, doubts));
            }
            else if (known.Doubts.Length > doubts.Length)
            {
                found[origin] = known with { Doubts = doubts };
            }
        }
    }

    /// <summary>Whether current can flow backwards along a path: null where something blocks, else the doubts together with those of the path.</summary>
    private ImmutableArray<MissingDatum>? Back(Rail rail, ImmutableArray<Element> path, int? without, ImmutableArray<MissingDatum> doubts)
    {
        for (var i = 0; i < path.Length; i++)
        {
            if (path[i] is not { } element || i == without)
            {
                continue;
            }

            if (Blocks(element))
            {
                return null;
            }

            if (element is ElectronicFuse { ReverseBlocking: null })
            {
                doubts = doubts.Add(new MissingDatum(new DatumPlace(element, nameof(ElectronicFuse.ReverseBlocking)), Label(element, rail, i)));
            }
        }

        return doubts;
    }

    /// <summary>Whether an element lets no current from load to source: a group if each branch has one that does not.</summary>
    internal static bool Blocks(Element element) => element switch
    {
        BlockingDiode or ElectronicFuse { ReverseBlocking: true } => true,
        ParallelGroup group => Items(group.Branches) is { Length: > 0 } branches && branches.All(branch => Items(branch).Any(one => one is not null && Blocks(one))),
        _ => false,
    };

    /// <summary>The supplies, batteries and converters from which a source takes its current, itself if it is one; each once.</summary>
    internal IEnumerable<Source> SourcesAbove(Source? source)
    {
        var seen = new HashSet<Source>(ByReference.Instance);
        var pending = new Stack<Source?>([source]);
        while (pending.Count > 0)
        {
            if (pending.Pop() is not { } one || !seen.Add(one))
            {
                continue;
            }

            if (one is not Rail rail)
            {
                yield return one;
                continue;
            }

            foreach (var supplying in Suppliers(rail).Reverse())
            {
                pending.Push(supplying.From);
            }
        }
    }

    /// <summary>The most a source gives (A): its limit, its stated fault current, or its highest voltage behind its least resistance; null: not known.</summary>
    internal double? MostFrom(Source source)
    {
        var high = VoltagesOf(source, default, "").High;
        return source switch
        {
            Supply { ProspectiveFault.Current: { } stated } => stated.Max.Amperes,
            Supply { CurrentLimit.Level: { } level } => level.Max.Amperes,
            Converter { CurrentLimit.Level: { } level } => level.Max.Amperes,
            Supply { SourceResistance: { } inside } when high.IsKnown && inside.Min.Ohms > 0 => high.Value / inside.Min.Ohms,
            Battery { InternalResistance: { } inside } battery when high.IsKnown && inside.Min.Ohms > 0 => high.Value * Math.Max(1, battery.Strings ?? 1) / inside.Min.Ohms,
            _ => null,
        };
    }
}
