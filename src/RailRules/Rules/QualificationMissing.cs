using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0602: required qualification missing.</summary>
public sealed class QualificationMissing : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0602",
        "Required qualification missing",
        RuleSeverity.Warning,
        "The surroundings of a part require a qualification by name that the part does not state, neither itself nor one that the policy lets count as it.")
    {
        Basis = "The requirement that the surroundings state; names are compared exactly",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail).Where(_ => Requires(network, rail)))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (Network.MakeOf(place.Part) is { } make)
                {
                    foreach (var check in Judge(network, place, make))
                    {
                        yield return check;
                    }
                }
            }
        }
    }

    private static bool Requires(Network network, Rail rail)
    {
        var (stated, hidden) = network.SurroundingsOf(rail);
        return hidden is not null || stated.Any(one => Network.Items(one.Surroundings.RequiredQualifications).Length > 0 || network.IsUnknown(one.Surroundings, nameof(Surroundings.RequiredQualifications)));
    }

    private IEnumerable<Check> Judge(Network network, Network.PartPlace place, Network.Make make)
    {
        var subject = Subject.Of(Description, place, nameof(Fuse.Qualifications));
        var (stated, hidden) = network.SurroundingsOf(place);
        var (surroundings, label) = stated.FirstOrDefault(one =>
            Network.Items(one.Surroundings.RequiredQualifications).Length > 0 || network.IsUnknown(one.Surroundings, nameof(Surroundings.RequiredQualifications)));
        if (surroundings is null)
        {
            if (hidden is not null)
            {
                yield return subject.ToUndecided([hidden]);
            }

            yield break;
        }

        var place0 = new DatumPlace(surroundings, nameof(Surroundings.RequiredQualifications));
        if (network.IsUnknown(surroundings, nameof(Surroundings.RequiredQualifications)))
        {
            yield return subject.ToUndecided([new MissingDatum(place0, label)]);
            yield break;
        }

        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        foreach (var required in Network.Items(surroundings.RequiredQualifications).Distinct(StringComparer.Ordinal))
        {
            if (make.Qualifications is not { IsDefault: false } has)
            {
                yield return subject.ToUndecided([new MissingDatum(new DatumPlace(place.Part, nameof(Fuse.Qualifications)), place.Label)]);
                continue;
            }

            var covers = Network.Items(margins.Policy.QualificationCovers).Where(cover => cover is not null && cover.Covers == required && has.Contains(cover.Qualification)).Select(cover => cover.Qualification).FirstOrDefault();
            var holds = has.Contains(required) || covers is not null;
            if (!holds && network.UnknownMargin(margins, nameof(DesignPolicy.QualificationCovers)) is { } unknown)
            {
                yield return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
                continue;
            }

            var check = subject.ToStructural(holds, $"{subject.Where} {(holds ? "has" : "lacks")} {required}, required by the surroundings of '{label}'", Working(required, place0, has, covers, margins.Policy));
            yield return check with { Corner = "surroundings stated nearest to the part", Places = check.Places.Add(place0) };
        }
    }

    private static WorkingStep[] Working(string required, DatumPlace place, ImmutableArray<string> has, string? covers, DesignPolicy policy) =>
    [
        new WorkingStep($"required: {required}", "", "", new Figure(1, ""), "surroundings", place),
        new WorkingStep(
            has.Length == 0 ? "stated: none" : $"stated: {string.Join(", ", has)}", "", "", new Figure(has.Length, ""),
            covers is null ? "data of the part" : $"data of the part; '{covers}' counts as it, {Network.PolicySource(policy, nameof(DesignPolicy.QualificationCovers))}"),
    ];
}
