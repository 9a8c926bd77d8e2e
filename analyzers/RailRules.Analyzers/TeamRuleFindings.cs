using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers;

/// <summary>What is to be said of the team's own rules where they are written: forms that cannot work, clashing ids, what cannot be interpreted.</summary>
internal static class TeamRuleFindings
{
    /// <summary>The findings of the rules in a type and in those nested in it.</summary>
    public static IEnumerable<Finding> Of(INamedTypeSymbol type, CompilationBoards boards, CancellationToken cancellation)
    {
        var any = false;
        foreach (var (rule, attribute, method, fault) in In(type, cancellation))
        {
            any = true;
            var location = attribute.ApplicationSyntaxReference is { } reference ? Location.Create(reference.SyntaxTree, reference.Span) : method.Locations[0];
            if (rule is null)
            {
                yield return new Finding(FoundationRules.BadForm.Id, location, $"design rule '{method.Name}' cannot work: {fault}");
                continue;
            }

            foreach (var other in boards.Rules.Clashes(rule))
            {
                yield return new Finding(FoundationRules.BadForm.Id, location, $"design rule '{method.Name}' cannot work: its id {rule.Id} is that of '{other.Method.ContainingType.Name}.{other.Method.Name}' too; give it one of its own")
                {
                    Others = [.. other.Method.Locations.Where(place => place.IsInSource)],
                };
            }

            if (boards.Settings.UnreadSeverity(rule.Id, location.SourceTree) is { } text)
            {
                yield return new Finding(FoundationRules.BadForm.Id, location, $"railrules.{rule.Id}.severity is '{text}', which is no severity; write none, suggestion, warning or error");
            }
        }

        if (!any)
        {
            yield break;
        }

        var told = new HashSet<(Evaluation.ProblemKind, SyntaxNode)>();
        foreach (var board in boards.AllBoards(cancellation))
        {
            foreach (var (rule, problem, on) in board.Team.Problems)
            {
                if (Places.Within(type, problem.Origin) is { } node && told.Add((problem.Kind, node)))
                {
                    yield return new Finding(FindingText.RuleOf(problem.Kind).Id, node.GetLocation(), FindingText.Of(problem, $"so {rule.Id} is not decided at compile time on '{string.Join("', '", on.Take(3))}'{(on.Length > 3 ? " and others" : "")}; Review() runs it"));
                }
            }
        }
    }

    private static IEnumerable<(TeamRule? Rule, AttributeData Attribute, IMethodSymbol Method, string? Fault)> In(INamedTypeSymbol type, CancellationToken cancellation) =>
        TeamRules.In(type, cancellation).Concat(type.GetTypeMembers().SelectMany(nested => In(nested, cancellation)));
}
