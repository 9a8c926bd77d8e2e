namespace RailRules.Rules;

/// <summary>RAIL0102: no DC rating on a DC rail.</summary>
public sealed class NoDcVoltageRating : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0102",
        "No DC voltage rating on a DC rail",
        RuleSeverity.Error,
        "A fuse or circuit breaker states what it can clear on AC but nothing on DC, where the arc meets no current zero; an AC figure is never converted.")
    {
        Basis = "AC and DC ratings are separate: UL 248-2:2019, 5.2",
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
                var check = place.Part switch
                {
                    Fuse fuse => Judge(network, place, fuse.DcVoltageRating?.Volts, fuse.AcVoltageRating?.Volts, Network.Items(fuse.InterruptingRatings)),
                    CircuitBreaker breaker => Judge(network, place, breaker.DcVoltageRating?.Volts, breaker.AcVoltageRating?.Volts, Network.Items(breaker.InterruptingRatings)),
                    _ => null,
                };
                if (check is not null)
                {
                    yield return check;
                }
            }
        }
    }

    private Check Judge(Network network, Network.PartPlace place, double? dc, double? ac, IEnumerable<InterruptingRating> ratings)
    {
        var subject = Subject.Of(Description, place, nameof(Fuse.DcVoltageRating));
        var rating = new DatumPlace(place.Part, nameof(Fuse.DcVoltageRating));
        if ((dc ?? place.Part.VoltageRating?.Volts) is { } stated)
        {
            return subject.ToStructural(true, $"{subject.Where} is rated {Figures.Text(stated, "V")} DC", new WorkingStep("DC voltage rating", "", "", new Figure(stated, "V"), "data of the part", rating));
        }

        var missing = new MissingDatum(rating, place.Label);
        if (network.IsUnknown(place.Part, nameof(Fuse.DcVoltageRating)) || network.IsUnknown(place.Part, nameof(Element.VoltageRating)))
        {
            return subject.ToUndecided([missing]);
        }

        var breaking = ratings.FirstOrDefault(one => one is { Kind: CurrentKind.Ac });
        if (ac is null && breaking is null)
        {
            return subject.ToUndecided([missing]);
        }

        var peak = network.VoltagesOf(place.Rail).Peak;
        var figure = ac is { } volts ? Figures.Text(volts, "V") : breaking!.Voltage is { } tested ? Figures.Text(tested.Volts, "V") : "ratings only";
        var clear = peak.IsKnown ? $"{Figures.Text(peak.Value, "V")} DC" : "the rail's DC voltage";
        return subject.ToStructural(
            false,
            $"{subject.Where} has no DC voltage rating (AC {figure}); nothing shows that it can clear {clear}",
            peak.Step("highest voltage, transients included"),
            new WorkingStep("AC rating", "", "", new Figure(ac ?? breaking?.Voltage?.Volts ?? double.NaN, "V"), "never converted to DC", new DatumPlace(place.Part, ac is null ? nameof(Fuse.InterruptingRatings) : nameof(Fuse.AcVoltageRating))));
    }
}
