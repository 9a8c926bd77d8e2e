using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0303: a device that opens too slowly on the smallest fault, later than harm.</summary>
public sealed class OpensTooSlowly : Rule
{
    /// <summary>A current (A) above all that flows on boards: where nothing bounds the smallest fault.</summary>
    private const double Most = 1e9;

    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0303",
        "Device opens too slowly on the smallest fault",
        RuleSeverity.Error,
        "On the smallest fault at the far end of what it protects, a device takes longer until the current is gone than the policy allows, or than a conductor on the way bears it.")
    {
        Basis = "Opening within 5 s in distribution circuits: IEC 60364-4-41, 411.3.2.3 (from memory); before conductors are harmed: IEC 60364-4-43, 434.5.2 (from memory)",
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

            foreach (var place in Protection.Devices(network, rail))
            {
                if (network.OpeningOf(place) is { } opening && Judge(network, opening) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private static string DatumOf(Element part) => part switch
    {
        ElectronicFuse => nameof(ElectronicFuse.TripDelay),
        ResettableFuse => nameof(ResettableFuse.TimeToTrip),
        Fuse { Characteristic: not null } fuse when Network.Items(fuse.Curve).IsEmpty => nameof(Fuse.Characteristic),
        _ => nameof(Fuse.Curve),
    };

    private Check? Judge(Network network, Network.DeviceOpening opening)
    {
        var place = opening.Place;
        var subject = Subject.Of(Description, place, DatumOf(place.Part));
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (network.UnknownMargin(
            margins, nameof(DesignPolicy.OpeningTime), nameof(DesignPolicy.FaultResistance), nameof(DesignPolicy.ArcVoltage), nameof(DesignPolicy.ConventionalTime), nameof(DesignPolicy.OverloadFactor),
            nameof(DesignPolicy.WithstandLimit), nameof(DesignPolicy.CreditFirmwareLimits), nameof(DesignPolicy.PersistentFaultPower)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        Check? worst = null;
        foreach (var end in Protection.FarEnds(network, place))
        {
            if (Judge(network, opening, subject, end, margins.Policy) is { } check)
            {
                worst = Protection.Worse(worst, check with { Corner = $"smallest fault, cold device, latest edge; {end.Place}", UsesOperatingPoint = true });
            }
        }

        return worst;
    }

    /// <summary>The check of one far end; null: the device does not open there at all, which RAIL0302 and RAIL0404 say.</summary>
    private static Check? Judge(Network network, Network.DeviceOpening opening, Subject subject, Protection.FarEnd end, DesignPolicy policy)
    {
        var place = opening.Place;
        var fault = network.SmallestFault(end.Rail, end.Supplier, end.Behind, place);
        if (Protection.OpenedOtherwise(network, place, end, fault.Current) is { } otherwise && !Weighing.Covers(fault.Current.Low, opening.Sure.High))
        {
            return subject.ToStructural(true, $"{subject.Where} {otherwise}");
        }

        var harmless = Protection.Harmless(network, place, end, fault.Latches, opening.Sure, opening.SureMissing);
        if (harmless.Holds == true)
        {
            return subject.ToStructural(true, $"{subject.Where} may open late on {Protection.Short(end.Place)}: what can last harms nothing on the way", harmless.Step) with
            {
                Assumptions = [harmless.Step.Source],
            };
        }

        if (!Weighing.Covers(fault.Current.High, opening.Sure.Low))
        {
            return null;
        }

        var above = Guard.Above(network, place);
        var limit = place.Part is Fuse or CircuitBreaker ? policy.OpeningTime.Seconds : double.PositiveInfinity;
        var bears = end.Elements.Select(element => (Place: element, Endurance: network.EnduranceOf(element))).Where(one => one.Endurance is { JudgesTime: true }).ToList();
        Outcome? worst = null;
        var alike = true;
        foreach (var current in Currents(fault.Current))
        {
            var own = opening.Longest(current);
            var other = above.Longest(current);
            var demand = new Range(Math.Min(own.Low, other.Low), Math.Min(own.High, other.High));
            var capacity = Range.Exactly(limit);
            Network.PartPlace? element = null;
            foreach (var (at, endurance) in bears)
            {
                var harmed = endurance!.Harmed(current, opening.ConventionalTime);
                element = harmed.High < capacity.High || (harmed.Low < capacity.Low && element is null) ? at : element;
                capacity = new Range(Math.Min(capacity.Low, harmed.Low), Math.Min(capacity.High, harmed.High));
            }

            var weighing = double.IsInfinity(capacity.Low) ? null : Weighing.Of(demand, capacity);
            var outcome = new Outcome(current, demand, capacity, element, weighing);
            alike &= worst is null || worst.Verdict == outcome.Verdict;
            worst = worst is null || outcome.Rank > worst.Rank || (outcome.Rank == worst.Rank && (outcome.Weighing?.Margin ?? double.PositiveInfinity) < (worst.Weighing?.Margin ?? double.PositiveInfinity)) ? outcome : worst;
        }

        var steps = fault.Working.AddRange(
            new WorkingStep("longest time until it has opened", "", "", new Figure(Shown(worst!.Demand), "s"), opening.Basis),
            new WorkingStep(worst.Element is { } weakest ? $"time that '{weakest.Label}' bears it" : "time allowed", "", "", new Figure(worst.Capacity.High, "s"), worst.Element is null ? Network.PolicySource(policy, nameof(DesignPolicy.OpeningTime)) : "from its running to its short-time temperature"));
        if (worst.Weighing is null)
        {
            return subject.ToStructural(true, $"{subject.Where} may take its time on {Protection.Short(end.Place)}: nothing on the way is judged by time", [.. steps]);
        }

        if (!alike || worst.Verdict == Verdict.Undecided || (worst.Verdict == Verdict.Fails && harmless.Holds is null))
        {
            IEnumerable<MissingDatum> missing =
            [
                .. alike ? [] : fault.Gaps,
                .. worst.Verdict != Verdict.Undecided || worst.Demand.IsExact ? [] : opening.Missing,
                .. worst.Verdict != Verdict.Undecided || worst.Capacity.IsExact || worst.Element is null ? [] : network.EnduranceOf(worst.Element)!.Missing,
                .. worst.Verdict == Verdict.Fails ? harmless.Missing : [],
            ];
            return subject.ToUndecided(missing) with { Working = steps };
        }

        var allowed = worst.Element is { } harmedFirst ? $"'{harmedFirst.Label}' bears it for {Figures.Text(worst.Weighing.Capacity, "s")}" : $"{Figures.Text(worst.Weighing.Capacity, "s")} is allowed";
        return worst.Weighing.ToCheck(
            subject, "s", $"{subject.Where} takes up to {Figures.Text(worst.Weighing.Demand, "s")} to open on {Figures.Text(worst.Current, "A")} at {Where(end.Place)}; {allowed}", steps, []) with
        {
            Assumptions = opening.Assumptions,
            Named = [.. end.Elements.Select(element => new NamedCurrents(element.Place, element.Part, Range.Exactly(worst.Current)))],
        };
    }

    private static string Where(string place) => place.StartsWith("a fault at ", StringComparison.Ordinal) ? place.Substring("a fault at ".Length) : place;

    private static double Shown(Range time) => double.IsInfinity(time.High) ? time.Low : time.High;

    /// <summary>Both ends of the smallest fault, and steps between where they differ.</summary>
    private static IEnumerable<double> Currents(Range fault)
    {
        var high = Math.Min(fault.High, Most);
        yield return high;
        if (fault.Low < high)
        {
            var low = Math.Max(fault.Low, high * 1e-6);
            for (var k = 1; k < 8; k++)
            {
                yield return high * Math.Pow(low / high, k / 8.0);
            }

            yield return fault.Low;
        }
    }

    private sealed record Outcome(double Current, Range Demand, Range Capacity, Network.PartPlace? Element, Weighing? Weighing)
    {
        internal Verdict Verdict => Weighing?.Verdict ?? Verdict.Holds;

        internal int Rank => Verdict switch { Verdict.Fails => 2, Verdict.Undecided => 1, _ => 0 };
    }
}
