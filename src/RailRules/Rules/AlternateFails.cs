using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0701: an alternate part that fails where the first choice does not.</summary>
public sealed class AlternateFails : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0701",
        "An alternate part that fails where the first choice holds",
        RuleSeverity.Error,
        "Each of a part's alternates is put in its place and every rule is applied again to the rail, to those that feed it and to those that it feeds.")
    {
        Basis = "Every part that may be fitted has to hold in its place: common practice, no source",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network) => [];

    /// <inheritdoc/>
    public override IEnumerable<Check> Summarize(Network network, ImmutableArray<Check> checks)
    {
        var first = new Lazy<FirstChoice>(() => new FirstChoice(checks));
        foreach (var rail in network.Rails)
        {
            var index = -1;
            foreach (var place in network.Parts(rail))
            {
                index++;
                if (network.Unworkable(place.Part, place.Label, nameof(Element.Alternates)) is { } hidden)
                {
                    yield return Subject.Of(Description, place, nameof(Element.Alternates)).ToUndecided([hidden]);
                }

                foreach (var alternate in Network.Items(place.Part.Alternates))
                {
                    // What an alternate says of itself is RAIL0003's; on numbers that contradict each other nothing can rest.
                    if (alternate is null || ContradictoryDatum.Validate(alternate).Any(check => check.Verdict == Verdict.Fails))
                    {
                        continue;
                    }

                    foreach (var check in Judge(network, first.Value, place, index, alternate))
                    {
                        yield return check;
                    }
                }
            }
        }
    }

    private IEnumerable<Check> Judge(Network network, FirstChoice first, Network.PartPlace place, int index, Element alternate)
    {
        var substitution = new Substitution(network, place, index, alternate);
        var name = Network.Label(alternate, place.Rail, place.Place.Index ?? 0);
        var where = $"alternate '{name}' of '{place.Label}' on rail '{Network.Label(place.Rail)}'";
        var found = Silencing.Apply(network, [.. Checks(substitution).Concat(first.Spoiling)]).Where(check => check.Rule is not ("RAIL0003" or "RAIL0007")).ToList();
        var said = 0;
        foreach (var group in found.Where(check => check.Verdict == Verdict.Fails && !first.Fails(check)).GroupBy(check => check.Rule))
        {
            var worst = group.OrderBy(check => check.Margin ?? 0).First();
            said++;
            yield return Say(where, name, place, alternate, worst, first);
        }

        foreach (var group in found.Where(check => check.Verdict == Verdict.Undecided && first.LacksLess(check)).GroupBy(check => check.Rule))
        {
            said++;
            var missing = Subject.Distinct(group.SelectMany(check => check.Missing));
            yield return Say(where, name, place, alternate, group.First(), first) with { Missing = missing };
        }

        if (said == 0)
        {
            var least = found.Where(check => check.Verdict == Verdict.Holds && check.Margin is not null && ReferenceEquals(check.Part, place.Part) && ReferenceEquals(check.Rail, place.Rail)).OrderBy(check => check.Margin).FirstOrDefault();
            yield return new Check(Description.Id, where, Verdict.Holds, least?.Margin, least is null ? $"{where} holds wherever the first choice does" : $"{where} holds; its least margin is {Figures.Text(least.Margin!.Value, "×")} ({least.Rule})")
            {
                Rail = place.Rail,
                Part = alternate,
                Demand = least?.Demand,
                Capacity = least?.Capacity,
                Corner = least?.Corner ?? "",
                Working = least?.Working ?? [],
                Basis = Description.Basis,
                Places = [place.Place, new DatumPlace(alternate)],
            };
        }
    }

    /// <summary>The checks with the alternate in its place, those of things above and below included.</summary>
    private static IEnumerable<Check> Checks(Substitution substitution) =>
        Registry.All.Where(rule => rule is not (ContradictoryDatum or BrokenTopology or AlternateFails)).SelectMany(rule => Engine.Apply(rule, substitution.Network)).Select(substitution.ToOriginal);

    private Check Say(string where, string name, Network.PartPlace place, Element alternate, Check check, FirstChoice first)
    {
        var own = ReferenceEquals(check.Part, place.Part) && ReferenceEquals(check.Rail, place.Rail);
        var numbers = check is { Verdict: Verdict.Fails, Demand: { } demand, Capacity: { } capacity } ? $"{(own ? "" : check.Subject + ", ")}{demand.Text} against {capacity.Text}" : check.Message;
        var message = check.Verdict == Verdict.Fails ? $"{where} fails {check.Rule}: {numbers}; the first choice {first.Says(check)}" : $"{where}: {check.Rule} is undecided: {check.Message}";
        return check with
        {
            Rule = Description.Id,
            Subject = $"{where}: {check.Rule}",
            Message = message,
            Rail = place.Rail,
            Part = alternate,
            Aspect = $"{name} {check.Rule}",
            Basis = check.Basis,
            Places = [place.Place, .. own ? check.Places.Skip(1) : check.Places],
        };
    }

    /// <summary>What the rules say of the board as it is.</summary>
    private sealed class FirstChoice(ImmutableArray<Check> checks)
    {
        private readonly ILookup<(string Rule, Rail? Rail, DatumPlace Place, object? Part), Check> byPlace = checks.ToLookup(Key);

        /// <summary>Contradictory data and broken rails: nothing that rests on them is judged.</summary>
        public IEnumerable<Check> Spoiling { get; } = [.. checks.Where(check => check is { Rule: "RAIL0003" or "RAIL0007", Verdict: Verdict.Fails })];

        public bool Fails(Check check) => byPlace[Key(check)].Any(one => (one.WaivedVerdict ?? one.Verdict) == Verdict.Fails);

        /// <summary>Whether an undecided check lacks a datum that the first choice's does not.</summary>
        public bool LacksLess(Check check)
        {
            var lacked = new HashSet<DatumPlace>(byPlace[Key(check)].SelectMany(one => one.Missing).Select(datum => datum.Place));
            var fails = Fails(check);
            return !fails && (check.Missing.IsEmpty ? lacked.Count == 0 && !byPlace[Key(check)].Any(one => one.Verdict == Verdict.Undecided) : check.Missing.Any(datum => !lacked.Contains(datum.Place)));
        }

        public string Says(Check check)
        {
            var same = byPlace[Key(check)].ToList();
            var margins = same.Select(one => one.Margin).Where(margin => margin is not null).ToList();
            return same.Count == 0 ? "has no such check"
                : same.Any(one => (one.WaivedVerdict ?? one.Verdict) == Verdict.Undecided) ? "is undecided there"
                : margins.Count == 0 ? "holds"
                : double.IsInfinity(margins.Min()!.Value) ? "holds, since nothing is demanded" : "has " + Figures.Text(margins.Min()!.Value, "×");
        }

        /// <summary>A source is judged where the first of the rails at hand takes from it, so that the rail does not tell it.</summary>
        private static (string, Rail?, DatumPlace, object?) Key(Check check) =>
            check.Part is Source and not Rail ? (check.Rule, null, default, check.Part) : (check.Rule, check.Rail, check.Places.FirstOrDefault(), check.Part);
    }
}
