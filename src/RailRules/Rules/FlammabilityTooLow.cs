namespace RailRules.Rules;

/// <summary>RAIL0601: flammability class below policy.</summary>
public sealed class FlammabilityTooLow : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0601",
        "Flammability class below policy",
        RuleSeverity.Warning,
        "The body of a part burns more easily than the policy allows where enough power is available to light it.")
    {
        Basis = "Classes: UL 94, IEC 60695-11-10; which class from which power: policy, after IEC 62368-1, 6.3 and 6.4 (from memory)",
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
                if (Network.MakeOf(place.Part) is { } make && Judge(network, place, make) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private Check? Judge(Network network, Network.PartPlace place, Network.Make make)
    {
        var subject = Subject.Of(Description, place, nameof(Fuse.Flammability));
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        var (minimum, from) = (margins.Policy.MinimumFlammability, (double)margins.Policy.FlammabilityFrom.Watts);
        if (make.Flammability == Flammability.NonCombustible)
        {
            return null;
        }

        if (network.UnknownMargin(margins, nameof(DesignPolicy.MinimumFlammability), nameof(DesignPolicy.FlammabilityFrom)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var (power, missing) = network.AvailablePower(place);
        if (power.High < from)
        {
            return null;
        }

        if (make.Flammability is not { } stated)
        {
            return subject.ToUndecided([new MissingDatum(new DatumPlace(place.Part, nameof(Fuse.Flammability)), place.Label)]);
        }

        // Flammability is declared from the best class down.
        var holds = stated <= minimum;
        if (!holds && power.Low < from)
        {
            return subject.ToUndecided(missing.IsEmpty ? [new MissingDatum(new DatumPlace(place.Rail, nameof(Rail.From)), Network.Label(place.Rail))] : missing);
        }

        var shown = holds ? power.High : power.Low;
        var check = subject.ToStructural(
            holds,
            $"{subject.Where} is {Name(stated)}; {PolicyName(margins.Policy)} asks for {Name(minimum)} where {Figures.Text(shown, "W")} {(holds || power.IsExact ? "is" : "or more is")} available",
            new WorkingStep("power available", "V_high × persistent current", "", new Figure(shown, "W"), "sure opening currents of the devices up to here, limits of the sources, settled fault current, steady current"),
            new WorkingStep($"class of the body: {Name(stated)}", "", "", new Figure((int)stated, ""), "data of the part, place in the order 5VA, 5VB, V-0, V-1, V-2, HB", new DatumPlace(place.Part, nameof(Fuse.Flammability))),
            new WorkingStep($"class asked for: {Name(minimum)}", "", "", new Figure((int)minimum, ""), Network.PolicySource(margins.Policy, nameof(DesignPolicy.MinimumFlammability)), new DatumPlace(margins.Policy, nameof(DesignPolicy.MinimumFlammability))));
        return check with { Corner = "highest voltage, largest current that nothing opens", UsesOperatingPoint = true };
    }

    private static string PolicyName(DesignPolicy policy) => ReferenceEquals(policy, DesignPolicy.Default) ? "the default policy" : $"policy '{policy.Name}'";

    private static string Name(Flammability flammability) => flammability switch
    {
        Flammability.FiveVA => "5VA",
        Flammability.FiveVB => "5VB",
        Flammability.V0 => "V-0",
        Flammability.V1 => "V-1",
        Flammability.V2 => "V-2",
        Flammability.HB => "HB",
        _ => "non-combustible",
    };
}
