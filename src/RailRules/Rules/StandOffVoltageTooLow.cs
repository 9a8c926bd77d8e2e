namespace RailRules.Rules;

/// <summary>RAIL0104: stand-off voltage below the highest steady voltage of the rail.</summary>
public sealed class StandOffVoltageTooLow : Rule
{
    /// <summary>Air (°C) at which a breakdown voltage is stated.</summary>
    private const double BreakdownReference = 25;

    /// <summary>The most that a breakdown voltage falls with each kelvin below its reference, as a share of it (1/K). Silicon avalanche, common practice, no source.</summary>
    private const double BreakdownCoefficient = 1.1e-3;

    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0104",
        "Stand-off voltage below the highest steady voltage of the rail",
        RuleSeverity.Error,
        "A clamp conducts for ever, and burns, where the highest steady voltage of its rail lies above its stand-off voltage. Transients are what it is there to cut; they are not counted.")
    {
        Basis = "Stand-off voltage not below the highest working voltage: data sheets of transient suppressors, common practice, no source",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            if (network.Unworkable(rail, Network.Label(rail), nameof(Rail.Clamps)) is { } hidden)
            {
                yield return Subject.Of(Description, rail, hidden.Place).ToUndecided([hidden]);
            }

            var clamps = Network.Items(rail.Clamps);
            for (var i = 0; i < clamps.Length; i++)
            {
                if (clamps[i] is { } clamp)
                {
                    yield return Judge(network, rail, clamp, i);
                }
            }
        }
    }

    private Check Judge(Network network, Rail rail, TransientSuppressor clamp, int index)
    {
        var label = Network.Label(clamp, rail, index);
        var voltage = network.VoltagesOf(rail).High;
        var margins = network.PolicyAt(rail);
        var fraction = margins.Policy.StandOffFraction;
        var missing = new List<MissingDatum>(voltage.Missing);
        var working = new List<WorkingStep> { voltage.Step("highest steady voltage") };
        var (datum, conducts) = Conducts(network, rail, clamp, label, working, missing);
        var capacity = new Range(conducts.Low * fraction, conducts.High * fraction);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.StandOffFraction)) is { } unknown)
        {
            capacity = new Range(0, double.PositiveInfinity);
            missing.Add(new MissingDatum(unknown, margins.Policy.Name));
        }
        else if (fraction != 1)
        {
            working.Add(new WorkingStep(
                "share that may be used", "", "", new Figure(fraction, ""), Network.PolicySource(margins.Policy, nameof(DesignPolicy.StandOffFraction)), new DatumPlace(margins.Policy, nameof(DesignPolicy.StandOffFraction))));
        }

        var subject = Subject.Of(Description, rail, nameof(Rail.Clamps), index, clamp, label, datum);
        var weighing = Weighing.Of(new Range(voltage.Value, voltage.IsKnown ? voltage.Value : double.PositiveInfinity), capacity);
        var share = fraction == 1 ? "" : $" ({Figures.Digits(fraction)} of {Figures.Text(fraction == 0 ? 0 : weighing.Capacity / fraction, "V")})";
        var message = $"{subject.Where} conducts from {Figures.Text(weighing.Capacity, "V")}{share}{(weighing.Verdict == Verdict.Holds ? "; the steady maximum is" : ", below the steady maximum")} {Figures.Text(weighing.Demand, "V")}";
        return weighing.ToCheck(subject, "V", message, working, missing) with
        {
            Corner = "highest feed, steady, no drop; coldest air",
            Assumptions = voltage.Assumptions,
        };
    }

    /// <summary>The voltage (V) up to which the clamp does not conduct, and the datum that says so.</summary>
    private static (string Datum, Range Volts) Conducts(Network network, Rail rail, TransientSuppressor clamp, string label, List<WorkingStep> working, List<MissingDatum> missing)
    {
        if (clamp.StandOffVoltage is { } standOff)
        {
            return Stated(nameof(TransientSuppressor.StandOffVoltage), "stand-off voltage", standOff.Volts);
        }

        if (network.IsUnknown(clamp, nameof(TransientSuppressor.StandOffVoltage)))
        {
            return Absent(nameof(TransientSuppressor.StandOffVoltage));
        }

        if (clamp.BreakdownVoltageCold is { } cold)
        {
            return Stated(nameof(TransientSuppressor.BreakdownVoltageCold), "lowest breakdown voltage in the cold", cold.Volts);
        }

        if (clamp.BreakdownVoltage is not { } breakdown)
        {
            return Absent(nameof(TransientSuppressor.StandOffVoltage));
        }

        var air = network.AirAt(rail);
        var stated = Stated(nameof(TransientSuppressor.BreakdownVoltage), "lowest breakdown voltage at 25 °C", breakdown.Min.Volts);
        if (air.Ambient is { } ambient && ambient.Low >= BreakdownReference)
        {
            return stated;
        }

        // A junction breaks down earlier in the cold; how much earlier is not stated and is bounded.
        missing.Add(new MissingDatum(new DatumPlace(clamp, nameof(TransientSuppressor.BreakdownVoltageCold)), label));
        var coldest = air.Ambient?.Low ?? Network.LowestAmbient;
        return (stated.Datum, new Range(Math.Max(0, breakdown.Min.Volts * (1 - (BreakdownCoefficient * (BreakdownReference - coldest)))), breakdown.Min.Volts));

        (string Datum, Range Volts) Stated(string datum, string quantity, double volts)
        {
            working.Add(new WorkingStep(quantity, "", "", new Figure(volts, "V"), "data of the part", new DatumPlace(clamp, datum)));
            return (datum, Range.Exactly(volts));
        }

        (string Datum, Range Volts) Absent(string datum)
        {
            missing.Add(new MissingDatum(new DatumPlace(clamp, datum), label));
            return (datum, new Range(0, double.PositiveInfinity));
        }
    }
}
