using System.Collections.Immutable;

namespace RailRules;

/// <summary>
/// A board as its class describes it: every rail, source and part, with the name that each has in code. The generator gives a <c>[Board]</c> class that is <c>partial</c> a member
/// <c>Model</c> of this type; rules of the team's own may take one.
/// </summary>
public sealed class BoardModel
{
    private readonly Dictionary<object, string> names;

    internal BoardModel(string name, Dictionary<object, string> names)
    {
        Name = name;
        this.names = names;
    }

    /// <summary>The name of the board's class.</summary>
    public string Name { get; }

    /// <summary>Every rail that the board's members hold and those that feed them; each once, in the order met.</summary>
    public ImmutableArray<Rail> Rails { get; internal init; } = [];

    /// <summary>The supplies, batteries and converters that feed the rails or that members hold; each once, in the order met.</summary>
    public ImmutableArray<Source> Sources { get; internal init; } = [];

    /// <summary>The parts in paths, feeds, returns and branches, the clamps and the capacitors of the rails, and the parts that members hold; each object once, in the order met.</summary>
    public ImmutableArray<object> Parts { get; internal init; } = [];

    /// <summary>The board's static members with what each holds.</summary>
    public ImmutableArray<BoardMember> Members { get; internal init; } = [];

    /// <summary>The board's waivers.</summary>
    public ImmutableArray<Waiver> Waivers { get; internal init; } = [];

    /// <summary>The rules of the team's own that <c>Review()</c> applies.</summary>
    public ImmutableArray<DesignRule> Rules { get; internal init; } = [];

    /// <summary>What may hold rails and could not be looked into, by its name in code: objects whose type the generated code does not know. Rails in it are not reviewed, and the review says so.</summary>
    public ImmutableArray<string> NotReached { get; internal init; } = [];

    /// <summary>The name in code: <c>Bus</c>, <c>Sleds[2]</c>, <c>Front.Bus</c>; of a part that is no member the place, <c>Sleds[2].Path[0]</c>. Null: not of this board.</summary>
    /// <param name="modelObject">A rail, source, part or load.</param>
    public string? NameOf(object modelObject) => modelObject is not null && names.TryGetValue(modelObject, out var name) ? name : null;
}
