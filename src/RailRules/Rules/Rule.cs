using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>
/// A design rule: gets a board's rails, gives checks. A rule is one file here, one page in docs/rules and one test file, all named after it or its id.
/// </summary>
/// <remarks>
/// A rule is found by being a public, concrete subclass with a parameterless constructor in this assembly; it holds no state. It reads neither clock nor files, culture nor environment.
/// </remarks>
public abstract class Rule
{
    /// <summary>What the rule is: the one place where id, title and texts are written.</summary>
    public abstract RuleDescription Description { get; }

    /// <summary>Applies the rule to every place of the board. No check is made where the rule's definition says so.</summary>
    public abstract IEnumerable<Check> Apply(Network network);

    /// <summary>Checks about the checks of all rules, made when those are known and silenced; none unless a rule says otherwise.</summary>
    /// <param name="network">The board.</param>
    /// <param name="checks">The checks of all rules.</param>
    public virtual IEnumerable<Check> Summarize(Network network, ImmutableArray<Check> checks) => [];

    /// <summary>When it summarizes: the later sees what the earlier said.</summary>
    internal virtual int Stage => 0;
}

/// <summary>The one description of a rule, from which descriptors, index and pages are made.</summary>
/// <param name="Id">RAIL and four digits; the first two say the family.</param>
/// <param name="Title">What it finds, without a final period.</param>
/// <param name="Severity">The default severity.</param>
/// <param name="Summary">One sentence for help, with a final period.</param>
public sealed record RuleDescription(string Id, string Title, RuleSeverity Severity, string Summary)
{
    /// <summary>The rules' sources: standard and section, or "common practice, no source".</summary>
    public string Basis { get; init; } = "";

    /// <summary>The family by the first two digits, e.g. Voltage and direction.</summary>
    public string Family => Id.Length >= 6 ? Id.Substring(4, 2) switch
    {
        "00" => "Foundation",
        "01" => "Voltage and direction",
        "02" => "Current",
        "03" => "Faults",
        "04" => "Starting",
        "05" => "Drop and heat",
        "06" => "Material and quality",
        "07" => "Over time",
        _ => "Team",
    }
    : "Team";
}

/// <summary>Default severities of rules.</summary>
public enum RuleSeverity
{
    /// <summary>Off until turned on.</summary>
    Off,

    /// <summary>Shown as information.</summary>
    Information,

    /// <summary>A suggestion in editors.</summary>
    Suggestion,

    /// <summary>A warning.</summary>
    Warning,

    /// <summary>An error: the build fails.</summary>
    Error,
}

/// <summary>Every rule of this library, in order of id.</summary>
public static class Registry
{
    private static readonly Lazy<ImmutableArray<Rule>> Rules = new(Find);

    /// <summary>The rules that work on the model.</summary>
    public static ImmutableArray<Rule> All => Rules.Value;

    private static ImmutableArray<Rule> Find() =>
    [
        .. typeof(Rule).Assembly.GetTypes()
            .Where(type => type is { IsAbstract: false, IsPublic: true } && typeof(Rule).IsAssignableFrom(type))
            .Select(type => (Rule)Activator.CreateInstance(type)!)
            .OrderBy(rule => rule.Description.Id, StringComparer.Ordinal),
    ];
}
