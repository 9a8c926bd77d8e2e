using System.Collections.Immutable;

namespace RailRules.Choosing;

/// <summary>A place on a board where a part stands, or could stand: a rail and a position in its path, in the path of one of its feeds, or among its clamps.</summary>
/// <param name="Rail">The rail.</param>
/// <param name="Index">The position, from 0; of an empty slot, the position that the new part would take.</param>
public sealed record Place(Rail Rail, int Index)
{
    /// <summary>Which of the rail's feeds, from 0; null: the rail's own path.</summary>
    public int? Feed { get; init; }

    /// <summary>Whether the place is among the rail's clamps, not in a path.</summary>
    public bool IsClamp { get; init; }

    /// <summary>Whether nothing stands there yet: the part would be put in before what has that position now.</summary>
    public bool IsEmpty { get; init; }

    /// <summary>Where the position holds a parallel group: the branch and the position in it, for as many groups as lie within each other.</summary>
    public ImmutableArray<(int Branch, int Index)> Branches { get; init; } = [];

    /// <summary>The part that stands there; null: none, or the place does not exist.</summary>
    public object? Part
    {
        get
        {
            if (IsEmpty)
            {
                return null;
            }

            if (IsClamp)
            {
                return At(Network.Items(Rail.Clamps), Index);
            }

            var part = At(Path, Index);
            foreach (var (branch, index) in Network.Items(Branches))
            {
                part = part is ParallelGroup group && branch >= 0 && branch < Network.Items(group.Branches).Length ? At(Network.Items(group.Branches[branch]), index) : null;
            }

            return part;
        }
    }

    /// <summary>The path in which it stands.</summary>
    internal ImmutableArray<Element> Path => Feed is not { } feed ? Network.Items(Rail.Path)
        : feed >= 0 && feed < Network.Items(Rail.Feeds).Length && Rail.Feeds[feed] is { } found ? Network.Items(found.Path)
        : [];

    /// <summary>Every place whose part has a designator; several where the board uses it twice.</summary>
    /// <param name="rails">The board's rails; those that feed them are searched too.</param>
    /// <param name="designator">The designator, e.g. F1.</param>
    public static ImmutableArray<Place> Of(IEnumerable<Rail> rails, string designator) =>
        Find(rails, part => (part as Element)?.Designator == designator || (part as TransientSuppressor)?.Designator == designator);

    /// <summary>Every place whose part is the one sought.</summary>
    /// <param name="rails">The board's rails; those that feed them are searched too.</param>
    /// <param name="wanted">Whether a part, an <see cref="Element"/> or a <see cref="TransientSuppressor"/>, is sought.</param>
    public static ImmutableArray<Place> Find(IEnumerable<Rail> rails, Func<object, bool> wanted)
    {
        var result = ImmutableArray.CreateBuilder<Place>();
        foreach (var rail in Upstream.Rails(rails))
        {
            var feeds = Network.Items(rail.Feeds);
            for (var i = 0; i < feeds.Length; i++)
            {
                Add(new Place(rail, 0) { Feed = i }, Network.Items(feeds[i]?.Path ?? []));
            }

            Add(new Place(rail, 0), Network.Items(rail.Path));
            var clamps = Network.Items(rail.Clamps);
            for (var i = 0; i < clamps.Length; i++)
            {
                if (clamps[i] is { } clamp && wanted(clamp))
                {
                    result.Add(new Place(rail, i) { IsClamp = true });
                }
            }
        }

        return result.ToImmutable();

        void Add(Place start, ImmutableArray<Element> path)
        {
            for (var i = 0; i < path.Length; i++)
            {
                AddPart(start with { Index = i }, path[i]);
            }
        }

        void AddPart(Place place, Element? part)
        {
            if (part is not null && wanted(part))
            {
                result.Add(place);
            }

            if (part is ParallelGroup group)
            {
                var branches = Network.Items(group.Branches);
                for (var b = 0; b < branches.Length; b++)
                {
                    var branch = Network.Items(branches[b]);
                    for (var i = 0; i < branch.Length; i++)
                    {
                        AddPart(place with { Branches = place.Branches.Add((b, i)) }, branch[i]);
                    }
                }
            }
        }
    }

    private static T? At<T>(ImmutableArray<T> items, int index)
        where T : class => index >= 0 && index < items.Length ? items[index] : null;
}
