namespace RailRules.Rules;

/// <summary>RAIL0501: a load below its lowest voltage at the end of its path.</summary>
public sealed class LoadVoltageTooLow : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0501",
        "Load below its lowest voltage at the end of its path",
        RuleSeverity.Error,
        "At the lowest source voltage, with hot resistances, path and return take so much that a load or converter gets less than it needs.")
    {
        Basis = "Circuit theory: drops of path and return at the solved operating point",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            if (network.Unworkable(rail, Network.Label(rail), nameof(Rail.Loads)) is { } hidden)
            {
                yield return Subject.Of(Description, rail, hidden.Place).ToUndecided([hidden]);
            }

            var loads = Network.Items(rail.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                var unknown = loads[i] is { } known && (network.IsUnknown(known, nameof(Load.MinVoltage)) || network.IsUnknown(known, nameof(Load.Power)));
                if (loads[i] is { } load && (load.MinVoltage is not null || load.Power?.Max.Watts > 0 || unknown))
                {
                    var label = Network.Label(load, rail, i);
                    yield return Judge(network, rail, Subject.Of(Description, rail, nameof(Rail.Loads), i, load, label, nameof(Load.MinVoltage)), label, load.MinVoltage?.Volts);
                }
            }

            foreach (var converter in network.ConvertersOn(rail))
            {
                if (converter.InputMinVoltage is not null || network.FedBy(converter).Any())
                {
                    var place = new DatumPlace(converter, nameof(Converter.InputMinVoltage));
                    yield return Judge(network, rail, Subject.Of(Description, rail, new DatumPlace(converter, nameof(Converter.Input)), converter, place), Network.Label(converter), converter.InputMinVoltage?.Volts);
                }
            }
        }
    }

    private static Check Judge(Network network, Rail rail, Subject subject, string label, double? minimum)
    {
        var datum = subject.Places[1];
        if (minimum is not { } needs)
        {
            return subject.ToUndecided([new MissingDatum(datum, label)]) with { UsesOperatingPoint = true };
        }

        var flow = network.CurrentOf(rail);
        var low = network.VoltagesOf(rail).Low;
        if (flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(network.DoubtsAbout(flow, rail)) with { UsesOperatingPoint = true };
        }

        var source = low.IsKnown ? low.Value : double.PositiveInfinity;
        var gets = new Range(Math.Max(0, flow.WorstEndVoltage ?? 0), Math.Min(source, flow.BestEndVoltage ?? double.PositiveInfinity));
        var weighing = Weighing.Of(Range.Exactly(needs), gets);
        WorkingStep[] working =
        [
            low.Step("lowest source voltage"),
            new WorkingStep("drop of path and return", "sum over the network", "", new Figure(source - weighing.Capacity, "V"), "operating point: upper solution, hot resistances, fuse, contact and diode drops"),
            new WorkingStep("voltage at the end of the path", "V - drop", $"{Figures.Text(source, "V")} - {Figures.Text(source - weighing.Capacity, "V")}", new Figure(weighing.Capacity, "V"), "lowest over all feed states"),
            new WorkingStep("lowest voltage at which it works", "", "", new Figure(needs, "V"), "data of the load", datum),
        ];
        var message = $"{subject.Where} gets {Figures.Text(weighing.Capacity, "V")} at the end of its path; it needs {Figures.Text(needs, "V")}";
        return weighing.ToCheck(subject, "V", message, working, network.MissingFor([rail])) with
        {
            UsesOperatingPoint = true,
            Corner = $"lowest source voltage, hot resistances, highest load{(flow.State.Length > 0 ? ", worst feed state" : "")}",
            Assumptions = [.. network.OperatingAssumptions(rail)],
        };
    }
}
