using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0301: fault current still available when the device melts above its interrupting rating.</summary>
public sealed class InterruptingRatingExceeded : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0301",
        "Fault current above the interrupting rating",
        RuleSeverity.Error,
        "The largest fault current that still flows when a fuse melts, or a circuit breaker or resettable fuse opens, exceeds what it can interrupt at this voltage and time constant.")
    {
        Basis = "Interrupting rating not below the prospective current: MIL-PRF-23419/9D, fuse selection, step 2; capacitor pulses that do not melt the element: circuit theory",
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
                var check = place.Part switch
                {
                    Fuse or CircuitBreaker => ByRatings(network, place),
                    ResettableFuse resettable => ByMaximum(network, place, resettable.MaxFaultCurrent?.Amperes, nameof(ResettableFuse.MaxFaultCurrent)),
                    ElectronicFuse { MaxFaultCurrent: not null } electronic => Electronic(network, place, electronic),
                    _ => null,
                };
                if (check is not null)
                {
                    yield return check;
                }
            }
        }
    }

    private Check? ByRatings(Network network, Network.PartPlace place)
    {
        const string datum = nameof(Fuse.InterruptingRatings);
        var subject = Subject.Of(Description, place, datum);
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (InterruptingDuty.RatingsOf(place.Part) is not { Length: > 0 } ratings || network.IsUnknown(place.Part, datum))
        {
            return subject.ToUndecided([new MissingDatum(new DatumPlace(place.Part, datum), place.Label)]);
        }

        if (network.UnknownMargin(margins, nameof(DesignPolicy.InterruptingFraction), nameof(DesignPolicy.CreditFirmwareLimits)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var peak = network.VoltagesOf(place.Rail).Peak;
        var fraction = margins.Policy.InterruptingFraction;
        Check? worst = null;
        foreach (var fault in InterruptingDuty.Of(network, place))
        {
            // A rating that states no voltage or time constant is judged by RAIL0306.
            var proven = ratings.Where(rating => InterruptingDuty.IsAtLeast(rating.Voltage?.Volts, peak.Value) && InterruptingDuty.IsAtLeast(rating.TimeConstant?.Seconds, fault.TimeConstant.Low)).ToList();
            var counted = proven.Count > 0 ? proven : [.. ratings];
            var best = counted.OrderByDescending(rating => rating.Current!.Value.Amperes).First();
            var capacity = best.Current!.Value.Amperes * fraction;
            var weighing = Weighing.Of(fault.Current, Range.Exactly(capacity));
            if (proven.Count == 0 && weighing.Verdict != Verdict.Fails)
            {
                continue;
            }

            var voltage = best.Voltage is { } stated ? Figures.Text(stated.Volts, "V") : "an unstated voltage,";
            var share = fraction == 1 ? "" : $", {Figures.Digits(fraction)} of it counted";
            var message = weighing.Verdict == Verdict.Fails
                ? $"{subject.Where} may have to interrupt {Figures.Text(weighing.Demand, "A")}, above its {Figures.Text(weighing.Capacity, "A")} interrupting rating at {voltage} DC{share}"
                : $"{subject.Where} has to interrupt at most {Figures.Text(weighing.Demand, "A")}; its interrupting rating is {Figures.Text(weighing.Capacity, "A")} at {voltage} DC{share}";
            var working = fault.Working.Add(new WorkingStep("interrupting rating", "", "", new Figure(best.Current.Value.Amperes, "A"), "data of the part", new DatumPlace(place.Part, datum)));
            worst = Worse(worst, weighing.ToCheck(subject, "A", message, working, fault.Missing) with { Corner = $"highest voltage, all feeds, cold; {fault.Place}", Assumptions = fault.Assumptions, UsesOperatingPoint = true });
        }

        return worst;
    }

    private Check ByMaximum(Network network, Network.PartPlace place, double? most, string datum)
    {
        var subject = Subject.Of(Description, place, datum);
        Check? worst = null;
        foreach (var fault in InterruptingDuty.Of(network, place))
        {
            var missing = most is null ? fault.Missing.Add(new MissingDatum(new DatumPlace(place.Part, datum), place.Label)) : fault.Missing;
            var weighing = Weighing.Of(fault.Current, most is { } known ? Range.Exactly(known) : new Range(0, double.PositiveInfinity));
            worst = Worse(worst, weighing.ToCheck(
                subject, "A", $"{subject.Where} may meet a fault current of {Figures.Text(weighing.Demand, "A")}; it bears {Figures.Text(weighing.Capacity, "A")}", fault.Working, missing) with
            {
                Corner = $"highest voltage, all feeds, cold; {fault.Place}",
                Assumptions = fault.Assumptions,
                UsesOperatingPoint = true,
            });
        }

        return worst!;
    }

    /// <summary>Highest level plus V/L × response, never above the prospective peak, against its stated peak.</summary>
    private Check Electronic(Network network, Network.PartPlace place, ElectronicFuse part)
    {
        var subject = Subject.Of(Description, place, nameof(ElectronicFuse.MaxFaultCurrent));
        var fault = InterruptingDuty.Of(network, place).OrderByDescending(one => one.Current.High).First();
        var current = network.LargestFault(place, place.Place.Index ?? 0, reverse: false, least: false).Current;
        var missing = fault.Missing.ToList();
        var demand = fault.Current;
        if (part is { ShortCircuitLevel: { } level, ShortCircuitResponse: { } response } && current is not null)
        {
            if (Physics.Openings.ElectronicLetThrough(current, level.Max.Amperes, response.Max.Seconds) is { } passed)
            {
                demand = new Range(Math.Min(demand.Low, passed.Peak), passed.Peak);
            }
        }
        else
        {
            demand = new Range(0, fault.Current.High);
            missing.Add(new MissingDatum(new DatumPlace(part, part.ShortCircuitLevel is null ? nameof(ElectronicFuse.ShortCircuitLevel) : nameof(ElectronicFuse.ShortCircuitResponse)), place.Label));
        }

        var weighing = Weighing.Of(demand, Range.Exactly(part.MaxFaultCurrent!.Value.Amperes));
        return weighing.ToCheck(
            subject, "A", $"{subject.Where} lets a fault rise to {Figures.Text(weighing.Demand, "A")}; it bears {Figures.Text(weighing.Capacity, "A")}", fault.Working, missing) with
        {
            Corner = $"highest voltage, all feeds, cold, slowest response; {fault.Place}",
            Assumptions = fault.Assumptions,
            UsesOperatingPoint = true,
        };
    }

    private static Check Worse(Check? before, Check now) => before is null || Rank(now) > Rank(before) || (Rank(now) == Rank(before) && (now.Margin ?? 0) < (before.Margin ?? 0)) ? now : before;

    private static int Rank(Check check) => check.Verdict switch { Verdict.Fails => 2, Verdict.Undecided => 1, _ => 0 };
}
