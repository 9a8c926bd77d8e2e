namespace RailRules;

/// <summary>Marks a class whose static members describe the rails of a board; the analyzer evaluates and checks it.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class BoardAttribute : Attribute;

/// <summary>
/// Says that the team knows of a finding and lives with it: <c>[Waiver("RAIL0305", On = nameof(Bus), Reason = "...", ApprovedBy = "protection engineer", Until = "2027-06-30")]</c>.
/// On a board's class it covers the board, on a member what that member holds. The finding is shown as information (RAIL0015) and stays in every review as waived.
/// </summary>
/// <param name="rule">The id of the rule that is waived: one of this library's, or the team's own.</param>
/// <remarks>A waiver without reason or approver, or past its date, waives nothing (RAIL0008).</remarks>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Field | AttributeTargets.Property, AllowMultiple = true, Inherited = false)]
public sealed class WaiverAttribute(string rule) : Attribute
{
    /// <summary>The id of the rule that is waived.</summary>
    public string Rule => rule;

    /// <summary>What it covers: a member of the board, a rail by its name, a part by its designator or part number. Null: all that it stands on.</summary>
    public string? On { get; set; }

    /// <summary>Why the finding may stay. Needed.</summary>
    public string? Reason { get; set; }

    /// <summary>Who has approved it: a role, or a name. Needed.</summary>
    public string? ApprovedBy { get; set; }

    /// <summary>The last day on which it holds, as year-month-day (2027-06-30); null: until it is taken away. Judged against the build property <c>RailRulesToday</c>.</summary>
    public string? Until { get; set; }
}
