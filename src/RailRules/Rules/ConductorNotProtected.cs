using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0204: a conductor, connector or return that its device does not protect against overload.</summary>
public sealed class ConductorNotProtected : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0204",
        "A conductor or contact that its device does not protect against overload",
        RuleSeverity.Error,
        "What bounds the current lets more flow for ever than a conductor or contact carries for ever, or more until it opens than the conductor bears for that long.")
    {
        Basis = "I_n ≤ I_z and I₂ ≤ 1.45 I_z: IEC 60364-4-43, 433.1 (from memory); devices below a conductor that bound all that leaves it: 433.2 (from memory)",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        var shared = new HashSet<(Return, int)>();
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail, nameof(Rail.Loads)))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                // What a return shared by several rails bears is the same for all of them.
                var back = place.InReturn ? place.Feed is null ? rail.Return : place.Feed.Return : null;
                if (IsJudged(place) && (back is null || shared.Add((back, place.Place.Index ?? 0))) && Judge(network, place) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    /// <summary>Conductors and contacts; a parallel group without devices as one, and then not what stands in it.</summary>
    private static bool IsJudged(Network.PartPlace place) =>
        place.Branches.All(one => HasDevice(one.Group))
        && (place.Part is Wire or Trace or Busbar or Connector or FuseHolder or Switch || (place.Part is ParallelGroup group && !HasDevice(group)));

    private static bool HasDevice(ParallelGroup group) => Network.Items(group.Branches).Any(branch => Network.Items(branch).Any(one => one is not null && (UnprotectedStretch.IsDevice(one) || (one is ParallelGroup inner && HasDevice(inner)))));

    private Check? Judge(Network network, Network.PartPlace place)
    {
        var bounds = network.BoundsOf(place);
        if (bounds.IsEmpty)
        {
            return null;
        }

        var bears = place.Part is ParallelGroup group ? network.ContinuousOf(place, group) : network.ContinuousCurrent(place.Rail, place.Part, place.Label)!;
        if (place.Part is ParallelGroup && double.IsInfinity(bears.Range.High) && bears.Missing.IsEmpty)
        {
            return null; // no conductor stands in it
        }

        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        var subject = Subject.Of(Description, place, DatumOf(place.Part));
        if (network.UnknownMargin(margins, nameof(DesignPolicy.OverloadFactor), nameof(DesignPolicy.CreditFirmwareLimits)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        Check? chosen = null;
        foreach (var bound in bounds)
        {
            var check = Weigh(network, place, subject, bears, margins.Policy, bound);
            if (check.Verdict == Verdict.Holds)
            {
                return check;
            }

            chosen = chosen is null || (check.Verdict == Verdict.Undecided && chosen.Verdict == Verdict.Fails) ? check : chosen;
        }

        return Weak(network, place, subject, bears) ?? chosen;
    }

    private static Check Weigh(Network network, Network.PartPlace place, Subject subject, Network.Continuous bears, DesignPolicy policy, Network.Bound bound)
    {
        var factor = policy.OverloadFactor;
        var steady = Weighing.Of(bound.Steady, bears.Range);
        var overload = Weighing.Of(bound.Sure, new Range(bears.Range.Low * factor, bears.Range.High * factor));
        var verdicts = new[] { steady.Verdict, overload.Verdict };
        var verdict = verdicts.Contains(Verdict.Fails) ? Verdict.Fails : verdicts.Contains(Verdict.Undecided) ? Verdict.Undecided : Verdict.Holds;
        var forEver = steady.Verdict == verdict && (overload.Verdict != verdict || (steady.Margin ?? 0) <= (overload.Margin ?? double.PositiveInfinity));
        var shown = forEver ? steady : overload;
        var carries = verdict == Verdict.Fails ? bears.Range.High : bears.Range.Low;
        var until = forEver ? "for ever" : bound.Until;
        var message = $"{subject.Where} may carry {Figures.Text(carries, "A")}; '{bound.Label}' lets {Figures.Text(shown.Demand, "A")} flow {until}";
        WorkingStep[] working =
        [
            new("lets flow for ever", "", "", new Figure(verdict == Verdict.Fails ? bound.Steady.Low : bound.Steady.High, "A"), $"steady current of '{bound.Label}'", bound.Owner is { } owner ? new DatumPlace(owner) : null),
            new("surely ends", "", "", new Figure(verdict == Verdict.Fails ? bound.Sure.Low : bound.Sure.High, "A"), bound.Until),
            new("may carry for ever", "", "", new Figure(carries, "A"), "I_z: hottest air, as installed", subject.Places[1]),
            new("bears for the conventional time", "factor × I_z", $"{Figures.Digits(factor)} × {Figures.Text(carries, "A")}", new Figure(carries * factor, "A"), Network.PolicySource(policy, nameof(DesignPolicy.OverloadFactor)), new DatumPlace(policy, nameof(DesignPolicy.OverloadFactor))),
        ];
        var missing = bears.Range.IsExact ? bound.Missing : double.IsInfinity(bears.Range.High) ? bears.Missing : bears.Missing.AddRange(bound.Missing);
        return shown.ToCheck(subject, "A", message, working, missing) with
        {
            Corner = "hottest air, as installed; device cold",
            Places = bound.Owner is { } device ? subject.Places.Add(new DatumPlace(device)) : subject.Places,
        };
    }

    /// <summary>Holds where no source can drive more for long than the element carries for ever: the settled fault current behind it.</summary>
    private static Check? Weak(Network network, Network.PartPlace place, Subject subject, Network.Continuous bears)
    {
        if (place.InReturn || !place.Branches.IsEmpty || place.Part is ParallelGroup || bears.Range.Low <= 0)
        {
            return null;
        }

        var fault = network.LargestFault(place, place.Place.Index ?? 0, reverse: false, least: false);
        return Weighing.Covers(bears.Range.Low, fault.Settled)
            ? subject.ToStructural(
                true,
                $"{subject.Where} may carry {Figures.Text(bears.Range.Low, "A")}; no more than {Figures.Text(fault.Settled, "A")} can flow for long",
                [.. fault.Sources, new WorkingStep("settled fault current", "", "", new Figure(fault.Settled, "A"), "highest voltage, all feeds, cold")]) with
            {
                Demand = new Figure(fault.Settled, "A"),
                Capacity = new Figure(bears.Range.Low, "A"),
                Margin = fault.Settled > 0 ? bears.Range.Low / fault.Settled : double.PositiveInfinity,
                Assumptions = ["bounded by the resistance of the sources"],
            }
            : null;
    }

    private static string DatumOf(Element element) => element switch
    {
        Trace { Ampacity: null } => nameof(Trace.Width),
        Wire or Trace or Busbar => nameof(Wire.Ampacity),
        Connector => nameof(Connector.ContactRating),
        ParallelGroup => nameof(ParallelGroup.Branches),
        _ => nameof(Switch.RatedCurrent),
    };
}
