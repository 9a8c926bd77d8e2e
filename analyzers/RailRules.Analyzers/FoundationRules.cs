using RailRules.Rules;

namespace RailRules.Analyzers;

/// <summary>
/// The rules that belong to the analyzer itself: what could not be evaluated, reached or checked. The rules on the model describe themselves in RailRules.Rules.
/// </summary>
internal static class FoundationRules
{
    public static readonly RuleDescription NotComputable = new(
        "RAIL0001", "A value the compiler cannot work out", RuleSeverity.Warning,
        "An expression that a board needs cannot be evaluated at compile time; every check that depends on it is undecided.");

    public static readonly RuleDescription BudgetExceeded = new(
        "RAIL0002", "Evaluation stopped at its budget", RuleSeverity.Error,
        "Evaluating a board took more steps, depth or elements than the budget allows; all its checks are undecided.");

    public static readonly RuleDescription UnreadTable = new(
        "RAIL0006", "A parts-table line that cannot be read", RuleSeverity.Error,
        "A cell, a header or a whole line of a parts table cannot be read; the datum is unknown, and every check that depends on it is undecided.");

    public static readonly RuleDescription UnreachedRail = new(
        "RAIL0009", "A rail that no board reaches", RuleSeverity.Warning,
        "A rail is declared outside every [Board] class and no board leads to it, so it is not checked.");

    public static readonly RuleDescription Throws = new(
        "RAIL0010", "Evaluated code throws", RuleSeverity.Error,
        "Code that a board evaluates throws an exception; the program would fail at the same place.");

    public static readonly RuleDescription NotInitialised = new(
        "RAIL0011", "A static read before C# gives it a value", RuleSeverity.Error,
        "Static members are initialised in the order in which they stand; this one is read before that, so the program would see no value.");

    public static readonly RuleDescription BadForm = new(
        "RAIL0012", "A board, rule or waiver in a form that cannot work", RuleSeverity.Error,
        "A class marked [Board], a waiver or a rule of the team's own is written in a form in which it cannot do what it is for.");

    public static readonly RuleDescription ForeignValue = new(
        "RAIL0013", "A value of another assembly that is not carried", RuleSeverity.Warning,
        "Values of a compiled assembly are known only as constants; what depends on this one is undecided.");

    /// <summary>Reported by the package's build assets; the analyzer does not run where it is due.</summary>
    public static readonly RuleDescription Unchecked = new(
        "RAIL0014", "Rails left unchecked by this build", RuleSeverity.Error,
        "The build has boards, and its compiler is too old to check them or analysis is switched off.");

    public static readonly RuleDescription Waived = new(
        "RAIL0015", "A waived finding", RuleSeverity.Information,
        "A check that fails or is undecided and that the team has waived, with the reason; it stays in every review.");

    public static readonly RuleDescription OfTeam = new(
        "RAIL0910", "A finding of a rule of the team's own", RuleSeverity.Warning,
        "A rule marked [DesignRule] finds something; its own id stands first in the message and in the properties, and its own severity applies.");

    public static readonly IReadOnlyList<RuleDescription> All =
        [NotComputable, BudgetExceeded, UnreadTable, UnreachedRail, Throws, NotInitialised, BadForm, ForeignValue, Unchecked, Waived, OfTeam];
}
