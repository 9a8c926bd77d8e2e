using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>The rules of the team's own that count for a compilation: those in its source that can work, and those that its references carry.</summary>
internal sealed class TeamRuleSet
{
    private readonly ImmutableDictionary<string, TeamRule> byId;
    private readonly ILookup<string, TeamRule> all;

    private TeamRuleSet(ImmutableArray<TeamRule> own, ImmutableArray<TeamRule> carried)
    {
        all = own.Concat(carried).ToLookup(rule => rule.Id, StringComparer.OrdinalIgnoreCase);

        // Of several with one id the first counts, as in Review(); each of the others is told to be one too many.
        Own = [.. own.GroupBy(rule => rule.Id, StringComparer.OrdinalIgnoreCase).Select(group => group.First())];
        Carried = [.. carried.Where(rule => !Own.Any(one => string.Equals(one.Id, rule.Id, StringComparison.OrdinalIgnoreCase))).GroupBy(rule => rule.Id, StringComparer.OrdinalIgnoreCase).Select(group => group.First())];
        byId = Own.Concat(Carried).ToImmutableDictionary(rule => rule.Id, StringComparer.Ordinal);
    }

    /// <summary>The rules of the source, in order of id.</summary>
    public ImmutableArray<TeamRule> Own { get; }

    /// <summary>The rules of references, in order of id.</summary>
    public ImmutableArray<TeamRule> Carried { get; }

    public bool NeedBoards => Own.Any(rule => rule.OfBoard);

    public TeamRule? Find(string id) => byId.TryGetValue(id, out var rule) ? rule : null;

    /// <summary>The other rules with the id of this one, which differ in case at most.</summary>
    public IEnumerable<TeamRule> Clashes(TeamRule rule) => all[rule.Id].Where(other => !SymbolEqualityComparer.Default.Equals(other.Method, rule.Method));

    public static TeamRuleSet Of(Compilation compilation, CancellationToken cancellation)
    {
        var own = new List<TeamRule>();
        var open = new Stack<INamespaceOrTypeSymbol>([compilation.Assembly.GlobalNamespace]);
        while (open.Count > 0)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var member in open.Pop().GetMembers())
            {
                if (member is INamespaceSymbol space)
                {
                    open.Push(space);
                }
                else if (member is INamedTypeSymbol { DeclaringSyntaxReferences.IsEmpty: false } type)
                {
                    open.Push(type);
                    own.AddRange(TeamRules.In(type, cancellation).Where(found => found.Rule is not null).Select(found => found.Rule!));
                }
            }
        }

        return new TeamRuleSet([.. own.OrderBy(rule => rule.Id, StringComparer.Ordinal).ThenBy(rule => rule.Method.ToDisplayString(), StringComparer.Ordinal)], TeamRules.OfReferences(compilation));
    }
}

/// <summary>The team's own rules on one board: interpreted, never loaded. A rule that cannot be interpreted leaves its checks undecided, and why is a finding at the rule.</summary>
internal sealed class TeamRuns
{
    private readonly EvaluationSession session;
    private readonly long budget;
    private readonly CancellationToken cancellation;
    private readonly List<(TeamRule Rule, MemberResult Result, string On)> runs = [];
    private long steps;

    /// <param name="rules">The rules.</param>
    /// <param name="session">The evaluation of the compilation.</param>
    /// <param name="budget">The steps that members and rules of a board may take together.</param>
    /// <param name="spent">The steps that its members took.</param>
    /// <param name="cancellation">Stops it.</param>
    public TeamRuns(TeamRuleSet rules, EvaluationSession session, long budget, long spent, CancellationToken cancellation)
    {
        this.session = session;
        this.budget = budget;
        this.cancellation = cancellation;
        steps = spent;
        Rules =
        [
            .. rules.Own.Select(rule => rule.OfBoard
                ? DesignRule.OfBoard(rule.Id, rule.Title, rule.Severity, board => Run(rule, board, board.Name), rule.Help)
                : DesignRule.OfRail(rule.Id, rule.Title, rule.Severity, rail => Run(rule, rail, rail.Name), rule.Help)),
            .. rules.Carried.Select(rule => DesignRule.OfBoard(rule.Id, rule.Title, rule.Severity, _ => [NotRun(rule)], rule.Help)),
        ];
        foreach (var rule in Rules.Skip(rules.Own.Length))
        {
            rule.IsNotRun = true;
        }
    }

    /// <summary>The rules for the engine.</summary>
    public ImmutableArray<DesignRule> Rules { get; }

    /// <summary>The static members that rules read.</summary>
    public IEnumerable<ISymbol> Reads => runs.SelectMany(run => run.Result.Reads);

    /// <summary>Why rules could not be interpreted: each expression once, with what it was applied to.</summary>
    public IEnumerable<(TeamRule Rule, Problem Problem, ImmutableArray<string> On)> Problems =>
        runs.SelectMany(run => run.Result.Problems.Select(problem => (run.Rule, Problem: problem, run.On)))
            .GroupBy(one => (one.Rule, one.Problem.Kind, Node: one.Problem.Kind == ProblemKind.Budget ? null : one.Problem.Origin.Node))
            .Select(group => (group.Key.Rule, group.First().Problem, group.Select(one => one.On).Distinct().ToImmutableArray()));

    private IEnumerable<Check> Run(TeamRule rule, object argument, string on)
    {
        var result = session.Call(rule.Method, argument, Math.Min(steps, budget), cancellation);
        steps = result.Steps;
        runs.Add((rule, result, on));
        return result.IsUnknown ? [NotRun(rule)] : ((object?[]?)result.Value)?.Cast<Check>()!;
    }

    private static Check NotRun(TeamRule rule) => new("", "", Verdict.Undecided, null, $"{rule.Id} is not run at compile time; Review() runs it")
    {
        Missing = [new MissingDatum(new DatumPlace(rule, "result"), rule.Id)],
    };
}
