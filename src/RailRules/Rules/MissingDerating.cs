namespace RailRules.Rules;

/// <summary>RAIL0202: missing derating where the surroundings leave the rating's reference conditions and the verdict depends on it.</summary>
public sealed class MissingDerating : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0202",
        "Derating missing outside the rating's reference conditions",
        RuleSeverity.Error,
        "A fuse or circuit breaker stands in air hotter, or at a site higher, than its rating holds for, without a derating, and its current margin depends on it.")
    {
        Basis = "Re-rating for ambient and altitude: common practice, no source; ordinary altitude up to 2000 m: IEC 60269-1, 3.2 (from memory)",
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
                if (place.Part is Fuse or CircuitBreaker && network.RatingOf(place) is { } rating && Judge(network, place, rating) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private Check? Judge(Network network, Network.PartPlace place, Network.Rating rating)
    {
        var byAltitude = rating.NeedsAltitudeDerating && !rating.NeedsDerating;
        var may = rating.MayNeedDerating || rating.DeratingHidden || rating.NeedsAltitudeDerating;
        if (!may)
        {
            return null;
        }

        var flow = network.CurrentOf(place);
        var subject = Subject.Of(Description, place, byAltitude ? nameof(Fuse.AltitudeDerating) : nameof(Fuse.Derating));
        if (flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(network.LoadsWithoutMinVoltage(place.Rail)) with { UsesOperatingPoint = true };
        }

        var demand = new Range(flow.Low, flow.High);
        var bounded = Weighing.Of(demand, rating.Capacity);
        if (bounded.Verdict == Verdict.Fails)
        {
            return null; // RAIL0201 fails even without derating
        }

        // The capacity at the lowest plausible factor, with the rating basis at its best: what decides besides derating is not this rule's.
        var floor = new Range(rating.Capacity.Low, rating.CapacityAtFloor);
        var weighing = Weighing.Of(demand, floor);
        var needs = rating.NeedsDerating || rating.NeedsAltitudeDerating;
        var missing = (flow.IsExact ? [] : network.MissingFor([place.Rail])).Concat(rating.Missing);
        var nominal = rating.Nominal;
        var factor = nominal > 0 ? Figures.Digits(flow.Low / nominal) : "more than any factor";
        var message = byAltitude
            ? $"{subject.Where} sits at {Figures.Digits(rating.Altitude)} m without an altitude derating; it needs {factor} to carry {Figures.Text(flow.Low, "A")}"
            : $"{subject.Where} sits at {Figures.Text(rating.Hottest.High, "°C")}, rated at {ReferenceText(rating)}, without a derating curve; it needs {factor} to carry {Figures.Text(flow.Low, "A")}";
        return weighing.Verdict switch
        {
            Verdict.Fails when needs => weighing.ToCheck(subject, "A", message, rating.Working, []) with { UsesOperatingPoint = true, Corner = Corner },
            Verdict.Holds => weighing.ToCheck(subject, "A", message, rating.Working, []) with { UsesOperatingPoint = true, Corner = Corner },
            _ => subject.ToUndecided(missing) with { UsesOperatingPoint = true, Corner = Corner },
        };
    }

    private const string Corner = "hottest air, highest site, lowest plausible derating";

    private static string ReferenceText(Network.Rating rating) => rating.Reference.IsExact
        ? Figures.Text(rating.Reference.Low, "°C")
        : $"{Figures.Digits(rating.Reference.Low)} to {Figures.Text(rating.Reference.High, "°C")}";
}
