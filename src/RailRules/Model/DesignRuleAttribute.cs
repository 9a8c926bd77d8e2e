namespace RailRules;

/// <summary>
/// Marks a rule of the team's own: <c>[DesignRule("LOCK001", "Two fuses at most on a rail", Severity = FindingSeverity.Error)] static IEnumerable&lt;Check&gt; Name(Rail rail)</c>, or with a
/// <see cref="BoardModel"/> in place of the rail. It is applied to every rail of every board, or to every board, by the compiler (RAIL0910) and by the board's <c>Review()</c>.
/// </summary>
/// <param name="id">The team's id: a letter, then letters, digits, <c>_</c>, <c>-</c> or <c>.</c>; never beginning with RAIL.</param>
/// <param name="title">What the rule finds, without a final period.</param>
/// <remarks>The documentation comment of the method is the help that people see. A rule that cannot work is RAIL0012.</remarks>
[AttributeUsage(AttributeTargets.Method, Inherited = false)]
public sealed class DesignRuleAttribute(string id, string title) : Attribute
{
    /// <summary>The team's id.</summary>
    public string Id => id;

    /// <summary>What the rule finds.</summary>
    public string Title => title;

    /// <summary>How a failing check is shown; <c>railrules.LOCK001.severity</c> in .editorconfig overrides it.</summary>
    public FindingSeverity Severity { get; set; } = FindingSeverity.Warning;
}

/// <summary>How a finding of a rule of the team's own is shown.</summary>
public enum FindingSeverity
{
    /// <summary>Not shown by the compiler; in reviews it stays.</summary>
    Off,

    /// <summary>Shown as information.</summary>
    Information,

    /// <summary>A warning.</summary>
    Warning,

    /// <summary>An error: the build fails.</summary>
    Error,
}

/// <summary>Written by the generator: a public rule of the team's own, so that the boards of other assemblies find it without looking at every type.</summary>
/// <param name="id">The team's id.</param>
/// <param name="title">What the rule finds.</param>
/// <param name="severity">How a failing check is shown.</param>
/// <param name="type">The class in which the rule stands.</param>
/// <param name="method">The rule's method.</param>
/// <param name="help">The method's documentation comment as plain text.</param>
[AttributeUsage(AttributeTargets.Assembly, AllowMultiple = true)]
[System.ComponentModel.EditorBrowsable(System.ComponentModel.EditorBrowsableState.Never)]
public sealed class CarriedDesignRuleAttribute(string id, string title, FindingSeverity severity, Type type, string method, string help) : Attribute
{
    /// <summary>The team's id.</summary>
    public string Id => id;

    /// <summary>What the rule finds.</summary>
    public string Title => title;

    /// <summary>How a failing check is shown.</summary>
    public FindingSeverity Severity => severity;

    /// <summary>The class in which the rule stands.</summary>
    public Type Type => type;

    /// <summary>The rule's method.</summary>
    public string Method => method;

    /// <summary>The method's documentation comment as plain text.</summary>
    public string Help => help;
}
