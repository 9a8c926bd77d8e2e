using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>
/// A board as evaluated: the static members it reaches, its rails, its checks. Made once per compilation and board, whoever asks first.
/// </summary>
internal sealed class BoardEvaluation
{
    private BoardEvaluation(INamedTypeSymbol board, BoardWaivers waivers, ImmutableArray<MemberResult> members, ImmutableArray<Rail> rails, ImmutableArray<Check> checks, TeamRuns team, long steps, bool overBudget)
    {
        Board = board;
        Waivers = waivers;
        Members = members;
        Rails = rails;
        Checks = checks;
        Team = team;
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

    /// <summary>What the team's own rules gave on this board.</summary>
    public TeamRuns Team { get; }

    /// <summary>The sum of the steps of all members reached, kept results included, so that neither order nor reuse changes it.</summary>
    public long Steps { get; }

    public bool OverBudget { get; }

    public static BoardEvaluation Run(INamedTypeSymbol board, KnownTypes types, EvaluationSession session, BoardSettings settings, TeamRuleSet rules, CancellationToken cancellation)
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
        Reach();
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
        var team = new TeamRuns(rules, session, settings.Limits.Steps, steps, cancellation);
        var checks = rails.Count == 0 ? [] : Engine.Check(rails, waivers.Options with
        {
            IsUnknown = (owner, datum) => owner is TeamRule || session.IsUnknown(owner, datum),
            Today = settings.Today,
            DesignRules = team.Rules,
            Board = rules.NeedBoards ? ModelOf(board, own, values, types) : null,
        });
        foreach (var read in team.Reads)
        {
            pending.Enqueue(read);
        }

        Reach();
        return new BoardEvaluation(board, waivers, [.. reached], [.. rails], checks, team, steps, overBudget);

        void Reach()
        {
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
        }
    }

    /// <summary>The board as the generated Model describes it.</summary>
    private static BoardModel ModelOf(INamedTypeSymbol board, List<ISymbol> members, List<object?> values, KnownTypes types)
    {
        var builder = new BoardModelBuilder(board.Name);
        for (var i = 0; i < members.Count; i++)
        {
            builder.Member(BoardWaivers.NameWithin(board, members[i]));
            ModelWalk.Describe(builder, "", values[i]);
        }

        return builder.Build();
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
