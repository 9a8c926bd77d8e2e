using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;
using RailRules.Choosing;

namespace RailRules.Analyzers.Choosing;

/// <summary>
/// Parts chosen for places of a compilation's boards, from its parts tables, and the edits that put them there. Places that one expression fills are chosen together,
/// whichever boards they are on.
/// </summary>
internal sealed class BoardChoices
{
    private static readonly ConditionalWeakTable<Compilation, BoardChoices?> Kept = new();

    private readonly Compilation compilation;
    private readonly Lazy<TableParts> tables;
    private readonly Lazy<ImmutableArray<PlacedPart>> places;

    /// <param name="compilation">The compilation, generated tables included.</param>
    /// <param name="boards">Its boards.</param>
    public BoardChoices(Compilation compilation, CompilationBoards boards)
    {
        this.compilation = compilation;
        Boards = boards;
        tables = new(() => TableParts.Of(compilation, CancellationToken.None));
        places = new(() => [.. FindPlaces()]);
    }

    /// <summary>The boards.</summary>
    public CompilationBoards Boards { get; }

    /// <summary>The parts to choose from.</summary>
    public TableParts Tables => tables.Value;

    /// <summary>Every place of every board; one that several boards reach, with the first.</summary>
    public ImmutableArray<PlacedPart> Places => places.Value;

    /// <summary>The choices of a compilation, kept as long as it lives; null where it does not refer to RailRules.</summary>
    public static BoardChoices? Of(Compilation compilation) =>
        Kept.GetValue(compilation, static one => KnownTypes.TryCreate(one) is { } types ? new BoardChoices(one, new CompilationBoards(one, types)) : null);

    /// <summary>The places that get their part from the expression that gives it to this one.</summary>
    public ImmutableArray<PlacedPart> Together(PlacedPart place) => place.Pick is { } pick ? [.. Places.Where(other => other.Pick?.Target == pick.Target)] : [place];

    /// <summary>Why no edit can put another part in a place; null where one can.</summary>
    public string? NoEdit(PlacedPart place)
    {
        if (place.Pick is not { } pick)
        {
            return "the expression that chooses its part cannot be told from the source";
        }

        var parts = Together(place).Select(one => Label(one.Place)).Distinct(StringComparer.Ordinal).ToList();
        return parts.Count > 1 ? $"the expression '{Short(pick.Target.ToString())}' gives different parts: {string.Join(", ", parts)}" : null;
    }

    /// <summary>Parts of the tables tried in a place and in those that are filled with it.</summary>
    public PartChoice Choose(PlacedPart place, int nearMisses = 5) => Choose(Together(place), Tables.LikeIt(place.Part).Select(one => one.Part), nearMisses);

    /// <summary>Parts tried in places that are to have the same one.</summary>
    public PartChoice Choose(ImmutableArray<PlacedPart> together, IEnumerable<object> parts, int nearMisses = 5) =>
        PartChoice.At(RailsOf(together), [.. together.Select(one => one.Place)], parts, Boards.Session.IsUnknown, nearMisses);

    /// <summary>The edit that puts a part of a table in a place; null where there is none.</summary>
    public PartEdit? Edit(PlacedPart place, TablePart part)
    {
        if (place.Pick is not { } pick || NoEdit(place) is not null)
        {
            return null;
        }

        var tree = pick.Target.SyntaxTree;
        var text = pick.Text(part.Expression(compilation.GetSemanticModel(tree), pick.Target.SpanStart), place.Part is Element);
        return new PartEdit(tree, new TextChange(pick.Target.Span, text));
    }

    /// <summary>The part of a table that a search found.</summary>
    public TablePart TablePartOf(object part) => Tables.All.First(one => ReferenceEquals(one.Part, part));

    /// <summary>The place of the part that a check judges; null where it judges none.</summary>
    public PlacedPart? PlaceOf(Check check)
    {
        foreach (var (owner, datum, index) in check.Places)
        {
            foreach (var place in Places.Where(place => ReferenceEquals(place.Part, check.Part ?? owner)))
            {
                if (datum is null || index is null || (ReferenceEquals(owner, place.Owner) && datum == place.Datum && index == place.Place.Index) || ReferenceEquals(place.Part, owner))
                {
                    return place;
                }
            }
        }

        return null;
    }

    /// <summary>What people call the part of a place.</summary>
    public static string Label(Place place) => place.Part switch
    {
        Element element => Network.Label(element, place.Rail, place.Index),
        TransientSuppressor clamp => Network.Label(clamp, place.Rail, place.Index),
        _ => "",
    };

    private static string Short(string text) => text.Length <= 60 ? text : text.Substring(0, 57) + "...";

    private ImmutableArray<Rail> RailsOf(ImmutableArray<PlacedPart> together) =>
        [.. together.Select(one => one.Board).Distinct().SelectMany(board => board.Rails).Distinct()];

    private IEnumerable<PlacedPart> FindPlaces()
    {
        var met = new HashSet<(Rail, string)>();
        foreach (var board in Boards.AllBoards(CancellationToken.None))
        {
            foreach (var place in Place.Find(board.Rails, _ => true))
            {
                var placed = new PlacedPart(board, place);
                if (met.Add((place.Rail, placed.Position)))
                {
                    placed.Pick = PickOf(placed);
                    yield return placed;
                }
            }
        }
    }

    private PartPick? PickOf(PlacedPart place)
    {
        var session = Boards.Session;
        var written = place.Place.Branches.IsDefaultOrEmpty ? session.OriginOf(place.Owner, place.Datum, place.Place.Index) : null;

        // An element that came through a spread or out of library code has no expression of its own; then it is the part's.
        return written is not null && IsPart(written.Node) ? PartPick.Of(written, compilation, CancellationToken.None)
            : session.OriginOf(place.Part, null) is { } made && IsPart(made.Node) ? PartPick.Of(made, compilation, CancellationToken.None)
            : null;
    }

    private bool IsPart(SyntaxNode node)
    {
        if (node is not ExpressionSyntax expression || !compilation.ContainsSyntaxTree(node.SyntaxTree))
        {
            return false;
        }

        for (var type = compilation.GetSemanticModel(node.SyntaxTree).GetTypeInfo(expression).Type; type is not null; type = type.BaseType)
        {
            if (type.ToDisplayString() is "RailRules.Element" or "RailRules.TransientSuppressor")
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>A place of a board with the expression that chooses its part.</summary>
internal sealed class PlacedPart(BoardEvaluation board, Place place)
{
    public BoardEvaluation Board { get; } = board;

    public Place Place { get; } = place;

    public object Part => Place.Part!;

    public string? Designator => (Part as Element)?.Designator ?? (Part as TransientSuppressor)?.Designator;

    /// <summary>The record whose datum holds the part: the rail, or one of its feeds.</summary>
    public object Owner => Place is { IsClamp: false, Feed: { } feed } ? Place.Rail.Feeds[feed] : Place.Rail;

    /// <summary>The datum that holds the part.</summary>
    public string Datum => Place.IsClamp ? nameof(Rail.Clamps) : nameof(Rail.Path);

    /// <summary>Where on its rail it is, e.g. <c>Path[0]</c> or <c>Feeds[1].Path[0].Branches[0][2]</c>.</summary>
    public string Position
    {
        get
        {
            var branches = Place.Branches.IsDefaultOrEmpty ? "" : string.Concat(Place.Branches.Select(branch => FormattableString.Invariant($".Branches[{branch.Branch}][{branch.Index}]")));
            var start = Place is { IsClamp: false, Feed: { } feed } ? FormattableString.Invariant($"Feeds[{feed}].") : "";
            return FormattableString.Invariant($"{start}{Datum}[{Place.Index}]{branches}");
        }
    }

    /// <summary>Board, rail and position, e.g. <c>PumpHouse.Controller.Path[0]</c>.</summary>
    public string Name => $"{Board.Board.Name}.{Place.Rail.Name ?? "rail"}.{Position}";

    /// <summary>The expression that chooses the part; null where it cannot be told.</summary>
    public PartPick? Pick { get; set; }
}

/// <summary>A change of one file's text.</summary>
internal sealed record PartEdit(SyntaxTree Tree, TextChange Change);
