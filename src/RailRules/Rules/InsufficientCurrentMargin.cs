using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0201: insufficient current margin after derating, of a device, a supply or a converter.</summary>
public sealed class InsufficientCurrentMargin : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0201",
        "Insufficient current margin after derating",
        RuleSeverity.Error,
        "The steady current of a device, supply or converter at the worst voltage and feed state exceeds what it may carry for ever in the hottest air at the highest site.")
    {
        Basis = "Re-rating for continuous use, ambient and altitude: common practice, no source; UL 248-14 and IEC 60127-1 styles of rating, NFPA 70, 210.20(A) (from memory)",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        var judged = new HashSet<Source>();
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail))
            {
                yield return hidden;
            }

            foreach (var supplying in network.Suppliers(rail))
            {
                if (supplying.From is { } source and not Rail && judged.Add(source) && network.RatingOf(source, rail) is { } rating)
                {
                    var subject = Subject.Of(Description, rail, SourcePlace(supplying), source, rating.Place);
                    yield return Judge(network, subject, rating, network.CurrentOf(source), [.. network.FedBy(source)], network.VoltagesOf(source, default, ""), [], "feeds");
                }
            }

            foreach (var place in network.Parts(rail))
            {
                if (network.RatingOf(place) is { } rating)
                {
                    var (flow, steps, missing) = DemandOf(network, place);
                    var subject = Subject.Of(Description, place, rating.Place.Datum!);
                    var check = Judge(network, subject, rating, flow, [rail], network.VoltagesOf(rail), steps, "carries");
                    yield return missing.Count > 0 && check.Verdict == Verdict.Undecided ? check with { Missing = Subject.Distinct(check.Missing.AddRange(missing)) } : check;
                }
            }
        }
    }

    /// <summary>Where a rail takes from its source.</summary>
    internal static DatumPlace SourcePlace(Network.Supplying supplying) => supplying.Feed is { } feed ? new DatumPlace(feed, nameof(Feed.From)) : supplying.Place;

    /// <summary>The r.m.s. current of a device; for an electronic fuse the highest current that lasts longer than its trip delay.</summary>
    private static (Network.Flow Flow, List<WorkingStep> Steps, List<MissingDatum> Missing) DemandOf(Network network, Network.PartPlace place)
    {
        var steady = network.CurrentOf(place);
        if (place.Part is not ElectronicFuse electronic || steady.Reason != Network.FlowReason.Solved || network.PulsesBelow(place.Rail) is not { Count: > 0 } pulses)
        {
            return (steady, [], []);
        }

        var peak = network.CurrentOf(place, peak: true);
        if (peak.Reason != Network.FlowReason.Solved)
        {
            return (peak, [], []);
        }

        // A pulse counts if it outlasts the shortest delay; where the delay or the width is unknown, it may.
        var delay = electronic.TripDelay?.Min.Seconds;
        var surely = pulses.Where(pulse => delay is not null && pulse.Width > delay).Sum(pulse => pulse.Current);
        var perhaps = pulses.Where(pulse => delay is null || pulse.Width is null).Sum(pulse => pulse.Current);
        var all = pulses.Sum(pulse => pulse.Current);
        var flow = peak with { Low = Math.Max(0, peak.Low - all + surely), High = Math.Max(0, peak.High - all + surely + perhaps) };
        var missing = new List<MissingDatum>();
        if (perhaps > 0)
        {
            missing.Add(delay is null
                ? new MissingDatum(new DatumPlace(electronic, nameof(ElectronicFuse.TripDelay)), place.Label)
                : new MissingDatum(new DatumPlace(pulses.First(pulse => pulse.Width is null).Load, nameof(Load.Pulses)), place.Label));
        }

        var steps = new List<WorkingStep> { new("pulses that outlast the trip delay", "", "", new Figure(surely + perhaps, "A"), "peaks of the loads' pulses, taken together") };
        return (flow, steps, missing);
    }

    private static Check Judge(
        Network network, Subject subject, Network.Rating rating, Network.Flow flow, ImmutableArray<Rail> rails, Network.RailVoltages voltages, List<WorkingStep> steps, string verb)
    {
        if (flow.Reason != Network.FlowReason.Solved)
        {
            var open = subject.ToUndecided(network.DoubtsAbout(flow, subject.Rail)) with { UsesOperatingPoint = true };
            return flow.Reason == Network.FlowReason.Collapse ? open with { Message = $"{subject.Where} has no steady current: the path cannot deliver the power at {voltages.Low.Step("").Result.Text}" } : open;
        }

        var weighing = Weighing.Of(new Range(flow.Low, flow.High), rating.Capacity);
        var best = weighing.Verdict != Verdict.Holds;
        var atSource = verb == "feeds";
        var source = flow.AtHighVoltage ? voltages.High : voltages.Low;
        var voltage = atSource ? source.Value : best ? flow.LowVoltage : flow.HighVoltage;
        var at = voltage > 0 ? $" at {Figures.Text(voltage, "V")}" : "";
        var after = rating.Factors(best) is { Length: > 0 } factors && rating.Limited != weighing.Capacity ? $"after {factors} it" : "it";
        var message = $"{subject.Where} {verb} {Figures.Text(weighing.Demand, "A")}{at}; {after} may {(atSource ? "give" : "carry")} {Figures.Text(weighing.Capacity, "A")}";
        IEnumerable<WorkingStep> working =
        [
            source.Step(flow.AtHighVoltage ? "highest source voltage" : "lowest source voltage"),
            .. voltage > 0 && !atSource ? (IEnumerable<WorkingStep>)[new WorkingStep("voltage at the end of the rail", "drops solved over the whole network", "", new Figure(voltage, "V"), "operating point: upper solution, hot resistances, return included")] : [],
            .. steps,
            SteadyStep(subject.Rail, weighing.Demand, atSource ? double.NaN : voltage, network),
            .. rating.Working,
            new WorkingStep("may carry", "rating × factors", "", new Figure(weighing.Capacity, "A"), "product of the above"),
        ];
        var exact = flow.Low == flow.High;
        var missing = (exact ? [] : flow.Gaps.IsEmpty ? network.MissingFor(rails) : [.. flow.Gaps.Select(gap => gap.Datum)]).Concat(rating.Missing);
        var check = weighing.ToCheck(subject, "A", message, working, missing);
        return check with
        {
            UsesOperatingPoint = true,
            Corner = $"{(flow.AtHighVoltage ? "highest" : "lowest")} source voltage, hottest air, highest site{(flow.State.Length > 0 ? ", " + flow.State : "")}",
            Assumptions = [.. rating.Assumptions, .. network.OperatingAssumptions(subject.Rail)],
        };
    }

    private static WorkingStep SteadyStep(Rail rail, double demand, double voltage, Network network)
    {
        var loads = Network.Items(rail.Loads);
        return loads.Length == 1 && loads[0] is { Power: { } power, Current: null, Resistance: null } only && Network.Items(only.Pulses).IsEmpty && voltage > 0
            && !network.Children(rail).Any() && network.ConvertersOn(rail).Count == 0
            ? new WorkingStep("steady current", "P / V", $"{Figures.Text((double)power.Max.Watts, "W")} / {Figures.Text(voltage, "V")}", new Figure(demand, "A"), "data of the load", new DatumPlace(only, nameof(Load.Power)))
            : new WorkingStep("steady current", "sum of the loads and rails below", "", new Figure(demand, "A"), "operating point, r.m.s.");
    }
}
