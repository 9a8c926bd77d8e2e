namespace RailRules.Rules;

/// <summary>RAIL0405: an inrush limiter that is still hot when the load starts again, with harm; or that takes more energy or current than it bears.</summary>
public sealed class LimiterStillHot : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0405",
        "Inrush limiter still hot when the load starts again",
        RuleSeverity.Error,
        "After an outage shorter than its recovery time an inrush limiter still has its low hot resistance, and the second start sends more through a fuse, or holds a source longer at its limit, than they bear; or it takes more energy or current than it bears itself.")
    {
        Basis = "Charge of a capacitor: circuit theory; share of the melting I²t for a number of pulses: common practice of the fuse trade, no source; energy and current of the limiter: the part's data",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail, nameof(Rail.Loads), nameof(Rail.Capacitors)).Where(_ => network.Parts(rail).Any(place => place.Part is InrushLimiter)))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (place.Part is not InrushLimiter limiter)
                {
                    continue;
                }

                foreach (var check in (Check?[])[Restart(network, place, limiter), Energy(network, place, limiter), Current(network, place, limiter)])
                {
                    if (check is not null)
                    {
                        yield return check;
                    }
                }
            }
        }
    }

    /// <summary>The start after the shortest outage: the fuse or the source that bears it least; no check where all bear it.</summary>
    private Check? Restart(Network network, Network.PartPlace place, InrushLimiter limiter)
    {
        if (limiter.Bypass == true)
        {
            return null;
        }

        var outage = network.ShortestOutageOf(place.Rail);
        var subject = Subject.Of(Description, place, nameof(InrushLimiter.HotResistance), new DatumPlace(limiter, nameof(InrushLimiter.RecoveryTime)), new DatumPlace(place.Rail, nameof(Rail.ShortestOutage)));
        if (network.HasCooled(place.Rail, limiter))
        {
            return Cooled(network, place, limiter, subject, outage!.Value);
        }

        var worst = Harms(network, place).Where(harm => harm.Check.Verdict != Verdict.Holds).OrderBy(harm => harm.Check.Verdict == Verdict.Fails ? 0 : 1).ThenBy(harm => harm.Check.Margin).FirstOrDefault();
        if (worst.Check is not { } check)
        {
            return null;
        }

        var doubt = new List<MissingDatum>();
        Doubt(outage is null, place.Rail, nameof(Rail.ShortestOutage), Network.Label(place.Rail));
        Doubt(limiter.RecoveryTime is null, limiter, nameof(InrushLimiter.RecoveryTime), place.Label);
        Doubt(network.IsUnknown(limiter, nameof(InrushLimiter.Bypass)), limiter, nameof(InrushLimiter.Bypass), place.Label);
        var result = check with { Subject = subject.Text, Rail = subject.Rail, Part = subject.Part, Places = subject.Places, Rule = Description.Id, Basis = Description.Basis, Corner = "highest voltage, largest capacitance, inrush limiters still hot" };
        if (doubt.Count > 0 || check.Verdict == Verdict.Undecided)
        {
            var names = Subject.Distinct(doubt.Concat(check.Missing));
            return result with { Verdict = Verdict.Undecided, Margin = null, Missing = names, Message = subject.Undecided(names) };
        }

        var still = limiter.HotResistance is { } hot ? $"still at {Figures.Text(hot.Min.Ohms, "Ω")}" : "still hot";
        return result with
        {
            Message = $"{subject.Where} is {still} after an outage of {Figures.Text(outage!.Value, "s")}: {worst.Sentence}",
            Working =
            [
                new WorkingStep("shortest outage", "", "", new Figure(outage.Value, "s"), "data of the rail", new DatumPlace(place.Rail, nameof(Rail.ShortestOutage))),
                new WorkingStep("recovery time", "", "", new Figure(limiter.RecoveryTime!.Value.Seconds, "s"), "data of the part", new DatumPlace(limiter, nameof(InrushLimiter.RecoveryTime))),
                .. limiter.HotResistance is { } ohms ? (IEnumerable<WorkingStep>)[new WorkingStep("hot resistance, least", "", "", new Figure(ohms.Min.Ohms, "Ω"), "data of the part", new DatumPlace(limiter, nameof(InrushLimiter.HotResistance)))] : [],
                .. check.Working,
            ],
        };

        void Doubt(bool absent, object owner, string datum, string label)
        {
            if (absent)
            {
                doubt.Add(new MissingDatum(new DatumPlace(owner, datum), label));
            }
        }
    }

    /// <summary>It has cooled: what it would do hot is not worked out.</summary>
    private static Check? Cooled(Network network, Network.PartPlace place, InrushLimiter limiter, Subject subject, double outage)
    {
        var recovery = limiter.RecoveryTime!.Value.Seconds;
        return network.CapacitanceBehind(place).Capacitance.High > 0
            ? Weighing.Of(Range.Exactly(recovery), Range.Exactly(outage)).ToCheck(
                subject,
                "s",
                $"{subject.Where} has cooled after an outage of {Figures.Text(outage, "s")}; it needs {Figures.Text(recovery, "s")}",
                [
                    new WorkingStep("recovery time", "", "", new Figure(recovery, "s"), "data of the part", new DatumPlace(limiter, nameof(InrushLimiter.RecoveryTime))),
                    new WorkingStep("shortest outage", "", "", new Figure(outage, "s"), "data of the rail", new DatumPlace(place.Rail, nameof(Rail.ShortestOutage))),
                ],
                []) with
            { Corner = "shortest outage" }
            : null;
    }

    /// <summary>What a start with hot limiters does to fuses and sources. A fuse that the cold start harms already is left to RAIL0401.</summary>
    private IEnumerable<(Check Check, string Sentence)> Harms(Network network, Network.PartPlace place)
    {
        foreach (var at in network.FusesInSeries(place))
        {
            var fuse = (Fuse)at.Part;
            if (network.InrushOf(at, hotLimiters: true) is { } hot && network.InrushOf(at) is { } cold && InrushAgesFuse.Judge(Description, network, at, fuse, cold).Verdict != Verdict.Fails)
            {
                var check = InrushAgesFuse.Judge(Description, network, at, fuse, hot);
                yield return (check, $"'{at.Label}' then takes {check.Demand?.Text ?? "unbounded current"}, allowed {check.Capacity?.Text}");
            }
        }

        foreach (var (source, rail) in network.SourcesOf(place))
        {
            var limit = source switch
            {
                Supply supply => supply.CurrentLimit,
                Converter converter => converter.CurrentLimit,
                _ => null,
            };
            if (limit is { Level: { } level, Style: null or CurrentLimitStyle.LatchOff or CurrentLimitStyle.Hiccup } && AtLimit(network, place, source, rail, limit, level) is { } check)
            {
                yield return (check, $"'{Network.Label(source)}' is then held at its limit for {check.Demand?.Text ?? "ever"} and gives up after {check.Capacity?.Text}");
            }
        }
    }

    /// <summary>How long a source that latches off or hiccups is held at its limit, against the time that it tries.</summary>
    private Check? AtLimit(Network network, Network.PartPlace place, Source source, Rail rail, CurrentLimit limit, Band<UnitsNet.ElectricCurrent> level)
    {
        var subject = Subject.Of(Description, place, nameof(InrushLimiter.HotResistance));
        var high = network.VoltagesOf(rail).High;
        var (farads, missing) = network.CapacitanceBehind(place);
        if (farads.High <= 0)
        {
            return null;
        }

        if (!high.IsKnown)
        {
            return subject.ToUndecided(high.Missing);
        }

        var tries = limit.Style == CurrentLimitStyle.Hiccup ? (nameof(CurrentLimit.OnTime), limit.OnTime?.Seconds) : (nameof(CurrentLimit.TripTime), limit.TripTime?.Min.Seconds);
        var demand = network.TimeAtLimit(place, high.Value, farads, level, missing);
        var capacity = limit.Style is not null && tries.Item2 is { } stated ? Range.Exactly(stated) : new Range(0, double.PositiveInfinity);
        if (!capacity.IsExact)
        {
            missing.Add(new MissingDatum(new DatumPlace(limit, limit.Style is null ? nameof(CurrentLimit.Style) : tries.Item1), Network.Label(source)));
        }

        var weighing = Weighing.Of(demand, capacity);
        return weighing.ToCheck(
            subject,
            "s",
            "",
            [
                high.Step("highest steady voltage"),
                new WorkingStep("capacitance behind it, largest", "sum", "", new Figure(farads.High, "F"), "capacitors and inputs of loads and converters"),
                new WorkingStep("lowest current limit", "", "", new Figure(level.Min.Amperes, "A"), $"data of '{Network.Label(source)}'", new DatumPlace(limit, nameof(CurrentLimit.Level))),
                new WorkingStep("time at the limit", "C (V − I R) / I", "", new Figure(weighing.Demand, "s"), "series resistance with hot limiters, loads that are on included"),
                new WorkingStep("time that it tries", "", "", new Figure(weighing.Capacity, "s"), $"data of '{Network.Label(source)}'", new DatumPlace(limit, tries.Item1)),
            ],
            missing);
    }

    /// <summary>The energy of one charge.</summary>
    private Check? Energy(Network network, Network.PartPlace place, InrushLimiter limiter)
    {
        var (farads, missing) = network.CapacitanceBehind(place);
        if (farads.High <= 0)
        {
            return null;
        }

        var subject = Subject.Of(Description, place, nameof(InrushLimiter.MaxEnergy));
        var high = network.VoltagesOf(place.Rail).High;
        if (!high.IsKnown)
        {
            return subject.ToUndecided(high.Missing);
        }

        // In a parallel group the energies are as the currents.
        var share = network.ShareOfCharge(place);
        double Of(double one, double part) => double.IsInfinity(one) ? one : one * high.Value * high.Value / 2 * part;
        var demand = new Range(Of(farads.Low, share.Low), Of(farads.High, share.High));
        var capacity = limiter.MaxEnergy is { } bears ? Range.Exactly(bears.Joules) : new Range(0, double.PositiveInfinity);
        if (!capacity.IsExact)
        {
            missing.Add(new MissingDatum(new DatumPlace(limiter, nameof(InrushLimiter.MaxEnergy)), place.Label));
        }

        if (!share.IsExact)
        {
            missing.Add(new MissingDatum(new DatumPlace(limiter, nameof(InrushLimiter.ColdResistance)), place.Label));
        }

        var weighing = Weighing.Of(demand, capacity);
        return weighing.ToCheck(
            subject,
            "J",
            $"{subject.Where} takes {Figures.Text(weighing.Demand, "J")} at each start; it may take {Figures.Text(weighing.Capacity, "J")}",
            [
                high.Step("highest steady voltage"),
                new WorkingStep("capacitance behind it, largest", "sum", "", new Figure(farads.High, "F"), "capacitors and inputs of loads and converters"),
                .. share.High < 1 ? (IEnumerable<WorkingStep>)[new WorkingStep("largest share of this branch", "", "", new Figure(share.High, ""), "resistances of the branches")] : [],
                new WorkingStep("energy of a charge", "C V²/2", "", new Figure(weighing.Demand, "J"), "as much as the capacitors keep is lost before them"),
                new WorkingStep("largest energy", "", "", new Figure(weighing.Capacity, "J"), "data of the part", new DatumPlace(limiter, nameof(InrushLimiter.MaxEnergy))),
            ],
            missing) with
        {
            Corner = "highest voltage, largest capacitance",
            Assumptions = high.Assumptions,
        };
    }

    /// <summary>The steady current, unless a bypass carries it.</summary>
    private Check? Current(Network network, Network.PartPlace place, InrushLimiter limiter)
    {
        if (limiter.Bypass == true)
        {
            return null;
        }

        var subject = Subject.Of(Description, place, nameof(InrushLimiter.MaxCurrent));
        var flow = network.CurrentOf(place);
        if (flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(network.DoubtsAbout(flow, place.Rail)) with { UsesOperatingPoint = true };
        }

        var rating = network.CarriedBy(place);
        var bypass = network.IsUnknown(limiter, nameof(InrushLimiter.Bypass));
        var weighing = Weighing.Of(new Range(bypass ? 0 : flow.Low, flow.High), rating.Capacity);
        var air = network.AirAt(place.Rail, limiter.Surroundings, limiter);
        var hot = air.Missing is null ? Figures.Text(air.Hottest.High, "°C") : "an unstated ambient";
        var missing = network.DoubtsAbout(flow, place.Rail).Concat(rating.Missing)
            .Concat(bypass ? [new MissingDatum(new DatumPlace(limiter, nameof(InrushLimiter.Bypass)), place.Label)] : []);
        return weighing.ToCheck(
            subject,
            "A",
            $"{subject.Where} carries {Figures.Text(weighing.Demand, "A")}; at {hot} it may carry {Figures.Text(weighing.Capacity, "A")}",
            [new WorkingStep("steady current", "sum of the loads and rails below", "", new Figure(weighing.Demand, "A"), "operating point, r.m.s."), .. rating.Working],
            missing) with
        {
            UsesOperatingPoint = true,
            Corner = $"hottest air, {(flow.AtHighVoltage ? "highest" : "lowest")} source voltage{(flow.State.Length > 0 ? ", " + flow.State : "")}",
            Assumptions = [.. rating.Assumptions, .. network.OperatingAssumptions(place.Rail)],
        };
    }
}
