using RailRules;

namespace Lockhouse;

/// <summary>Rules of the team's own. Invented, not for use.</summary>
internal static class HouseRules
{
    /// <summary>Every fuse has a citation: where its data come from.</summary>
    [DesignRule("LOCK001", "A fuse without a citation", Severity = FindingSeverity.Error)]
    internal static IEnumerable<Check> Cited(Rail rail)
    {
        for (var i = 0; i < rail.Path.Length; i++)
        {
            if (rail.Path[i] is Fuse fuse)
            {
                yield return Check.That(fuse.Citation is not null, $"'{fuse.PartNumber ?? fuse.Designator ?? "fuse"}' on rail '{rail.Name}' has no citation") with { Places = [new DatumPlace(rail, nameof(Rail.Path), i)] };
            }
        }
    }
}
