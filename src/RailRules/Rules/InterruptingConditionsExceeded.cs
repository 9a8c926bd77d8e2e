using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0306: interrupting rating proven only at a lower voltage or a shorter time constant.</summary>
public sealed class InterruptingConditionsExceeded : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0306",
        "Interrupting rating proven at a lower voltage or a shorter time constant",
        RuleSeverity.Error,
        "The interrupting ratings that cover the fault current were proven at a voltage below that of the rail, or in a circuit whose current dies away sooner; ratings are not interpolated.")
    {
        Basis = "A rating holds at its test voltage and time constant and below: 30 CFR 28.41(b) for the test values; the comparison is common practice",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var place in network.Parts(rail))
            {
                if (InterruptingDuty.RatingsOf(place.Part) is { Length: > 0 } ratings && !network.IsUnknown(place.Part, nameof(Fuse.InterruptingRatings)) && Judge(network, place, ratings) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private Check? Judge(Network network, Network.PartPlace place, ImmutableArray<InterruptingRating> ratings)
    {
        var subject = Subject.Of(Description, place, nameof(Fuse.InterruptingRatings));
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.AssumedTimeConstant)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var peak = network.VoltagesOf(place.Rail).Peak;
        var volts = new Range(peak.Value, peak.IsKnown ? peak.Value : double.PositiveInfinity);
        var rated = (place.Part as Fuse)?.RatedCurrent?.Amperes ?? (place.Part as CircuitBreaker)?.RatedCurrent?.Amperes ?? 0;
        Candidate? worst = null;
        foreach (var fault in InterruptingDuty.Of(network, place))
        {
            // A current that the device carries is none that it interrupts.
            if (fault.Current.High <= 0 || fault.Settled <= rated)
            {
                continue;
            }

            var enough = ratings.Where(rating => Weighing.Covers(rating.Current!.Value.Amperes * margins.Policy.InterruptingFraction, fault.Current.Low)).ToList();
            if (enough.Count == 0)
            {
                continue;
            }

            var nearest = enough.Select(rating => Compare(rating, fault, volts, margins.Policy.AssumedTimeConstant.Seconds, place))
                .OrderByDescending(one => one.Ratio.Low >= 1 - Weighing.Tolerance).ThenByDescending(one => one.Ratio.High).First();
            worst = worst is null || Rank(nearest) > Rank(worst) || (Rank(nearest) == Rank(worst) && nearest.Ratio.Low < worst.Ratio.Low) ? nearest : worst;
        }

        return worst is null ? null : ToCheck(subject, worst, peak, volts);
    }

    private static Candidate Compare(InterruptingRating rating, InterruptingDuty.Fault fault, Range volts, double assumed, Network.PartPlace place)
    {
        var missing = new List<MissingDatum>();
        var voltage = Ratio(rating.Voltage?.Volts, volts);
        if (rating.Voltage is null || !volts.IsExact)
        {
            missing.Add(new MissingDatum(new DatumPlace(rating.Voltage is null ? rating : place.Rail, rating.Voltage is null ? nameof(InterruptingRating.Voltage) : nameof(Rail.From)), place.Label));
        }

        Range time;
        if (rating.TimeConstant is { } tested)
        {
            time = Ratio(tested.Seconds, fault.TimeConstant);
            if (!time.IsExact)
            {
                missing.AddRange(fault.SlowMissing);
            }
        }
        else
        {
            // A rating without a time constant is credited up to the assumed one.
            var low = fault.TimeConstant.High <= assumed * (1 + Weighing.Tolerance) ? double.PositiveInfinity : 0;
            time = new Range(low, double.PositiveInfinity);
            if (low == 0)
            {
                missing.Add(new MissingDatum(new DatumPlace(rating, nameof(InterruptingRating.TimeConstant)), place.Label));
                missing.AddRange(fault.TimeConstant.Low <= assumed ? fault.SlowMissing : []);
            }
        }

        return new Candidate(rating, fault, new Range(Math.Min(voltage.Low, time.Low), Math.Min(voltage.High, time.High)), voltage.Low <= time.Low, missing);
    }

    private static Range Ratio(double? capacity, Range demand) => capacity is not { } known
        ? new Range(0, double.PositiveInfinity)
        : new Range(demand.High <= 0 ? double.PositiveInfinity : known / demand.High, demand.Low <= 0 ? double.PositiveInfinity : known / demand.Low);

    private static int Rank(Candidate candidate) => candidate.Ratio.Low >= 1 - Weighing.Tolerance ? 0 : candidate.Ratio.High >= 1 - Weighing.Tolerance ? 1 : 2;

    private static Check ToCheck(Subject subject, Candidate candidate, Network.Voltage peak, Range volts)
    {
        var rating = candidate.Rating;
        if (Rank(candidate) == 1)
        {
            return subject.ToUndecided(candidate.Missing) with { Corner = candidate.Fault.Place, Assumptions = candidate.Fault.Assumptions, UsesOperatingPoint = true };
        }

        var fails = Rank(candidate) == 2;
        var time = fails ? candidate.Fault.TimeConstant.Low : candidate.Fault.TimeConstant.High;
        var demand = candidate.ByVoltage ? new Figure(volts.Low, "V") : new Figure(time, "s");
        var capacity = candidate.ByVoltage ? rating.Voltage?.Volts : rating.TimeConstant?.Seconds;
        var proven = $"{Figures.Text(rating.Current!.Value.Amperes, "A")} at {(rating.Voltage is { } tested ? Figures.Text(tested.Volts, "V") : "an unstated voltage")}{(rating.TimeConstant is { } constant ? ", " + Figures.Text(constant.Seconds, "s") : "")}";
        var ratio = fails ? candidate.Ratio.High : candidate.Ratio.Low;
        return new Check(
            subject.Rule.Id,
            subject.Text,
            fails ? Verdict.Fails : Verdict.Holds,
            ratio,
            $"{subject.Where} is proven for {proven}; {candidate.Fault.Place} makes {Figures.Text(volts.Low, "V")}, {Figures.Text(time, "s")}")
        {
            Rail = subject.Rail,
            Part = subject.Part,
            Demand = demand,
            Capacity = capacity is { } shown ? new Figure(shown, demand.Unit) : null,
            Places = subject.Places,
            Basis = subject.Rule.Basis,
            Corner = $"highest voltage with transients, largest inductance, least resistance; {candidate.Fault.Place}",
            Assumptions = candidate.Fault.Assumptions,
            UsesOperatingPoint = true,
            Working =
            [
                peak.Step("highest voltage, transients included"),
                .. candidate.Fault.Working,
                new WorkingStep("time constant of the loop", "L / R", "", new Figure(time, "s"), candidate.Fault.Place),
                new WorkingStep("proven at", "", proven, capacity is { } value ? new Figure(value, demand.Unit) : demand, "data of the part", new DatumPlace(subject.Part, nameof(Fuse.InterruptingRatings))),
            ],
        };
    }

    private sealed record Candidate(InterruptingRating Rating, InterruptingDuty.Fault Fault, Range Ratio, bool ByVoltage, List<MissingDatum> Missing);
}
