using UnitsNet;

namespace RailRules.Rules;

/// <summary>RAIL0203: surroundings outside the device's temperature range.</summary>
public sealed class OutsideTemperatureRange : Rule
{
    private const double UsualLow = -5;
    private const double UsualHigh = 55;

    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0203",
        "Surroundings outside the device's temperature range",
        RuleSeverity.Error,
        "The air at a device can be colder or hotter than the device is stated to work in.")
    {
        Basis = "The part's data; -5 to 55 °C without a statement: common practice, no source",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail, nameof(Rail.Clamps), nameof(Rail.Capacitors)))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (RangeOf(place.Part) is { } range
                    && Judge(network, Subject.Of(Description, place, nameof(Fuse.OperatingTemperature)), place.Part, place.Label, range.Stated, network.AirAt(rail, place.Part.Surroundings, place.Part)) is { } check)
                {
                    yield return check;
                }
            }

            foreach (var check in AcrossRail(network, rail))
            {
                yield return check;
            }
        }
    }

    private IEnumerable<Check> AcrossRail(Network network, Rail rail)
    {
        var air = network.AirAt(rail);
        var clamps = Network.Items(rail.Clamps);
        for (var i = 0; i < clamps.Length; i++)
        {
            if (clamps[i] is { } clamp && Across(nameof(Rail.Clamps), i, clamp, Network.Label(clamp, rail, i), clamp.OperatingTemperature) is { } check)
            {
                yield return check;
            }
        }

        var capacitors = Network.Items(rail.Capacitors);
        for (var i = 0; i < capacitors.Length; i++)
        {
            if (capacitors[i] is { } capacitor && Across(nameof(Rail.Capacitors), i, capacitor, Network.Label(capacitor, rail, i), capacitor.OperatingTemperature) is { } check)
            {
                yield return check;
            }
        }

        Check? Across(string collection, int index, object part, string label, Band<Temperature>? range) =>
            Judge(network, Subject.Of(Description, rail, collection, index, part, label, nameof(Fuse.OperatingTemperature)), part, label, range, air);
    }

    private static Check? Judge(Network network, Subject subject, object part, string label, Band<Temperature>? stated, Network.Air air)
    {
        var range = new MissingDatum(new DatumPlace(part, nameof(Fuse.OperatingTemperature)), label);
        var unknown = network.IsUnknown(part, nameof(Fuse.OperatingTemperature));
        var hot = air.Hottest;
        var missingAir = air.Missing is { } place ? new MissingDatum(place, place.Owner is Rail rail ? Network.Label(rail) : label) : null;
        if (stated is not { } works)
        {
            if (unknown)
            {
                return subject.ToUndecided([range]);
            }

            return air.Missing is not null ? subject.ToUndecided([missingAir!])
                : air.Ambient!.Value.Low >= UsualLow && hot.High <= UsualHigh ? null
                : subject.ToUndecided([range]);
        }

        var (min, max) = (works.Min.DegreesCelsius, works.Max.DegreesCelsius);

        // Between bounds where the air is unknown: the coldest lies between -40 °C and the hottest that is possible.
        var cold = air.Ambient is { } ambient ? Range.Exactly(ambient.Low) : new Range(Network.LowestAmbient, Network.HighestAmbient);
        var holds = cold.Low >= min - Slack(min) && hot.High <= max + Slack(max);
        var fails = cold.High < min - Slack(min) || hot.Low > max + Slack(max);
        if (!holds && !fails && air.Missing is not null)
        {
            return subject.ToUndecided([missingAir!]);
        }

        var tooCold = air.Ambient is { } known && known.Low < min - Slack(min);
        var nearCold = tooCold || (holds && cold.Low - min < max - hot.High);
        var demand = new Figure(nearCold ? cold.Low : hot.High, "°C");
        var capacity = new Figure(nearCold ? min : max, "°C");
        var check = subject.ToStructural(
            holds,
            $"{subject.Where} meets {demand.Text}; it works from {Figures.Text(min, "°C")} to {Figures.Text(max, "°C")}",
            new WorkingStep("coldest air", "", "", new Figure(cold.Low, "°C"), air.Missing is null ? "surroundings" : "unstated: -40 to 85 °C (common practice)", air.AmbientPlace),
            new WorkingStep("hottest air", "", "", new Figure(hot.High, "°C"), air.Missing is null ? "surroundings, heat of neighbours included" : "unstated: -40 to 85 °C (common practice)", air.AmbientPlace),
            new WorkingStep("to spare", "", "", new Figure(Math.Min(cold.Low - min, max - hot.High), "K"), "the smaller of both ends"));
        return check with { Demand = demand, Capacity = capacity, Corner = nearCold ? "coldest air" : "hottest air" };
    }

    private static double Slack(double limit) => Weighing.Tolerance * Math.Max(1, Math.Abs(limit));

    /// <summary>The range of a part that has such a datum.</summary>
    private static (bool Has, Band<Temperature>? Stated)? RangeOf(Element part) => part switch
    {
        Fuse fuse => (true, fuse.OperatingTemperature),
        CircuitBreaker breaker => (true, breaker.OperatingTemperature),
        ResettableFuse resettable => (true, resettable.OperatingTemperature),
        ElectronicFuse electronic => (true, electronic.OperatingTemperature),
        Switch contact => (true, contact.OperatingTemperature),
        BlockingDiode diode => (true, diode.OperatingTemperature),
        FuseHolder holder => (true, holder.OperatingTemperature),
        Connector connector => (true, connector.OperatingTemperature),
        SenseResistor sense => (true, sense.OperatingTemperature),
        _ => null,
    };
}
