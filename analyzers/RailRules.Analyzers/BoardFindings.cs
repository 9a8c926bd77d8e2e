using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers;

/// <summary>The findings of a board: its failing and undecided checks, what could not be evaluated, and a form that cannot work.</summary>
internal static class BoardFindings
{
    public static ImmutableArray<Finding> Of(BoardEvaluation board, KnownTypes types, EvaluationSession session, BoardSettings settings, TeamRuleSet rules, CancellationToken cancellation)
    {
        var findings = new List<Finding>();
        AddForm(board, types, findings, cancellation);
        AddToday(board, settings, findings);
        AddBudget(board, settings.Limits, findings, cancellation);
        AddProblems(board, session, findings);
        AddCarried(board, rules, findings, cancellation);
        AddChecks(board, types, session, settings, rules, findings, cancellation);
        return [.. findings.OrderBy(finding => finding.Location.SourceTree?.FilePath, StringComparer.Ordinal).ThenBy(finding => finding.Location.SourceSpan.Start).ThenBy(finding => finding.Id, StringComparer.Ordinal)];
    }

    /// <summary>Rules of references are code of compiled assemblies, which is never run here.</summary>
    private static void AddCarried(BoardEvaluation board, TeamRuleSet rules, List<Finding> findings, CancellationToken cancellation)
    {
        foreach (var assembly in rules.Carried.GroupBy(rule => rule.Method.ContainingAssembly, SymbolEqualityComparer.Default))
        {
            var ids = string.Join(", ", assembly.Select(rule => rule.Id));
            findings.Add(new Finding(FoundationRules.ForeignValue.Id, Places.Declaration(board.Board, cancellation), $"design {(assembly.Count() == 1 ? "rule" : "rules")} {ids} of '{assembly.Key!.Name}': code of another assembly, which is not run at compile time; Review() of '{board.Board.Name}' runs it"));
        }
    }

    private static void AddForm(BoardEvaluation board, KnownTypes types, List<Finding> findings, CancellationToken cancellation)
    {
        var type = board.Board;
        string? reason = null;
        if (type.IsGenericType || type.ContainingType is { IsGenericType: true })
        {
            reason = $"'{type.Name}' is generic; a board is one set of rails, so its class has no type parameters";
        }
        else if (board.Rails.IsEmpty && !board.OverBudget && board.Members.All(member => member.Problems.IsEmpty && !member.IsUnknown))
        {
            reason = $"'{type.Name}' has no rails, so nothing is checked; declare a static member of type Rail, or take [Board] away";
        }

        if (reason is not null)
        {
            findings.Add(new Finding(FoundationRules.BadForm.Id, Places.Declaration(type, cancellation), reason));
        }

        if (BoardForm.WhyNoModel(type) is not null && TeamRules.IsPartial(type) && BoardForm.Clash(type) is { } clash)
        {
            findings.Add(new Finding(FoundationRules.BadForm.Id, clash.Locations.FirstOrDefault(place => place.IsInSource) ?? Places.Declaration(type, cancellation), $"'{clash.Name}' is a name that the generated Model and Review() of board '{type.Name}' need; give it another name, or take 'partial' away and the board is given neither"));
        }

        foreach (var member in type.GetMembers())
        {
            var held = member switch
            {
                IFieldSymbol { IsStatic: false, IsImplicitlyDeclared: false } field => field.Type,
                IPropertySymbol { IsStatic: false } property => property.Type,
                _ => null,
            };
            if (types.HoldsSources(held))
            {
                findings.Add(new Finding(FoundationRules.BadForm.Id, member.Locations[0], $"'{member.Name}' is not static, so it is not checked; the rails of a board are its static members"));
            }
        }
    }

    /// <summary>A date of the build that cannot be read would leave every waiver unjudged in silence.</summary>
    private static void AddToday(BoardEvaluation board, BoardSettings settings, List<Finding> findings)
    {
        if (settings.UnreadToday is { } text && board.Waivers.FirstDated is { } location)
        {
            findings.Add(new Finding(FoundationRules.BadForm.Id, location, $"the build property {BoardSettings.TodayProperty} is '{text}', which is no date, so whether this waiver is past its date is not judged; write year-month-day, e.g. 2027-06-30"));
        }
    }

    private static void AddBudget(BoardEvaluation board, EvaluationLimits limits, List<Finding> findings, CancellationToken cancellation)
    {
        if (board.Steps > limits.Steps && !board.Members.Any(member => member.Problems.Any(problem => problem.Kind == ProblemKind.Budget)))
        {
            findings.Add(new Finding(
                FoundationRules.BudgetExceeded.Id,
                Places.Declaration(board.Board, cancellation),
                $"evaluating '{board.Board.Name}' took {board.Steps} steps, the budget is {limits.Steps}; none of its rails is checked; split the board or compute less"));
        }
    }

    private static void AddProblems(BoardEvaluation board, EvaluationSession session, List<Finding> findings)
    {
        foreach (var member in board.Members)
        {
            foreach (var problem in member.Problems)
            {
                if (Places.Within(board.Board, problem.Origin) is { } node)
                {
                    findings.Add(new Finding(FindingText.RuleOf(problem.Kind).Id, node.GetLocation(), FindingText.Of(problem, Waiting(problem, board, session))));
                }
            }
        }
    }

    /// <summary>What waits for a value that could not be worked out, on which rail.</summary>
    public static string Waiting(Problem problem, BoardEvaluation board, EvaluationSession session)
    {
        var waiting = board.Checks.Where(check => check.Verdict == Verdict.Undecided && check.Rule != "RAIL0004" && check.Missing.Any(datum => Causes(problem, datum.Place, session))).ToList();
        return waiting.Count == 0
            ? "what depends on it is not checked"
            : FindingText.Count(waiting.Count, "check") + (waiting.Count == 1 ? " waits" : " wait") + " for it on '" + string.Join("', '", waiting.Select(check => check.Rail?.Name).Where(name => name is not null).Distinct().Take(3)) + "'";
    }

    private static bool Causes(Problem problem, DatumPlace place, EvaluationSession session)
    {
        if (place.Datum is null || !session.IsUnknown(place.Owner, place.Datum))
        {
            return false;
        }

        var datum = session.OriginOf(place.Owner, place.Datum);
        for (var current = problem.Origin; datum is not null && current is not null; current = current.Caller)
        {
            if (current.Node.SyntaxTree == datum.Node.SyntaxTree && datum.Node.Span.Contains(current.Node.Span))
            {
                return true;
            }
        }

        return false;
    }

    private static void AddChecks(BoardEvaluation board, KnownTypes types, EvaluationSession session, BoardSettings settings, TeamRuleSet rules, List<Finding> findings, CancellationToken cancellation)
    {
        // The same wrong expression makes the same finding on each of the rails it builds: one finding a place, the worst first, the others counted.
        var groups = new Dictionary<(string Rule, SyntaxTree? Tree, TextSpan Span), List<(Check Check, Finding Finding)>>();
        var order = new List<(string, SyntaxTree?, TextSpan)>();
        foreach (var check in board.Checks)
        {
            if (check.Verdict is not (Verdict.Fails or Verdict.Waived) || !(Descriptors.TryGet(check.Rule, out _) || rules.Find(check.Rule) is not null) || BelongsElsewhere(check, board, types, session))
            {
                continue;
            }

            var location = LocationOf(check, board, session, cancellation);
            var finding = new Finding(check.Rule, location, check.Message) { Others = OthersOf(check, location, session) };
            if (rules.Find(check.Rule) is { } own)
            {
                var severity = settings.SeverityOf(own.Id, location.SourceTree) ?? own.Severity;
                if (severity == FindingSeverity.Off)
                {
                    continue;
                }

                finding = finding with
                {
                    Id = FoundationRules.OfTeam.Id,
                    Message = $"{own.Id}: {check.Message}",
                    Severity = severity switch { FindingSeverity.Error => DiagnosticSeverity.Error, FindingSeverity.Warning => DiagnosticSeverity.Warning, _ => DiagnosticSeverity.Info },
                    Properties = finding.Properties.Add(Finding.Rule, own.Id).Add("title", own.Title).Add("help", own.Help),
                };
            }

            if (check.Waiver is { } waiver)
            {
                finding = new Finding(FoundationRules.Waived.Id, location, $"{check.Rule} is waived: {check.Message}; reason: {waiver.Text}")
                {
                    Others = board.Waivers.LocationOf(waiver) is { } written ? finding.Others.Insert(0, written) : finding.Others,
                    Properties = ImmutableDictionary<string, string?>.Empty.Add(Finding.Rule, check.Rule),
                };
            }

            var key = (check.Rule, location.SourceTree, location.SourceSpan);
            if (!groups.TryGetValue(key, out var group))
            {
                groups.Add(key, group = []);
                order.Add(key);
            }

            group.Add((check, finding));
        }

        foreach (var key in order)
        {
            var group = groups[key];
            foreach (var subject in group.GroupBy(item => SubjectKey(item.Check)))
            {
                var worst = subject.OrderBy(item => item.Check.Margin ?? 0).First();
                var rails = subject.Select(item => item.Check.Rail).Distinct().Count() - 1;
                findings.Add(rails > 0
                    ? worst.Finding with { Message = worst.Finding.Message + " (and so on " + FindingText.Count(rails, "more rail") + ")" }
                    : worst.Finding);
            }
        }
    }

    /// <summary>Findings at one place on several rails are one if they are about the same kind of datum.</summary>
    private static string SubjectKey(Check check) => (check.Places.Length < 2 ? "" : check.Places[1].Datum ?? "") + "\0" + check.Aspect + (check.Waiver is null ? "" : "\0" + check.Waiver.Text);

    /// <summary>A datum that contradicts itself is shown where the part is declared, by that type's own analysis.</summary>
    private static bool BelongsElsewhere(Check check, BoardEvaluation board, KnownTypes types, EvaluationSession session)
    {
        if (check.Rule != "RAIL0003" || check.Places.IsEmpty || session.OriginOf(check.Places[0].Owner, check.Places[0].Datum, check.Places[0].Index) is not { } origin)
        {
            return false;
        }

        var owner = origin.Member.ContainingType;
        return !Places.IsWithin(board.Board, owner) && (types.BoardAround(owner) is not null || types.ModelMembers(owner).Contains(origin.Member, SymbolEqualityComparer.Default));
    }

    public static Location LocationOf(Check check, BoardEvaluation board, EvaluationSession session, CancellationToken cancellation)
    {
        if (check.Part is Waiver waiver && board.Waivers.LocationOf(waiver) is { } written)
        {
            return written;
        }

        foreach (var place in check.Places)
        {
            if (Places.Within(board.Board, session.OriginOf(place.Owner, place.Datum, place.Index)) is { } node)
            {
                return node.GetLocation();
            }
        }

        if (check.Rail is { } rail)
        {
            if (Places.Within(board.Board, session.OriginOf(rail, null)) is { } made)
            {
                return made.GetLocation();
            }

            // The rail is another board's or another class's: shown where this board takes from it.
            foreach (var taker in board.Rails)
            {
                if (ReferenceEquals(taker.From, rail) && Places.Within(board.Board, session.OriginOf(taker, nameof(Rail.From))) is { } from)
                {
                    return from.GetLocation();
                }
            }
        }

        return Places.Declaration(board.Board, cancellation);
    }

    private static ImmutableArray<Location> OthersOf(Check check, Location primary, EvaluationSession session)
    {
        var others = ImmutableArray.CreateBuilder<Location>();
        foreach (var place in check.Places)
        {
            if (session.OriginOf(place.Owner, place.Datum, place.Index)?.Node.GetLocation() is { } location && location != primary && !others.Contains(location))
            {
                others.Add(location);
            }
        }

        return others.ToImmutable();
    }
}
