using System.Collections.Immutable;

namespace RailRules.Choosing;

/// <summary>Parts tried in a place of a board: those that pass, best first, and what rules out the others.</summary>
/// <remarks>
/// A part passes where no check fails that the choice affects, on any rail connected with the place; a check that fails alike, number for number, with the place empty
/// and with the part that stands there now is a fault of its own and is listed in <see cref="FailingAnyway"/>. The rules are those that judge the board.
/// A part that passes is one that holds with the data entered; it is a design aid, and the competent engineer has the last word.
/// </remarks>
public sealed class PartChoice
{
    private readonly PartSearch search;
    private readonly Lazy<NoRoom?> noRoom;
    private readonly Lazy<RatingWindow?> window;

    internal PartChoice(PartSearch search, ImmutableArray<Candidate> passing, ImmutableArray<NearMiss> nearMisses)
    {
        this.search = search;
        Passing = passing;
        NearMisses = nearMisses;
        noRoom = new(() => Passing.IsEmpty ? search.FindNoRoom() : null);
        window = new(() => search.FindWindow(passing));
    }

    /// <summary>The parts that pass, best first: fewest undecided checks, smallest rating, least heat, largest smallest margin, most alternates.</summary>
    public ImmutableArray<Candidate> Passing { get; }

    /// <summary>The parts that come nearest to passing, nearest first.</summary>
    public ImmutableArray<NearMiss> NearMisses { get; }

    /// <summary>How many parts were tried.</summary>
    public int Tried => search.Count;

    /// <summary>The checks that fail whatever stands in the place.</summary>
    public ImmutableArray<Check> FailingAnyway => search.FailingAnyway;

    /// <summary>The ratings that pass among the parts tried; null where none passes or none states a rating.</summary>
    public RatingWindow? Window => window.Value;

    /// <summary>Which rules leave no room where nothing passes; null where something does, or where no two rules rule out every part.</summary>
    public NoRoom? NoRoom => noRoom.Value;

    /// <summary>The smallest changes of conductor, inrush and fault current, each alone, after which a part passes; up to tenfold, each to within 1 %. Worked out when asked for.</summary>
    public ImmutableArray<SmallestChange> SmallestChanges() => Passing.IsEmpty ? search.FindChanges() : [];

    /// <summary>Tries parts in a place.</summary>
    /// <param name="rails">The board's rails.</param>
    /// <param name="place">The place.</param>
    /// <param name="parts">The parts to try: <see cref="Element"/>s for a path, <see cref="TransientSuppressor"/>s among clamps; others are left out.</param>
    public static PartChoice At(IEnumerable<Rail> rails, Place place, IEnumerable<object> parts) => At(rails, [place], parts);

    /// <summary>Tries parts in places that are to have the same part.</summary>
    /// <param name="rails">The board's rails.</param>
    /// <param name="places">The places, all in paths or all among clamps.</param>
    /// <param name="parts">The parts to try.</param>
    /// <param name="isUnknown">Whether a datum (owner, property) was written but could not be worked out.</param>
    /// <param name="nearMisses">How many near misses are wanted.</param>
    public static PartChoice At(IEnumerable<Rail> rails, ImmutableArray<Place> places, IEnumerable<object> parts, Func<object, string, bool>? isUnknown = null, int nearMisses = 5)
    {
        var search = new PartSearch(Upstream.Rails(rails), places, parts, isUnknown);
        return search.Run(nearMisses);
    }
}
