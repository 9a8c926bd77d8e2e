using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>
/// A demand weighed against a capacity, each between bounds where data are absent: the comparison is made at the best and at the worst end.
/// The same outcome at both ends is the verdict, with the bound in the working; a different one is undecided, and the data are named.
/// </summary>
internal sealed class Weighing
{
    private Weighing()
    {
    }

    /// <summary>Equality holds in every rule: what falls short by no more than this share does too.</summary>
    internal const double Tolerance = 1e-9;

    internal Verdict Verdict { get; private init; }

    /// <summary>The demand that goes with the verdict: the largest that is possible where it holds, the least where it fails.</summary>
    internal double Demand { get; private init; }

    /// <summary>The capacity that goes with the verdict: the least that is possible where it holds, the largest where it fails.</summary>
    internal double Capacity { get; private init; }

    internal double? Margin => Verdict == Verdict.Undecided ? null : Demand <= 0 ? double.PositiveInfinity : Capacity / Demand;

    /// <summary>Whether both ends are one.</summary>
    internal bool IsExact { get; private init; }

    internal static Weighing Of(Range demand, Range capacity)
    {
        var exact = demand.IsExact && capacity.IsExact;
        if (Covers(capacity.Low, demand.High))
        {
            return new Weighing { Verdict = Verdict.Holds, Demand = demand.High, Capacity = capacity.Low, IsExact = exact };
        }

        return new Weighing
        {
            Verdict = Covers(capacity.High, demand.Low) ? Verdict.Undecided : Verdict.Fails,
            Demand = demand.Low,
            Capacity = capacity.High,
            IsExact = exact,
        };
    }

    /// <summary>Whether a capacity covers a demand, within the tolerance; nothing demanded is covered.</summary>
    internal static bool Covers(double capacity, double demand) => demand <= 0 || (!double.IsNaN(capacity) && capacity >= demand * (1 - Tolerance));

    /// <summary>A check of this outcome.</summary>
    internal Check ToCheck(Subject subject, string unit, string message, IEnumerable<WorkingStep> working, IEnumerable<MissingDatum> missing)
    {
        var decided = Verdict != Verdict.Undecided;
        var names = decided ? [] : Subject.Distinct(missing);
        var steps = working.ToList();
        if (decided && !IsExact)
        {
            steps.Add(new WorkingStep("bound", "", "", new Figure(Verdict == Verdict.Holds ? Capacity : Demand, unit), $"absent data at their {(Verdict == Verdict.Holds ? "worst" : "best")} end; the other end gives the same verdict"));
        }

        return new Check(subject.Rule.Id, subject.Text, Verdict, Margin, decided ? message : subject.Undecided(names))
        {
            Rail = subject.Rail,
            Part = subject.Part,
            Demand = double.IsInfinity(Demand) ? null : new Figure(Demand, unit),
            Capacity = double.IsInfinity(Capacity) ? null : new Figure(Capacity, unit),
            Working = [.. steps],
            Basis = subject.Rule.Basis,
            Missing = names,
            Places = subject.Places,
        };
    }
}

/// <summary>What a check is about.</summary>
internal sealed class Subject
{
    private readonly string label;
    private readonly string datum;

    private Subject(RuleDescription rule, string label, string datum, Rail rail, object part, ImmutableArray<DatumPlace> places)
    {
        Rule = rule;
        this.label = label;
        this.datum = datum;
        Rail = rail;
        Part = part;
        Places = places;
    }

    internal RuleDescription Rule { get; }

    internal Rail Rail { get; }

    internal object Part { get; }

    internal ImmutableArray<DatumPlace> Places { get; }

    /// <summary>"'Reed20' on rail 'Sled 1'".</summary>
    internal string Where => ReferenceEquals(Part, Rail) ? $"rail '{label}'" : $"'{label}' on rail '{Network.Label(Rail)}'";

    internal string Text => $"{Where}: {datum}";

    internal static Subject Of(RuleDescription rule, Network.PartPlace place, string datum, params DatumPlace[] more) =>
        new(rule, place.Label, datum, place.Rail, place.Part, [place.Place, new DatumPlace(place.Part, datum), .. more]);

    internal static Subject Of(RuleDescription rule, Rail rail, string collection, int index, object part, string label, string datum) =>
        new(rule, label, datum, rail, part, [new DatumPlace(rail, collection, index), new DatumPlace(part, datum)]);

    /// <summary>A source, at the place where a rail takes from it.</summary>
    internal static Subject Of(RuleDescription rule, Rail rail, DatumPlace place, Source source, DatumPlace datum) =>
        new(rule, Network.Label(source), datum.Datum ?? "", rail, source, [place, datum]);

    internal static Subject Of(RuleDescription rule, Rail rail, DatumPlace place) => new(rule, Network.Label(rail), place.Datum ?? "", rail, rail, [place]);

    /// <summary>A rail, for a datum of something it names.</summary>
    internal static Subject Of(RuleDescription rule, Rail rail, DatumPlace place, DatumPlace datum) => new(rule, Network.Label(rail), datum.Datum ?? "", rail, rail, [place, datum]);

    internal string Undecided(ImmutableArray<MissingDatum> missing) => missing.IsEmpty
        ? $"{Where} cannot be judged"
        : $"{Where} cannot be judged without {string.Join(", ", missing.Take(4).Select(one => $"{one.Place.Datum} of '{one.Of}'"))}{(missing.Length > 4 ? ", ..." : "")}";

    internal static ImmutableArray<MissingDatum> Distinct(IEnumerable<MissingDatum> missing) => [.. missing.GroupBy(one => one.Place).Select(group => group.First())];

    /// <summary>A check that cannot be made for want of data.</summary>
    internal Check ToUndecided(IEnumerable<MissingDatum> missing)
    {
        var names = Distinct(missing);
        return new Check(Rule.Id, Text, Verdict.Undecided, null, Undecided(names)) { Rail = Rail, Part = Part, Missing = names, Places = Places, Basis = Rule.Basis };
    }

    /// <summary>A structural check: no demand, no capacity, no margin.</summary>
    internal Check ToStructural(bool holds, string message, params WorkingStep[] working) =>
        new(Rule.Id, Text, holds ? Verdict.Holds : Verdict.Fails, null, message) { Rail = Rail, Part = Part, Places = Places, Basis = Rule.Basis, Working = [.. working] };

    /// <summary>An undecided check for each thing that hides parts of a rail, so that none is passed unseen.</summary>
    internal static IEnumerable<Check> Hidden(RuleDescription rule, Network network, Rail rail, params string[] collections)
    {
        foreach (var hidden in network.HiddenParts(rail))
        {
            yield return Of(rule, rail, hidden.Place).ToUndecided([hidden]);
        }

        foreach (var collection in collections)
        {
            if (network.Unworkable(rail, Network.Label(rail), collection) is { } hidden)
            {
                yield return Of(rule, rail, hidden.Place).ToUndecided([hidden]);
            }
        }
    }
}
