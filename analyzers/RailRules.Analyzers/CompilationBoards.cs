using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>The boards of one compilation, evaluated when first asked for, and the findings of each type.</summary>
internal sealed class CompilationBoards
{
    private readonly Compilation compilation;
    private readonly KnownTypes types;
    private readonly BoardSettings settings;
    private readonly Lazy<EvaluationSession> session;
    private readonly Lazy<ImmutableArray<INamedTypeSymbol>> boards;
    private readonly Lazy<TeamRuleSet> rules;
    private readonly ConcurrentDictionary<INamedTypeSymbol, BoardEvaluation> evaluations = new(SymbolEqualityComparer.Default);

    public CompilationBoards(Compilation compilation, KnownTypes types, BoardSettings? settings = null)
    {
        this.compilation = compilation;
        this.types = types;
        this.settings = settings ?? new BoardSettings();
        session = new Lazy<EvaluationSession>(() => EvaluationSession.TryCreate(compilation, this.settings.Limits)!);
        rules = new Lazy<TeamRuleSet>(() => TeamRuleSet.Of(compilation, CancellationToken.None));
        boards = new Lazy<ImmutableArray<INamedTypeSymbol>>(() => FindBoards(compilation.Assembly.GlobalNamespace, types));
    }

    /// <summary>The findings shown inside a type, in the order of their places.</summary>
    public ImmutableArray<Finding> FindingsOf(INamedTypeSymbol type, CancellationToken cancellation)
    {
        if (type.IsImplicitlyDeclared || type.DeclaringSyntaxReferences.IsEmpty || Generation.GeneratedTables.IsTable(type))
        {
            return [];
        }

        if (types.BoardAround(type) is { } board)
        {
            // A nested type lies inside its board's declaration and is reported with it.
            return SymbolEqualityComparer.Default.Equals(board, type)
                ? session.Value.OnDeepStack(() => Ordered(BoardFindings.Of(Evaluate(type, cancellation), types, session.Value, settings, rules.Value, cancellation).Concat(TeamRuleFindings.Of(type, this, cancellation))))
                : [];
        }

        var members = types.ModelMembers(type).Where(member => types.HoldsLibraryTypes(TypeOf(member))).ToList();
        var mayBeRead = members.Count > 0 || (!boards.Value.IsEmpty && type.GetMembers().Any(member => member is IFieldSymbol { IsStatic: true, IsConst: false } or IPropertySymbol { IsStatic: true }));
        var found = mayBeRead || types.WaiversOn(type).Any()
            ? session.Value.OnDeepStack(() => PartFindings.Of(type, members, this, types, session.Value, cancellation))
            : [];
        return TeamRules.In(type, cancellation).Any()
            ? session.Value.OnDeepStack(() => Ordered(found.Concat(TeamRuleFindings.Of(type, this, cancellation))))
            : found;
    }

    private static ImmutableArray<Finding> Ordered(IEnumerable<Finding> findings) =>
        [.. findings.OrderBy(finding => finding.Location.SourceTree?.FilePath, StringComparer.Ordinal).ThenBy(finding => finding.Location.SourceSpan.Start).ThenBy(finding => finding.Id, StringComparer.Ordinal)];

    /// <summary>The rules of the team's own.</summary>
    public TeamRuleSet Rules => rules.Value;

    /// <summary>What the build says.</summary>
    public BoardSettings Settings => settings;

    /// <summary>The board classes of the compilation, in order of their names.</summary>
    public ImmutableArray<INamedTypeSymbol> Boards => boards.Value;

    /// <summary>The evaluation that all boards share.</summary>
    public EvaluationSession Session => session.Value;

    /// <summary>A board, evaluated when first asked for.</summary>
    public BoardEvaluation Of(INamedTypeSymbol board, CancellationToken cancellation) => Evaluate(board, cancellation);

    /// <summary>Where a check of a board is shown.</summary>
    public Location LocationOf(Check check, BoardEvaluation board, CancellationToken cancellation) => BoardFindings.LocationOf(check, board, Session, cancellation);

    /// <summary>Every board of the compilation, evaluated.</summary>
    public IEnumerable<BoardEvaluation> AllBoards(CancellationToken cancellation)
    {
        foreach (var board in boards.Value)
        {
            yield return Evaluate(board, cancellation);
        }
    }

    private BoardEvaluation Evaluate(INamedTypeSymbol board, CancellationToken cancellation) =>
        evaluations.GetOrAdd(board, key => BoardEvaluation.Run(key, types, session.Value, settings, rules.Value, cancellation));

    private static ITypeSymbol TypeOf(ISymbol member) => member is IFieldSymbol field ? field.Type : ((IPropertySymbol)member).Type;

    private static ImmutableArray<INamedTypeSymbol> FindBoards(INamespaceSymbol root, KnownTypes types)
    {
        var found = ImmutableArray.CreateBuilder<INamedTypeSymbol>();
        var pending = new Stack<INamespaceOrTypeSymbol>();
        pending.Push(root);
        while (pending.Count > 0)
        {
            foreach (var member in pending.Pop().GetMembers())
            {
                if (member is INamespaceSymbol inner)
                {
                    pending.Push(inner);
                }
                else if (member is INamedTypeSymbol { DeclaringSyntaxReferences.IsEmpty: false } type)
                {
                    if (types.BoardAround(type) is { } board && SymbolEqualityComparer.Default.Equals(board, type))
                    {
                        found.Add(type);
                    }
                    else
                    {
                        pending.Push(type);
                    }
                }
            }
        }

        return [.. found.OrderBy(type => type.ToDisplayString(), StringComparer.Ordinal)];
    }
}
