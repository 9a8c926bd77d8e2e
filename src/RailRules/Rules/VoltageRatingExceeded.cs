using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0101: voltage rating below the highest voltage of the rail, transients included.</summary>
public sealed class VoltageRatingExceeded : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0101",
        "Voltage rating below the highest voltage of the rail",
        RuleSeverity.Error,
        "A device in the path, or a part across the rail, can meet a voltage above its rating: the highest voltage of any feed with its transients, and for electronic switches their own opening surge.")
    {
        Basis = "DC rating not less than the highest voltage of the circuit: MIL-PRF-23419/9D, fuse selection, step 1; opening surge: circuit theory",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail, nameof(Rail.Loads), nameof(Rail.Capacitors)))
            {
                yield return hidden;
            }

            var voltages = network.VoltagesOf(rail);
            foreach (var place in network.Parts(rail))
            {
                if (RatingOf(place) is { } rating)
                {
                    var subject = Subject.Of(Description, place, rating.Datum);
                    var surge = place.Part is ElectronicFuse { AvalancheEnergy: not null } or Switch { AvalancheEnergy: not null } ? null : SwitchOpening.Of(network, place);
                    yield return Judge(network, subject, rating.Volts, voltages.Peak, surge, network.PolicyAt(rail, place.Part.Policy, place.Part), isDevice: true, place.Label);
                }
            }

            foreach (var check in AcrossRail(network, rail, voltages))
            {
                yield return check;
            }
        }
    }

    private IEnumerable<Check> AcrossRail(Network network, Rail rail, Network.RailVoltages voltages)
    {
        // Behind a clamp, or with a withstand of its own, a part is judged here by the steady voltage and by RAIL0103 for the rest.
        var clamped = Network.Items(rail.Clamps).Any(clamp => clamp is not null);
        var clampHidden = network.Unworkable(rail, Network.Label(rail), nameof(Rail.Clamps));
        var margins = network.PolicyAt(rail);
        var capacitors = Network.Items(rail.Capacitors);
        for (var i = 0; i < capacitors.Length; i++)
        {
            if (capacitors[i] is { } capacitor)
            {
                var label = Network.Label(capacitor, rail, i);
                yield return Across(nameof(Rail.Capacitors), i, capacitor, label, nameof(Capacitor.VoltageRating), capacitor.VoltageRating?.Volts, capacitor.SurgeWithstand is not null);
            }
        }

        var loads = Network.Items(rail.Loads);
        for (var i = 0; i < loads.Length; i++)
        {
            if (loads[i] is { } load)
            {
                yield return Across(nameof(Rail.Loads), i, load, Network.Label(load, rail, i), nameof(Load.MaxVoltage), load.MaxVoltage?.Volts, load.SurgeWithstand is not null);
            }
        }

        foreach (var converter in network.ConvertersOn(rail))
        {
            var place = new DatumPlace(converter, nameof(Converter.Input));
            var subject = Subject.Of(Description, rail, place, converter, new DatumPlace(converter, nameof(Converter.InputMaxVoltage)));
            yield return Judged(subject, converter.InputMaxVoltage?.Volts, false, Network.Label(converter));
        }

        Check Across(string collection, int index, object part, string label, string datum, double? volts, bool withstands) =>
            Judged(Subject.Of(Description, rail, collection, index, part, label, datum), volts, withstands, label);

        Check Judged(Subject subject, double? volts, bool withstands, string label)
        {
            var demand = clamped || withstands ? voltages.High : voltages.Peak;
            if (clampHidden is { } hidden && !withstands)
            {
                // The clamps are unknown: the demand lies between the steady voltage and the peak.
                demand = voltages.High with { Missing = voltages.High.Value >= voltages.Peak.Value && voltages.Peak.IsKnown ? voltages.High.Missing : [hidden] };
                return Judge(network, subject, volts, demand, null, margins, isDevice: false, label, most: voltages.Peak.IsKnown ? voltages.Peak.Value : null);
            }

            return Judge(network, subject, volts, demand, null, margins, isDevice: false, label);
        }
    }

    private static Check Judge(
        Network network, Subject subject, double? rated, Network.Voltage voltage, SwitchOpening? surge, Network.Margins margins, bool isDevice, string label, double? most = null)
    {
        var demand = new Range(voltage.Value, voltage.IsKnown ? voltage.Value : most ?? double.PositiveInfinity);
        var missing = new List<MissingDatum>(voltage.Missing);
        var working = new List<WorkingStep> { voltage.Step(voltage.Transient ? "highest voltage, transients included" : "highest steady voltage") };
        var kind = voltage.Transient ? "transient" : "steady";
        if (surge is not null)
        {
            working.AddRange(surge.Working);
            missing.AddRange(surge.Missing);
            if (surge.Voltage.Low > demand.Low)
            {
                kind = "transient, its own opening surge";
            }

            demand = new Range(Math.Max(demand.Low, surge.Voltage.Low), Math.Max(demand.High, surge.Voltage.High));
        }

        var fraction = margins.Policy.VoltageFraction;
        var capacity = rated is { } volts ? Range.Exactly(volts * fraction) : new Range(0, double.PositiveInfinity);
        if (rated is { } shown)
        {
            working.Add(new WorkingStep("voltage rating", "", "", new Figure(shown, "V"), "data of the part", subject.Places[subject.Places.Length - 1]));
            if (fraction != 1)
            {
                working.Add(new WorkingStep("share that may be used", "", "", new Figure(fraction, ""), Network.PolicySource(margins.Policy, nameof(DesignPolicy.VoltageFraction)), new DatumPlace(margins.Policy, nameof(DesignPolicy.VoltageFraction))));
            }
        }
        else
        {
            missing.Add(new MissingDatum(subject.Places[subject.Places.Length - 1], label));
        }

        if (network.UnknownMargin(margins, nameof(DesignPolicy.VoltageFraction)) is { } unknown)
        {
            capacity = new Range(0, double.PositiveInfinity);
            missing.Add(new MissingDatum(unknown, margins.Policy.Name));
        }

        var weighing = Weighing.Of(demand, capacity);
        var share = fraction == 1 ? "" : $", {Figures.Digits(fraction)} of its rating";
        var message = $"{subject.Where} can meet {Figures.Text(weighing.Demand, "V")} ({kind}); it is rated {Figures.Text(weighing.Capacity, "V")} DC{share}";
        return weighing.ToCheck(subject, "V", message, working, missing) with
        {
            Corner = isDevice ? "highest feed, transients included, no drop" : "highest feed, no drop",
            Assumptions = voltage.Assumptions,
        };
    }

    /// <summary>The DC voltage rating of a part in the path, that of its kind before the general one; null: the part is not judged by one.</summary>
    private static (double? Volts, string Datum)? RatingOf(Network.PartPlace place) => (place.Part switch
    {
        Fuse fuse => Own(fuse.DcVoltageRating, nameof(Fuse.DcVoltageRating)),
        CircuitBreaker breaker => Own(breaker.DcVoltageRating, nameof(CircuitBreaker.DcVoltageRating)),
        Switch contact => Own(contact.DcVoltageRating, nameof(Switch.DcVoltageRating)),
        ElectronicFuse electronic => Own(electronic.MaxVoltage, nameof(ElectronicFuse.MaxVoltage)),
        ResettableFuse resettable => Own(resettable.MaxVoltage, nameof(ResettableFuse.MaxVoltage)),
        BlockingDiode diode when diode.ReverseVoltage is not null || place.Feed is not null => Own(diode.ReverseVoltage, nameof(BlockingDiode.ReverseVoltage)),
        { VoltageRating: { } stated } => (stated.Volts, nameof(Element.VoltageRating)),
        _ => ((double? Volts, string Datum)?)null,
    }) is { } found
        ? found.Volts is null && place.Part.VoltageRating is { } general ? (general.Volts, nameof(Element.VoltageRating)) : found
        : null;

    private static (double? Volts, string Datum)? Own(UnitsNet.ElectricPotential? volts, string datum) => (volts?.Volts, datum);
}
