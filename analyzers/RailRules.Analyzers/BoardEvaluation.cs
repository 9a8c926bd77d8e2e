using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>
/// A board as evaluated: the static members it reaches, its rails, its checks. Made once per compilation and board, whoever asks first.
/// </summary>
internal sealed class BoardEvaluation
{
    private BoardEvaluation(INamedTypeSymbol board, BoardWaivers waivers, ImmutableArray<MemberResult> members, ImmutableArray<Rail> rails, ImmutableArray<Check> checks, long steps, bool overBudget)
    {
        Board = board;
        Waivers = waivers;
        Members = members;
        Rails = rails;
        Checks = checks;
        Steps = steps;
        OverBudget = overBudget;
    }

    public INamedTypeSymbol Board { get; }

    /// <summary>The waivers of the board, and of other boards whose rails it reaches.</summary>
    public BoardWaivers Waivers { get; }

    /// <summary>The board's own members and all that they read, each once.</summary>
    public ImmutableArray<MemberResult> Members { get; }

    /// <summary>The rails that the board's members lead to and what feeds them.</summary>
    public ImmutableArray<Rail> Rails { get; }

    public ImmutableArray<Check> Checks { get; }

    /// <summary>The sum of the steps of all members reached, kept results included, so that neither order nor reuse changes it.</summary>
    public long Steps { get; }

    public bool OverBudget { get; }

    public static BoardEvaluation Run(INamedTypeSymbol board, KnownTypes types, EvaluationSession session, BoardSettings settings, CancellationToken cancellation)
    {
        var own = MembersOf(board, types).ToList();
        var values = new List<object?>(own.Count);
        var reached = new List<MemberResult>();
        var seen = new HashSet<ISymbol>(SymbolEqualityComparer.Default);
        var pending = new Queue<ISymbol>();
        foreach (var member in own)
        {
            var result = session.Evaluate(member, cancellation);
            values.Add(result.IsUnknown ? null : result.Value);
            pending.Enqueue(member);
        }

        long steps = 0;
        while (pending.Count > 0)
        {
            var member = pending.Dequeue();
            if (!seen.Add(member))
            {
                continue;
            }

            var result = session.Evaluate(member, cancellation);
            reached.Add(result);
            steps += result.Steps;
            foreach (var read in result.Reads)
            {
                pending.Enqueue(read);
            }
        }

        var overBudget = steps > settings.Limits.Steps || reached.Any(result => result.Problems.Any(problem => problem.Kind == ProblemKind.Budget));
        var rails = new List<Rail>();
        if (!overBudget)
        {
            var met = new HashSet<object>(ReferenceComparer.Instance);
            foreach (var value in values)
            {
                ModelWalk.CollectRails(value, rails, met);
            }
        }

        cancellation.ThrowIfCancellationRequested();
        var waivers = BoardWaivers.Of(board, reached, types);
        var checks = rails.Count == 0 ? [] : Engine.Check(rails, waivers.Options with { IsUnknown = session.IsUnknown, Today = settings.Today });
        return new BoardEvaluation(board, waivers, [.. reached], [.. rails], checks, steps, overBudget);
    }

    /// <summary>The static members of a board and of the types nested in it, in the order in which they stand.</summary>
    public static IEnumerable<ISymbol> MembersOf(INamedTypeSymbol type, KnownTypes types)
    {
        foreach (var member in types.ModelMembers(type))
        {
            yield return member;
        }

        foreach (var nested in type.GetTypeMembers())
        {
            foreach (var member in MembersOf(nested, types))
            {
                yield return member;
            }
        }
    }
}
