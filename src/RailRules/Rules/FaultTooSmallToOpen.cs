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
                if (place.Part is Fuse or CircuitBreaker or ElectronicFuse && !place.InReturn && network.SureOpening(place) is { } sure)
                {
                    var datum = place.Part is ElectronicFuse ? nameof(ElectronicFuse.TripLevel) : nameof(Fuse.RatedCurrent);
                    yield return Judge(network, Subject.Of(Description, place, datum), place, sure.Current, sure.Missing, sure.Step, "open");
                }
            }
        }
    }

    /// <summary>Weighs what surely opens a device against the smallest fault at each far end of what it protects.</summary>
    internal static Check Judge(Network network, Subject subject, Network.PartPlace place, Range sure, ImmutableArray<MissingDatum> sureMissing, WorkingStep sureStep, string verb)
    {
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.FaultResistance), nameof(DesignPolicy.ArcVoltage), nameof(DesignPolicy.CreditFirmwareLimits), nameof(DesignPolicy.PersistentFaultPower)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        // Parallel devices must all open: together they need the sum.
        var count = place.Branches.IsEmpty ? 1 : place.Branches.Aggregate(1, (product, one) => product * Math.Max(1, Network.Items(one.Group.Branches).Length));
        var demand = new Range(sure.Low * count, sure.High * count);
        var working = ImmutableArray.Create(sureStep);
        if (count > 1)
        {
            working = working.Add(new WorkingStep("parallel branches, all of which must open", "", "", new Figure(count, "")));
        }

        Check? worst = null;
        foreach (var end in Protection.FarEnds(network, place))
        {
            var fault = network.SmallestFault(end.Rail, end.Supplier, end.Behind);
            var weighing = Weighing.Of(demand, fault.Current);
            var steps = working.AddRange(fault.Working);
            Check check;
            if (weighing.Verdict != Verdict.Holds && Opens(network, place, end))
            {
                check = Holds(subject, $"{subject.Where} is melted by the capacitors that discharge into {Short(end.Place)}", steps, "bounded by the capacitors");
            }
            else if (weighing.Verdict != Verdict.Holds && Protection.Harmless(network, place, end, fault.Latches, demand, sureMissing) is var harmless && harmless.Holds != false)
            {
                check = harmless.Holds == true
                    ? Holds(subject, $"{subject.Where} need not {verb} on {Short(end.Place)}: what can last harms nothing on the way", steps.Add(harmless.Step), harmless.Step.Source)
                    : subject.ToUndecided(fault.Gaps.AddRange(sureMissing).AddRange(harmless.Missing));
            }
            else
            {
                var why = fault.BySource ? "source limit" : "long path";
                check = weighing.ToCheck(
                    subject, "A", $"{subject.Where} needs {Figures.Text(weighing.Demand, "A")} to {verb}; {end.Place} gives {Figures.Text(weighing.Capacity, "A")} ({why})", steps, fault.Gaps.AddRange(sureMissing));
            }

            check = check with { Corner = $"lowest voltage, one feed, lowest limit, hot copper; {end.Place}", UsesOperatingPoint = true };
            worst = worst is null || Rank(check) > Rank(worst) || (Rank(check) == Rank(worst) && (check.Margin ?? double.PositiveInfinity) < (worst.Margin ?? double.PositiveInfinity)) ? check : worst;
        }

        return worst ?? subject.ToUndecided([]);
    }

    private static string Short(string place) => place.StartsWith("the ", StringComparison.Ordinal) ? "a fault at " + place : place;

    private static Check Holds(Subject subject, string message, ImmutableArray<WorkingStep> working, string bound) =>
        subject.ToStructural(true, message, [.. working]) with { Assumptions = [bound] };

    private static int Rank(Check check) => check.Verdict switch { Verdict.Fails => 2, Verdict.Undecided => 1, _ => 0 };

    /// <summary>Whether capacitors above the device melt it by themselves: the sum of C V²/(2 R) at the lowest voltage, least capacitance and hot copper.</summary>
    private static bool Opens(Network network, Network.PartPlace place, Protection.FarEnd end) =>
        place.Part is Fuse { MeltingIntegral: { } melting } && network.StoredIntegral(place, end.Rail, end.Supplier, end.Behind) >= melting.Max.AmpereSquaredSeconds;
}
