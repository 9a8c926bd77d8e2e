using System.Collections.Immutable;

namespace RailRules;

/// <summary>What the engine needs to know of a board besides its rails.</summary>
public sealed record CheckOptions
{
    /// <summary>Whether a datum (owner, property) was written but could not be worked out; what depends on it is undecided. Null: every datum is known.</summary>
    public Func<object, string, bool>? IsUnknown { get; init; }

    /// <summary>The board's static members with what they hold, so that a waiver can name them.</summary>
    public ImmutableArray<BoardMember> Members { get; init; } = [];

    /// <summary>The board's waivers.</summary>
    public ImmutableArray<Waiver> Waivers { get; init; } = [];

    /// <summary>The rules of the team's own.</summary>
    public ImmutableArray<DesignRule> DesignRules { get; init; } = [];

    /// <summary>The board, for rules of the team's own that judge it as a whole; null: one is made of the rails alone.</summary>
    public BoardModel? Board { get; init; }

    /// <summary>The day on which the waivers are judged; null: whether one is past its date is not judged. The engine never reads a clock.</summary>
    public DateTime? Today { get; init; }

    /// <summary>Whether some of the board could not be worked out, so that rails may be missing here.</summary>
    public bool IsIncomplete { get; init; }
}

/// <summary>A static member of a board's class.</summary>
/// <param name="Name">Its name; with the names of nested classes before it, e.g. <c>Front.Bus</c>.</param>
/// <param name="Objects">The rails, sources, parts and other objects of the model that it holds directly.</param>
public sealed record BoardMember(string Name, ImmutableArray<object> Objects);

/// <summary>A <see cref="WaiverAttribute"/> as the engine uses it.</summary>
/// <param name="Rule">The id of the rule that is waived.</param>
public sealed record Waiver(string Rule)
{
    /// <summary>The member, or nested class, on which it stands; empty: the board's class.</summary>
    public string Scope { get; init; } = "";

    /// <summary>What it covers within that: a member, a rail by its name, a part by its designator or part number; null: all of it.</summary>
    public string? On { get; init; }

    /// <summary>Why the finding may stay.</summary>
    public string? Reason { get; init; }

    /// <summary>Who has approved it.</summary>
    public string? ApprovedBy { get; init; }

    /// <summary>The last day on which it holds, as year-month-day; null: until it is taken away.</summary>
    public string? Until { get; init; }

    /// <summary>Whether it is another board's: it covers that board's rails here too, and is judged there.</summary>
    public bool IsOfAnotherBoard { get; init; }

    /// <summary>"the reason (approved by role, until 2027-06-30)", for people.</summary>
    public string Text => $"{Reason} (approved by {ApprovedBy}{(string.IsNullOrWhiteSpace(Until) ? "" : ", until " + Until)})";
}
