using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;
using RailRules.Rules;

namespace RailRules.Analyzers;

/// <summary>Words of the findings that the analyzer itself makes.</summary>
internal static class FindingText
{
    /// <summary>The rule a problem of evaluation belongs to.</summary>
    public static RuleDescription RuleOf(ProblemKind kind) => kind switch
    {
        ProblemKind.NotComputable => FoundationRules.NotComputable,
        ProblemKind.Budget => FoundationRules.BudgetExceeded,
        ProblemKind.Throws => FoundationRules.Throws,
        ProblemKind.NotInitialised => FoundationRules.NotInitialised,
        ProblemKind.ForeignValue => FoundationRules.ForeignValue,
        ProblemKind.UnreadTable => FoundationRules.UnreadTable,
        _ => FoundationRules.NotComputable,
    };

    /// <summary>The message of a problem; <paramref name="waiting"/> says what waits for the value.</summary>
    public static string Of(Problem problem, string waiting)
    {
        var expression = Shorten(problem.Origin.Node.ToString());
        var remedy = problem.Remedy.Length == 0 ? "" : "; " + problem.Remedy;
        return problem.Kind switch
        {
            ProblemKind.NotComputable => $"'{expression}' cannot be worked out at compile time: {problem.Reason}{remedy}; {waiting}",
            ProblemKind.Budget => $"evaluating '{problem.Origin.Member.Name}' stopped: {problem.Reason}{remedy}; {waiting}",
            ProblemKind.Throws => $"'{expression}': {problem.Reason}{remedy}; {waiting}",
            ProblemKind.NotInitialised => $"{problem.Reason}{remedy}; {waiting}",
            ProblemKind.UnreadTable => $"'{expression}': {problem.Reason}; {waiting}",
            _ => $"'{expression}' is not known here: {problem.Reason}{remedy}; {waiting}",
        };
    }

    /// <summary>One line of at most 60 characters.</summary>
    public static string Shorten(string text)
    {
        var line = string.Join(" ", text.Split(['\r', '\n', '\t', ' '], StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 60 ? line : line.Substring(0, 57) + "...";
    }

    public static string Count(int count, string noun) => count == 1 ? "1 " + noun : count.ToString(System.Globalization.CultureInfo.InvariantCulture) + " " + noun + "s";
}
