using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;
using RailRules.Rules;

namespace RailRules.Analyzers;

/// <summary>
/// The findings of a type that is no board: parts that contradict themselves, values that a board needs and that could not be worked out, rails that no board reaches.
/// </summary>
internal static class PartFindings
{
    public static ImmutableArray<Finding> Of(INamedTypeSymbol type, IReadOnlyList<ISymbol> members, CompilationBoards boards, KnownTypes types, EvaluationSession session, CancellationToken cancellation)
    {
        var findings = new List<Finding>();
        var reachedBy = new Lazy<List<BoardEvaluation>>(() => [.. boards.AllBoards(cancellation)]);
        foreach (var member in members)
        {
            var result = session.Evaluate(member, cancellation);
            AddContradictions(type, result, session, findings);
            AddUnreached(type, member, result, reachedBy, session, findings);
        }

        AddWaivers(type, members, types, findings);
        AddProblems(type, reachedBy.Value, session, findings);
        return [.. findings.Distinct().OrderBy(finding => finding.Location.SourceTree?.FilePath, StringComparer.Ordinal).ThenBy(finding => finding.Location.SourceSpan.Start).ThenBy(finding => finding.Id, StringComparer.Ordinal)];
    }

    /// <summary>Values of this type's members, of whatever kind, that a board needs and that could not be worked out; each once, with the first board that needs it.</summary>
    private static void AddProblems(INamedTypeSymbol type, List<BoardEvaluation> boards, EvaluationSession session, List<Finding> findings)
    {
        var told = new HashSet<ISymbol>(SymbolEqualityComparer.Default);
        foreach (var board in boards)
        {
            foreach (var member in board.Members)
            {
                if (member.Problems.IsEmpty || !SymbolEqualityComparer.Default.Equals(member.Member.ContainingType, type) || !told.Add(member.Member))
                {
                    continue;
                }

                foreach (var problem in member.Problems)
                {
                    if (Places.Within(type, problem.Origin) is { } node)
                    {
                        findings.Add(new Finding(FindingText.RuleOf(problem.Kind).Id, node.GetLocation(), FindingText.Of(problem, BoardFindings.Waiting(problem, board, session))));
                    }
                }
            }
        }
    }

    private static void AddWaivers(INamedTypeSymbol type, IReadOnlyList<ISymbol> members, KnownTypes types, List<Finding> findings)
    {
        foreach (var symbol in members.Prepend(type))
        {
            foreach (var attribute in types.WaiversOn(symbol))
            {
                var waiver = BoardWaivers.Read(attribute);
                findings.Add(new Finding(FoundationRules.BadForm.Id, BoardWaivers.LocationOf(attribute) ?? symbol.Locations[0], $"waiver of {waiver.Rule} on '{symbol.Name}' cannot work: '{type.Name}' is no board; write it on the [Board] class whose rails have the finding, with On naming what it covers"));
            }
        }
    }

    private static void AddContradictions(INamedTypeSymbol type, MemberResult result, EvaluationSession session, List<Finding> findings)
    {
        if (result.IsUnknown)
        {
            return;
        }

        foreach (var part in ModelWalk.CollectModelObjects(result.Value))
        {
            foreach (var check in ContradictoryDatum.Validate(part))
            {
                var place = check.Places[0];
                if (check.Verdict == Verdict.Fails && Places.Within(type, session.OriginOf(place.Owner, place.Datum, place.Index)) is { } node)
                {
                    findings.Add(new Finding(check.Rule, node.GetLocation(), check.Message));
                }
            }
        }
    }

    private static void AddUnreached(INamedTypeSymbol type, ISymbol member, MemberResult result, Lazy<List<BoardEvaluation>> boards, EvaluationSession session, List<Finding> findings)
    {
        if (result.IsUnknown)
        {
            return;
        }

        var rails = new List<Rail>();
        ModelWalk.CollectRails(result.Value, rails, new HashSet<object>(ReferenceComparer.Instance));
        foreach (var rail in rails)
        {
            // Rails of a property that makes new ones are judged where they are read; the others by identity.
            if (SymbolEqualityComparer.Default.Equals(session.MadeBy(rail), member)
                && !boards.Value.Any(board => board.Rails.Contains(rail))
                && Places.Within(type, session.OriginOf(rail, null)) is { } node)
            {
                findings.Add(new Finding(FoundationRules.UnreachedRail.Id, node.GetLocation(), $"no [Board] class leads to rail '{rail.Name}' of '{type.Name}', so it is not checked; mark the class [Board], or feed a board's rail from it"));
            }
        }
    }
}
