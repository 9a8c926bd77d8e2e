using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0004: checks left undecided, one finding a rail, with the data that are missing and the rules that wait for them.</summary>
public sealed class UndecidedChecks : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0004",
        "Checks left undecided for want of data",
        RuleSeverity.Warning,
        "Checks of a rail that neither hold nor fail whatever the missing data are; one finding a rail lists the data and the rules that wait.")
    {
        Basis = "What is unknown is not passed: this library's own rule",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network) => [];

    /// <inheritdoc/>
    internal override int Stage => 1;

    /// <inheritdoc/>
    public override IEnumerable<Check> Summarize(Network network, ImmutableArray<Check> checks)
    {
        var named = new HashSet<(DatumPlace, object?)>(checks.Where(check => check.Rule == "RAIL0202" && check.Verdict == Verdict.Fails).Select(PartOf));
        var byRail = checks.Where(check => check.Rail is not null && check.Rule != Description.Id).ToLookup(check => check.Rail!);
        foreach (var rail in network.Rails)
        {
            var all = byRail[rail].ToList();
            var undecided = all.Where(check => check.Verdict == Verdict.Undecided).ToList();

            // RAIL0202 has named the missing derating of a part already; RAIL0201 waits for the same.
            undecided.RemoveAll(check => check.Rule == "RAIL0201" && named.Contains(PartOf(check)));

            // What was written and could not be worked out is a finding of its own, at the place where it is written.
            bool Waits(Check check) => check.Missing.Any(datum => datum.Place.Datum is { } name && network.IsUnknown(datum.Place.Owner, name));
            var waiting = undecided.Where(Waits).ToList();
            undecided.RemoveAll(Waits);
            if (all.Count > 0)
            {
                yield return Summary(rail, all.Count, undecided, waiting);
            }
        }
    }

    private static (DatumPlace Place, object? Part) PartOf(Check check) => (check.Places.FirstOrDefault(), check.Part);

    private Check Summary(Rail rail, int count, List<Check> undecided, List<Check> waits)
    {
        var label = Network.Label(rail);
        var waiting = waits.Count;
        var missing = new List<(MissingDatum Datum, SortedSet<string> Rules)>();
        var at = new Dictionary<DatumPlace, int>();
        foreach (var check in undecided)
        {
            foreach (var datum in check.Missing)
            {
                if (!at.TryGetValue(datum.Place, out var index))
                {
                    at.Add(datum.Place, index = missing.Count);
                    missing.Add((datum, new SortedSet<string>(StringComparer.Ordinal)));
                }

                missing[index].Rules.Add(check.Rule);
            }
        }

        var message = undecided.Count == 0
            ? waiting == 0 ? $"'{label}': all checks are decided" : $"'{label}': {waiting} {(waiting == 1 ? "check waits" : "checks wait")} for values that could not be worked out"
            : $"'{label}': {undecided.Count} {(undecided.Count == 1 ? "check" : "checks")} undecided; "
                + (missing.Count > 0
                    ? "missing " + string.Join(", ", missing.Select(one => $"{one.Datum.Place.Datum ?? "value"} of '{one.Datum.Of}' ({string.Join(", ", one.Rules)})"))
                    : string.Join("; ", undecided.Select(check => check.Message)));
        return new Check(Description.Id, $"rail '{label}': undecided checks", undecided.Count > 0 ? Verdict.Fails : waiting > 0 ? Verdict.Undecided : Verdict.Holds, null, message)
        {
            Rail = rail,
            Part = rail,
            Demand = new Figure(count, ""),
            Capacity = new Figure(count - undecided.Count - waiting, ""),
            Corner = "data missing at both ends of their bounds",
            Basis = Description.Basis,
            Missing = undecided.Count > 0 ? [.. missing.Select(one => one.Datum)] : Subject.Distinct(waits.SelectMany(check => check.Missing)),
            Places = [new DatumPlace(rail), .. missing.Select(one => one.Datum.Place)],
        };
    }
}
