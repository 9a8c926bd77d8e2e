using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0404: a resettable fuse that trips when warm, never trips, or cannot reset under load where that is required.</summary>
public sealed class ResettableFuseUnsuited : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0404",
        "A resettable fuse that trips when warm, never trips or cannot reset",
        RuleSeverity.Error,
        "The load draws more than the part holds in the hottest air, the smallest fault stays below what trips it in the coldest, or, where it must reset under load, the load leaves it more power than it needs to stay tripped.")
    {
        Basis = "Hold and trip current against temperature: the part's data; reset under load by power matching V²/(4 R): circuit theory",
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
                if (place.Part is not ResettableFuse resettable)
                {
                    continue;
                }

                yield return Holding(network, place);
                if (!place.InReturn && network.OpeningOf(place) is { } opening)
                {
                    yield return FaultTooSmallToOpen.Judge(network, Subject.Of(Description, place, nameof(ResettableFuse.TripCurrent)), opening, "trip");
                }

                if (Resetting(network, place, resettable) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private Check Holding(Network network, Network.PartPlace place)
    {
        var subject = Subject.Of(Description, place, nameof(ResettableFuse.HoldCurrent));
        var flow = network.CurrentOf(place);
        if (flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(network.DoubtsAbout(flow, place.Rail)) with { UsesOperatingPoint = true };
        }

        var rating = network.HoldOf(place);
        var weighing = Weighing.Of(new Range(flow.Low, flow.High), rating.Capacity);
        var air = network.AirAt(place.Rail, place.Part.Surroundings, place.Part);
        var hot = air.Missing is null ? Figures.Text(air.Hottest.High, "°C") : "an unstated ambient";
        var message = $"{subject.Where} holds {Figures.Text(weighing.Capacity, "A")} at {hot}; the load draws {Figures.Text(weighing.Demand, "A")}";
        IEnumerable<WorkingStep> working =
        [
            new WorkingStep("steady current", "sum of the loads and rails below", "", new Figure(weighing.Demand, "A"), "operating point, r.m.s."),
            .. rating.Working,
        ];
        var missing = network.DoubtsAbout(flow, place.Rail).Concat(rating.Missing);
        var stays = place.Rail.RequiresSelfReset == true ? (ImmutableArray<string>)[] : [$"'{place.Label}' stays tripped until power is removed"];
        return weighing.ToCheck(subject, "A", message, working, missing) with
        {
            UsesOperatingPoint = true,
            Corner = $"hottest air, {(flow.AtHighVoltage ? "highest" : "lowest")} source voltage{(flow.State.Length > 0 ? ", " + flow.State : "")}",
            Assumptions = [.. stays, .. rating.Assumptions, .. network.OperatingAssumptions(place.Rail)],
        };
    }

    /// <summary>Reset under load, only where the rail requires it.</summary>
    private Check? Resetting(Network network, Network.PartPlace place, ResettableFuse resettable)
    {
        var unknown = network.IsUnknown(place.Rail, nameof(Rail.RequiresSelfReset));
        if (place.Rail.RequiresSelfReset != true && !unknown)
        {
            return null;
        }

        var subject = Subject.Of(Description, place, nameof(ResettableFuse.TrippedPower));
        if (unknown)
        {
            return subject.ToUndecided([new MissingDatum(new DatumPlace(place.Rail, nameof(Rail.RequiresSelfReset)), Network.Label(place.Rail))]);
        }

        var high = network.VoltagesOf(place.Rail).High;
        var flow = network.CurrentOf(place);
        if (!high.IsKnown || flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(high.IsKnown ? network.LoadsWithoutMinVoltage(place.Rail) : high.Missing) with { UsesOperatingPoint = true };
        }

        // The load as the resistance V/I; in series with it the part gets V²/(4 R) = V I/4 at most.
        double Left(double amperes) => amperes > 0 ? Physics.DeviceHeat.LoadLinePower(high.Value, high.Value / amperes) : 0;
        var demand = new Range(Left(flow.Low), double.IsInfinity(flow.High) ? double.PositiveInfinity : Left(flow.High));
        var tripped = resettable.TrippedPower is { } power ? Range.Exactly((double)power.Watts) : new Range(0, double.PositiveInfinity);
        var weighing = Weighing.Of(demand, tripped);
        var missing = new List<MissingDatum>();
        if (!tripped.IsExact)
        {
            missing.Add(new MissingDatum(new DatumPlace(resettable, nameof(ResettableFuse.TrippedPower)), place.Label));
        }
        else if (!flow.IsExact)
        {
            missing.AddRange(network.MissingFor([place.Rail]));
        }

        return weighing.ToCheck(
            subject,
            "W",
            $"{subject.Where} {(weighing.Verdict == Verdict.Fails ? "cannot reset" : "resets")} under load: the load leaves it {Figures.Text(weighing.Demand, "W")}, it stays tripped at {Figures.Text(weighing.Capacity, "W")}",
            [
                high.Step("highest steady voltage"),
                new WorkingStep("power that the load leaves it", "V²/(4 R_load) = V I/4", "", new Figure(weighing.Demand, "W"), "load line, power matching"),
                new WorkingStep("power that keeps it tripped", "", "", new Figure(weighing.Capacity, "W"), "data of the part", new DatumPlace(resettable, nameof(ResettableFuse.TrippedPower))),
            ],
            missing) with
        {
            UsesOperatingPoint = true,
            Corner = "highest voltage, largest load",
        };
    }
}
