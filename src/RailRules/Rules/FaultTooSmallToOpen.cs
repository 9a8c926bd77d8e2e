using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules.Rules;

/// <summary>RAIL0302: fault current too low to open the device where something is harmed by it.</summary>
public sealed class FaultTooSmallToOpen : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0302",
        "Fault current too low to open the device",
        RuleSeverity.Error,
        "At the far end of what a device protects, the smallest fault (lowest voltage, one feed, lowest source limit, hot copper) stays below the current that surely opens it, and something on the way is harmed by what keeps flowing.")
    {
        Basis = "Smallest fault current not below the conventional fusing or tripping current: IEC 60269-1 Table 2, UL 248-14 (by the trade); source limit at least that: ECSS-Q-ST-30-11C Rev.2, 6.17.3c for its own multiple",
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
                // A resettable fuse is judged by RAIL0404; a device in the return by what its live conductor needs.
                if (place.Part is Fuse or CircuitBreaker or ElectronicFuse && !place.InReturn && network.OpeningOf(place) is { } opening)
                {
                    var datum = place.Part is ElectronicFuse ? nameof(ElectronicFuse.TripLevel) : nameof(Fuse.RatedCurrent);
                    yield return Judge(network, Subject.Of(Description, place, datum), opening, "open");
                }
            }
        }
    }

    /// <summary>Weighs what surely opens a device against the smallest fault at each far end of what it protects.</summary>
    internal static Check Judge(Network network, Subject subject, Network.DeviceOpening opening, string verb)
    {
        var place = opening.Place;
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.FaultResistance), nameof(DesignPolicy.ArcVoltage), nameof(DesignPolicy.CreditFirmwareLimits), nameof(DesignPolicy.PersistentFaultPower)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        // Parallel devices must all open: together they need the sum.
        var demand = opening.Sure;
        var working = ImmutableArray.Create(opening.Step);
        if (opening.Branches > 1)
        {
            working = working.Add(new WorkingStep("parallel branches, all of which must open", "", "", new Figure(opening.Branches, "")));
        }

        Check? worst = null;
        foreach (var end in Protection.FarEnds(network, place))
        {
            var fault = network.SmallestFault(end.Rail, end.Supplier, end.Behind, place);
            var weighing = Weighing.Of(demand, fault.Current);
            var steps = working.AddRange(fault.Working);
            Check check;
            if (weighing.Verdict != Verdict.Holds && Protection.OpenedOtherwise(network, place, end, fault.Current) is { } otherwise)
            {
                check = subject.ToStructural(true, $"{subject.Where} {otherwise}", [.. steps]);
            }
            else if (weighing.Verdict != Verdict.Holds && Protection.Harmless(network, place, end, fault.Latches, demand, opening.SureMissing) is var harmless && harmless.Holds != false)
            {
                check = harmless.Holds == true
                    ? subject.ToStructural(true, $"{subject.Where} need not {verb} on {Protection.Short(end.Place)}: what can last harms nothing on the way", [.. steps, harmless.Step]) with { Assumptions = [harmless.Step.Source] }
                    : subject.ToUndecided(fault.Gaps.AddRange(opening.SureMissing).AddRange(harmless.Missing));
            }
            else
            {
                var why = fault.BySource ? "source limit" : "long path";
                check = weighing.ToCheck(
                    subject, "A", $"{subject.Where} needs {Figures.Text(weighing.Demand, "A")} to {verb}; {end.Place} gives {Figures.Text(weighing.Capacity, "A")} ({why})", steps, fault.Gaps.AddRange(opening.SureMissing)) with
                {
                    Named = [.. end.Elements.Select(element => new NamedCurrents(element.Place, element.Part, new Range(0, weighing.Demand)))],
                };
            }

            worst = Protection.Worse(worst, check with { Corner = $"lowest voltage, one feed, lowest limit, hot copper; {end.Place}", UsesOperatingPoint = true });
        }

        return worst ?? subject.ToUndecided([]);
    }
}
