namespace RailRules.Rules;

public sealed partial class OutsideSafeOperatingArea
{
    /// <summary>Relays, contactors and plain transistors: what they close onto, what they open.</summary>
    private IEnumerable<Check> Contact(Network network, Network.PartPlace place, Switch part)
    {
        var isTransistor = part.SafeOperatingArea is not null || part.AvalancheEnergy is not null;
        var flow = network.CurrentOf(place, peak: true);
        var solved = flow.Reason == Network.FlowReason.Solved;
        var steady = solved ? new Range(flow.Low, flow.High) : new Range(0, double.PositiveInfinity);
        var flowGaps = network.DoubtsAbout(flow, place.Rail);
        if (Making(network, place, part, steady, flowGaps) is { } making)
        {
            yield return making;
        }

        if ((part.BreakingCurrent is not null || !isTransistor) && steady.High > 0)
        {
            var missing = new List<MissingDatum>(flowGaps);
            if (part.BreakingCurrent is null)
            {
                missing.Add(new MissingDatum(new DatumPlace(part, nameof(Switch.BreakingCurrent)), place.Label));
            }

            var subject = Subject.Of(Description, place, nameof(Switch.BreakingCurrent));
            var weighing = Weighing.Of(steady, part.BreakingCurrent is { } rated ? Range.Exactly(rated.Amperes) : new Range(0, double.MaxValue));
            yield return weighing.ToCheck(
                subject, "A", $"{subject.Where} opens {Figures.Text(weighing.Demand, "A")} DC; it may open {Figures.Text(weighing.Capacity, "A")}",
                [
                    new WorkingStep("largest current of the loads, pulses at their peaks", "", "", new Figure(weighing.Demand, "A"), "operating point"),
                    .. part.BreakingCurrent is { } stated ? (IEnumerable<WorkingStep>)[new WorkingStep("breaking current, DC", "", "", new Figure(stated.Amperes, "A"), "data of the part", new DatumPlace(part, nameof(Switch.BreakingCurrent)))] : [],
                ],
                missing) with
            {
                Corner = "lowest or highest voltage, whichever draws more; all loads on",
                UsesOperatingPoint = true,
            };
        }

        if (part.AvalancheEnergy is { } energy && TurnOff(network, place, energy, nameof(Switch.AvalancheEnergy), part.DcVoltageRating, nameof(Switch.DcVoltageRating), double.PositiveInfinity) is { } turnOff)
        {
            yield return turnOff;
        }
    }

    /// <summary>The peak onto which it closes: inrush, or the loads where no capacitor is behind it. Null: it stays within its continuous rating.</summary>
    private Check? Making(Network network, Network.PartPlace place, Switch part, Range steady, IEnumerable<MissingDatum> flowGaps)
    {
        var inrush = network.InrushOf(place);
        var demand = new Range(Math.Max(inrush?.Least.Peak ?? 0, steady.Low), Math.Max(inrush?.Most.Peak ?? 0, steady.High));
        if (demand.High <= 0 || (part.MakingCurrent is null && part.RatedCurrent is { } carries && demand.High <= carries.Amperes * (1 + Weighing.Tolerance)))
        {
            return null;
        }

        var subject = Subject.Of(Description, place, nameof(Switch.MakingCurrent));
        var missing = new List<MissingDatum>([.. inrush?.Gaps ?? [], .. inrush is not null && inrush.Least.Peak >= steady.High ? [] : flowGaps]);
        var capacity = part.MakingCurrent is { } rated ? Range.Exactly(rated.Amperes) : new Range(part.RatedCurrent?.Amperes ?? 0, double.MaxValue);
        var working = new List<WorkingStep>(inrush?.Working ?? []);
        if (part.MakingCurrent is { } making)
        {
            working.Add(new WorkingStep("making current, DC", "", "", new Figure(making.Amperes, "A"), "data of the part", new DatumPlace(part, nameof(Switch.MakingCurrent))));
        }
        else
        {
            missing.Add(new MissingDatum(new DatumPlace(part, nameof(Switch.MakingCurrent)), place.Label));
        }

        var weighing = Weighing.Of(demand, capacity);
        working.Insert(0, new WorkingStep("peak when it closes", "", "", new Figure(weighing.Demand, "A"), inrush is null ? "operating point, all loads on" : "inrush into the capacitors behind it, or the loads"));
        return weighing.ToCheck(subject, "A", $"{subject.Where} closes onto {Figures.Text(weighing.Demand, "A")}; it may close onto {Figures.Text(weighing.Capacity, "A")}", working, missing) with
        {
            Corner = "highest voltage, largest capacitance, everything cold and new",
            Assumptions = inrush?.Assumptions ?? [],
            UsesOperatingPoint = true,
        };
    }
}
