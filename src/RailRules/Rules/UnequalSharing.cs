using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0206: parallel devices of which unequal sharing overloads one, or which are no set.</summary>
public sealed class UnequalSharing : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0206",
        "Unequal sharing overloads one of the parallel devices",
        RuleSeverity.Error,
        "Of devices in parallel one takes more than it may carry for ever, with its branch at the least resistance and the others at the largest; or fuses and breakers in parallel are no set that their maker allows.")
    {
        Basis = "Current divides by resistances: circuit theory; parallel fuses only as sets by their maker: 46 CFR 111.50-3(d), MIL-DTL-917F 3.13.2.1, NFPA 70, 240.8 (from memory)",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (place.Part is ParallelGroup group && Network.Items(group.Branches).Length > 1)
                {
                    foreach (var check in Judge(network, place, group))
                    {
                        yield return check;
                    }
                }
            }
        }
    }

    private IEnumerable<Check> Judge(Network network, Network.PartPlace place, ParallelGroup group)
    {
        var inside = network.Parts(place.Rail).Where(part => part.Place == place.Place && part.InReturn == place.InReturn && part.Branches.Length == place.Branches.Length + 1
            && ReferenceEquals(part.Branches[part.Branches.Length - 1].Group, group)).ToList();
        var flow = Total(network, place);
        foreach (var part in inside)
        {
            if (network.RatingOf(part) is { } rating)
            {
                yield return Share(network, place, group, part, rating, flow);
            }
        }

        var devices = inside.Where(part => part.Part is Fuse or CircuitBreaker).ToList();
        if (devices.Select(part => part.Branches[part.Branches.Length - 1].Branch).Distinct().Count() > 1)
        {
            yield return Set(network, place, group, devices);
        }
    }

    /// <summary>What the group takes: all of the path's current, or the largest share of the groups around it.</summary>
    private static Network.Flow Total(Network network, Network.PartPlace place)
    {
        var flow = network.CurrentOf(place with { Branches = [] });
        foreach (var (outer, branch) in place.Branches)
        {
            var (current, missing, _, _) = network.LargestShare(place, outer, branch, new Range(flow.Low, flow.High));
            flow = flow with { Low = current.Low, High = current.High, Gaps = flow.Gaps.AddRange(missing.Select(one => (one, false))) };
        }

        return flow;
    }

    private Check Share(Network network, Network.PartPlace place, ParallelGroup group, Network.PartPlace part, Network.Rating rating, Network.Flow flow)
    {
        var subject = Subject.Of(Description, part, rating.Place.Datum!);
        if (flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(network.LoadsWithoutMinVoltage(place.Rail)) with { UsesOperatingPoint = true };
        }

        var total = new Range(flow.Low, flow.High);
        var (share, gaps, own, others) = network.LargestShare(place, group, part.Branches[part.Branches.Length - 1].Branch, total);
        var weighing = Weighing.Of(share, rating.Capacity);
        var whole = weighing.Verdict == Verdict.Holds ? total.High : total.Low;
        var message = $"'{part.Label}' in parallel on '{Network.Label(place.Rail)}' takes {Figures.Text(weighing.Demand, "A")} of {Figures.Text(whole, "A")}; it may carry {Figures.Text(weighing.Capacity, "A")}";
        IEnumerable<WorkingStep> working =
        [
            new WorkingStep("current of the group", "", "", new Figure(whole, "A"), "operating point, r.m.s."),
            new WorkingStep("its branch, least", "", "", new Figure(own, "Ω"), "sum of the branch, wiring included"),
            new WorkingStep("the other branches together, largest", "", "", new Figure(others, "Ω"), "sum of each branch, wiring included"),
            new WorkingStep("its share", "current × others / (own + others)", "", new Figure(weighing.Demand, "A"), "current divides by resistances and drops"),
            .. rating.Working,
        ];
        var missing = gaps.Concat(network.DoubtsAbout(flow, place.Rail)).Concat(rating.Missing);
        return weighing.ToCheck(subject, "A", message, working, missing) with
        {
            UsesOperatingPoint = true,
            Corner = $"its branch at the least resistance, the others at the largest; hottest air, highest site{(flow.State.Length > 0 ? ", " + flow.State : "")}",
            Assumptions = [.. rating.Assumptions, .. network.OperatingAssumptions(place.Rail)],
        };
    }

    private Check Set(Network network, Network.PartPlace place, ParallelGroup group, List<Network.PartPlace> devices)
    {
        var subject = Subject.Of(Description, place, nameof(ParallelGroup.ParallelAllowed));
        var names = string.Join(" and ", devices.Select(part => $"'{part.Label}'").Distinct().Take(3));
        var same = devices.All(part => IsSame(part.Part, devices[0].Part));
        var unknown = network.IsUnknown(group, nameof(ParallelGroup.ParallelAllowed)) ? new MissingDatum(new DatumPlace(group, nameof(ParallelGroup.ParallelAllowed)), place.Label)
            : devices.Where(part => network.IsUnknown(part.Part, nameof(Fuse.ParallelAllowed)) || network.IsUnknown(part.Part, nameof(Element.PartNumber)))
                .Select(part => new MissingDatum(new DatumPlace(part.Part, network.IsUnknown(part.Part, nameof(Fuse.ParallelAllowed)) ? nameof(Fuse.ParallelAllowed) : nameof(Element.PartNumber)), part.Label)).FirstOrDefault();
        var citation = group.ParallelAllowed ?? (devices.All(part => Allowed(part.Part) is not null) ? Allowed(devices[0].Part) : null);
        if (unknown is not null && (same || unknown.Place.Datum == nameof(Element.PartNumber)))
        {
            return subject.ToUndecided([unknown]);
        }

        return same && !string.IsNullOrWhiteSpace(citation)
            ? subject.ToStructural(true, $"{names} in parallel on rail '{Network.Label(place.Rail)}' are a set that the maker allows: {citation}")
            : subject.ToStructural(false, $"{names} in parallel on rail '{Network.Label(place.Rail)}' are not a set their maker allows in parallel; the last to open interrupts the whole fault alone");
    }

    private static string? Allowed(Element part) => part switch
    {
        Fuse fuse => fuse.ParallelAllowed,
        CircuitBreaker breaker => breaker.ParallelAllowed,
        _ => null,
    };

    /// <summary>One type of part: by its number, or, where none is stated, the same data in another place.</summary>
    private static bool IsSame(Element one, Element other) => one.PartNumber is { } number ? number == other.PartNumber : (one with { Designator = null, Name = null }).Equals(other with { Designator = null, Name = null });
}
