namespace RailRules.Rules;

/// <summary>RAIL0504: no operating point; the path cannot deliver the power.</summary>
public sealed class NoOperatingPoint : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0504",
        "No operating point: the path cannot deliver the power",
        RuleSeverity.Error,
        "Constant-power loads draw more as their voltage falls; beyond the greatest power that the path can deliver there is no voltage at which they run.")
    {
        Basis = "Circuit theory: the greatest power of a single loop is V²/(4R); the upper solution of the network",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        var checks = new Dictionary<Rail, Check>();
        foreach (var rail in network.JudgedRails)
        {
            if (Judge(network, rail) is { } check)
            {
                checks.Add(rail, check);
            }
        }

        foreach (var rail in network.JudgedRails)
        {
            // A rail that fails by what is below it says nothing new.
            if (checks.TryGetValue(rail, out var check) && !(check.Verdict == Verdict.Fails && FailsBelow(network, rail, checks)))
            {
                yield return check;
            }
        }
    }

    private static bool FailsBelow(Network network, Rail rail, Dictionary<Rail, Check> checks)
    {
        var seen = new HashSet<Rail>();
        var pending = new Stack<Rail>(network.Children(rail));
        while (pending.Count > 0)
        {
            var below = pending.Pop();
            if (!seen.Add(below))
            {
                continue;
            }

            if (checks.TryGetValue(below, out var check) && check.Verdict == Verdict.Fails)
            {
                return true;
            }

            foreach (var child in network.Children(below))
            {
                pending.Push(child);
            }
        }

        return false;
    }

    private Check? Judge(Network network, Rail rail)
    {
        if (network.DeliveryOf(rail) is not { } delivery)
        {
            return null;
        }

        var voltage = network.VoltagesOf(rail).Low;
        var loads = Network.Items(rail.Loads);
        var own = delivery.IsOwn ? Array.FindIndex([.. loads], load => load?.Power is not null) : -1;
        var subject = own >= 0
            ? Subject.Of(Description, rail, new DatumPlace(rail, nameof(Rail.Loads), own))
            : Subject.Of(Description, rail, new DatumPlace(rail, nameof(Rail.Path)));

        // The multiple belongs to the largest demand: what can be delivered does not grow with what is asked.
        var (demand, multiple) = (delivery.Demand, delivery.Multiple);
        var capacity = new Range(Times(multiple.Low, demand.High), Times(multiple.High, demand.High));
        var weighing = Weighing.Of(demand, capacity);
        var path = delivery.Resistance is { } ohms ? $"its path of {Figures.Text(ohms, "Ω")}" : "what feeds it";
        var (asked, at, most) = (Figures.Text(weighing.Demand, "W"), Figures.Text(voltage.Value, "V"), Figures.Text(weighing.Capacity, "W"));
        var message = weighing.Verdict == Verdict.Holds
            ? $"rail '{Network.Label(rail)}' delivers {asked} at {at}: {path} collapses at {most}"
            : $"rail '{Network.Label(rail)}' cannot deliver {asked} at {at}: {path} collapses at {most}";
        var working = new List<WorkingStep> { voltage.Step("lowest source voltage") };
        if (delivery.Resistance is { } shown)
        {
            working.Add(new WorkingStep("path and return, hot", "sum of the resistances from the source on", "", new Figure(shown, "Ω"), "data of the parts, at the highest temperature of each conductor"));
        }

        working.Add(new WorkingStep("constant power asked for", "sum over the rail and the rails below", "", new Figure(weighing.Demand, "W"), "data of the loads; converters at their lowest efficiency"));
        working.Add(new WorkingStep(
            "greatest power", delivery.IsOwn ? "V² / (4 R) where constant power is all the load" : "largest multiple of the loads that has an operating point", "", new Figure(weighing.Capacity, "W"), "operating point: upper solution, other rails without load"));
        return weighing.ToCheck(subject, "W", message, working, network.MissingFor([rail])) with
        {
            UsesOperatingPoint = true,
            Corner = "lowest source voltage, hot resistances, worst feed state",
            Assumptions = [.. network.OperatingAssumptions(rail)],
        };
    }

    private static double Times(double multiple, double power) => double.IsInfinity(power) ? multiple > 0 ? double.PositiveInfinity : 0 : multiple * power;
}
