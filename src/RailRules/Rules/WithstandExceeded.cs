using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0304: let-through energy above what a conductor, connector or semiconductor withstands.</summary>
public sealed class WithstandExceeded : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0304",
        "Let-through above what an element withstands",
        RuleSeverity.Error,
        "At some current between the smallest and the largest fault, the Joule integral that the devices let through exceeds what a conductor, a contact or a semiconductor withstands from its running temperature.")
    {
        Basis = "Clearing I²t not above k² S²: IEC 60364-4-43, 434.5.2 (from memory); semiconductors 10 % above the fuse: MIL-DTL-917F, 3.13.2.1",
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
                // What no device guards is for RAIL0307.
                if (place.Branches.IsEmpty && Protection.GuardsOf(network, place) is { Count: > 0 } guards && network.EnduranceOf(place) is { JudgesIntegral: true } endurance)
                {
                    yield return Judge(network, place, guards, endurance);
                }
            }
        }
    }

    private static string DatumOf(Element part) => part switch
    {
        { Withstand: not null } => nameof(Element.Withstand),
        Trace => nameof(Trace.Width),
        Switch or BlockingDiode => nameof(Switch.SurgeIntegral),
        ParallelGroup => nameof(ParallelGroup.Branches),
        Wire or Busbar => nameof(Wire.Section),
        _ => nameof(Element.Withstand),
    };

    private Check Judge(Network network, Network.PartPlace place, List<Protection.Guarding> guards, Network.Endurance endurance)
    {
        var subject = Subject.Of(Description, place, DatumOf(place.Part));
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.SemiconductorShare), nameof(DesignPolicy.WithstandLimit), nameof(DesignPolicy.FaultResistance), nameof(DesignPolicy.ArcVoltage), nameof(DesignPolicy.TraceRise)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var smallest = Protection.SmallestFault(network, guards);
        var (peak, _, largest) = Protection.LargestFault(network, place, guards);
        if (Weighing.Covers(endurance.ForEver.Low, peak.High))
        {
            return subject.ToStructural(true, $"{subject.Where} carries for ever what any fault gives", new WorkingStep("largest fault current", "", "", new Figure(peak.High, "A")), new WorkingStep("continuous capability", "", "", new Figure(endurance.ForEver.Low, "A")));
        }

        var guard = Guard.Above(network, place);
        var (low, high) = (Math.Min(smallest.Current.Low, peak.High), Math.Min(peak.High, 1e9));
        var limit = margins.Policy.WithstandLimit.Seconds;
        (double Current, Weighing Weighing, bool Certain)? worst = null;
        foreach (var current in guard.Grid(low, high, [endurance.ForEver.Low, smallest.Current.High, peak.Low]))
        {
            // What lasts longer than heating is adiabatic is an overload: RAIL0204, RAIL0303 and RAIL0308 judge it.
            var time = guard.Longest(current);
            if (time.Low > limit * (1 + Weighing.Tolerance) || Weighing.Covers(endurance.ForEver.Low, current))
            {
                continue;
            }

            // A current whose heat the element sheds harms it later than the adiabatic limit says, or never.
            var passed = guard.LetThrough(current);
            passed = passed with { High = Math.Min(passed.High, Math.Max(passed.Low, current * current * limit)) };
            if (passed.High > endurance.Integral.Low && endurance.JudgesTime && endurance.Harmed(current, double.PositiveInfinity).Low >= time.High)
            {
                continue;
            }

            // The largest fault, too, is certain, even where the smallest is not known.
            var certain = current >= Math.Min(smallest.Current.High, peak.Low) * (1 - 1e-6) && current <= peak.Low * (1 + 1e-6) && !Weighing.Covers(endurance.ForEver.High, current);
            var weighing = Weighing.Of(passed, endurance.Integral);
            var rank = Rank(weighing, certain);
            if (worst is not { } before || rank > Rank(before.Weighing, before.Certain) || (rank == Rank(before.Weighing, before.Certain) && (weighing.Margin ?? double.PositiveInfinity) < (before.Weighing.Margin ?? double.PositiveInfinity)))
            {
                worst = (current, weighing, certain);
            }
        }

        var corner = $"every current from the smallest to the largest fault; from its running temperature; {(guards.Count > 0 ? $"behind '{guards[0].Device.Label}'" : "")}";
        if (worst is not { } found)
        {
            return subject.ToStructural(true, $"{subject.Where} meets no fault that lasts as shortly as heating is adiabatic") with { Corner = corner, UsesOperatingPoint = true };
        }

        ImmutableArray<WorkingStep> working =
        [
            new WorkingStep("smallest fault current", "", "", new Figure(smallest.Current.Low, "A"), "lowest voltage, one feed, hot copper"),
            new WorkingStep("largest fault current", "", "", new Figure(peak.High, "A"), "highest voltage, all feeds, cold copper"),
            new WorkingStep("worst current between them", "", "", new Figure(found.Current, "A")),
            new WorkingStep("longest time at it", "", "", new Figure(guard.Longest(found.Current).High, "s"), guard.Devices.FirstOrDefault()?.Basis ?? ""),
            .. endurance.Working,
        ];
        IEnumerable<MissingDatum> missing =
        [
            .. guard.LetThrough(found.Current).IsExact ? [] : guard.Missing,
            .. endurance.Integral.IsExact ? [] : endurance.Missing,
            .. found.Certain || found.Weighing.Verdict == Verdict.Undecided ? [] : smallest.Gaps.AddRange(largest.Gaps).AddRange(endurance.ForEverMissing),
        ];
        if (found.Weighing.Verdict != Verdict.Holds && Protection.IsProtectedByRating(network, place, guards, endurance))
        {
            return subject.ToStructural(true, $"{subject.Where} is protected by the rating of '{guards[0].Device.Label}'", [.. working]) with { Corner = corner, Assumptions = [Protection.ByRating], UsesOperatingPoint = true };
        }

        if (found.Weighing.Verdict == Verdict.Fails && !found.Certain)
        {
            return subject.ToUndecided(missing) with { Working = working, Corner = corner, UsesOperatingPoint = true };
        }

        var device = guards[0].Device.Label;
        return found.Weighing.ToCheck(
            subject, "A²s", $"'{device}' lets {Figures.Text(found.Weighing.Demand, "A²s")} through at {Figures.Text(found.Current, "A")}; {subject.Where} withstands {Figures.Text(found.Weighing.Capacity, "A²s")}", working, missing) with
        {
            Corner = corner,
            Assumptions = [.. guard.Assumptions.Concat(largest.Assumptions).Distinct()],
            UsesOperatingPoint = true,
            Named = [new NamedCurrents(place.Place, place.Part, Range.Exactly(found.Current))],
        };
    }

    private static int Rank(Weighing weighing, bool certain) => weighing.Verdict switch
    {
        Verdict.Fails when certain => 3,
        Verdict.Fails => 2,
        Verdict.Undecided => 1,
        _ => 0,
    };
}
