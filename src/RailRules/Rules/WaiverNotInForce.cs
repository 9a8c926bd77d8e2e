using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0008: a waiver without reason or approver, past its date, or no longer needed.</summary>
public sealed class WaiverNotInForce : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0008",
        "A waiver that is empty, past its date, or no longer needed",
        RuleSeverity.Warning,
        "A waiver needs a reason and an approver and ends on its date; one that nothing needs any more hides the next finding.")
    {
        Basis = "A deviation has a reason, an approver and an end: common practice, no source",
    };

    /// <inheritdoc/>
    internal override int Stage => 3;

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network) => [];

    /// <inheritdoc/>
    public override IEnumerable<Check> Summarize(Network network, ImmutableArray<Check> checks) => network.Waivers?.Judge(Description) ?? [];
}
