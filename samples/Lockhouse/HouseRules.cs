using RailRules;

namespace Lockhouse;

/// <summary>Rules of the team's own. Invented, not for use.</summary>
internal static class HouseRules
{
    /// <summary>Every fuse has a citation: where its data come from.</summary>
    [DesignRule("LOCK001", "A fuse without a citation", Severity = FindingSeverity.Error)]
    internal static IEnumerable<Check> Cited(Rail rail)
    {
        foreach (var fuse in rail.Path.OfType<Fuse>())
        {
            yield return Check.That(fuse.Citation is not null, $"'{fuse.PartNumber ?? fuse.Designator ?? "fuse"}' on rail '{rail.Name}' has no citation");
        }
    }

    /// <summary>The house loads a rail with no more than three quarters of its smallest fuse, whatever the standard allows.</summary>
    [DesignRule("LOCK002", "A fuse used above the house's share of its rating")]
    internal static IEnumerable<Check> Share(Rail rail)
    {
        for (var i = 0; i < rail.Path.Length; i++)
        {
            if (rail.Path[i] is not Fuse fuse || rail.Loads.IsEmpty)
            {
                continue;
            }

            if (fuse.RatedCurrent is not { } rated)
            {
                yield return Check.Undecided(fuse, nameof(Fuse.RatedCurrent), fuse.PartNumber ?? "fuse");
                continue;
            }

            var drawn = new Figure(rail.Loads.Sum(load => load.Power is { } power && load.MinVoltage is { } least ? (double)power.Max.Watts / least.Volts : 0), "A");
            var allowed = new Figure(0.75 * rated.Amperes, "A");
            yield return Check.Weigh(drawn, allowed, $"the loads of rail '{rail.Name}' draw {drawn.Text} at their lowest voltage; the house allows {allowed.Text} on '{fuse.PartNumber}'", new DatumPlace(rail, nameof(Rail.Path), i), new DatumPlace(fuse, nameof(Fuse.RatedCurrent)));
        }
    }

    /// <summary>The cabin has room for ten rails.</summary>
    [DesignRule("LOCK003", "More rails than the cabin has room for", Severity = FindingSeverity.Information)]
    internal static IEnumerable<Check> Room(BoardModel board)
    {
        yield return Check.Weigh(new Figure(board.Rails.Length, ""), new Figure(10, ""), $"{board.Name} has {board.Rails.Length} rails");
    }
}
