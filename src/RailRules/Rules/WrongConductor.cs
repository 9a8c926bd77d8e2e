using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0105: a device in the wrong conductor, or in the return only.</summary>
public sealed class WrongConductor : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0105",
        "A device in the wrong conductor",
        RuleSeverity.Error,
        "A device opens the earthed pole, where a fault from the live conductor to chassis bypasses it, or only one pole of a source that is not earthed and above the policy's voltage.")
    {
        Basis = "A device in each conductor that is not earthed: 46 CFR 111.50-3(a), 30 CFR 18.51(b); both poles of systems that float: common practice, no source",
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

            if (network.IsCyclic(rail))
            {
                continue;
            }

            var suppliers = network.Suppliers(rail);
            foreach (var stretch in network.Parts(rail).Where(place => UnprotectedStretch.IsDevice(place.Part) && place.Part is not ParallelGroup).GroupBy(place => place.Supplier))
            {
                var from = stretch.Key < 0 ? suppliers.SelectMany(one => network.EarthingsAbove(one.From)) : network.EarthingsAbove(suppliers[stretch.Key].From);
                foreach (var check in Judge(network, rail, [.. stretch], [.. from.Distinct()]))
                {
                    yield return check;
                }
            }
        }
    }

    private IEnumerable<Check> Judge(Network network, Rail rail, ImmutableArray<Network.PartPlace> devices, ImmutableArray<(Earthing? Earthing, Source Source)> sources)
    {
        var live = devices.Where(place => !place.InReturn).ToList();
        var back = devices.Where(place => place.InReturn).ToList();
        var liveWord = rail.Polarity == Polarity.Positive ? "positive" : "negative";
        var backWord = rail.Polarity == Polarity.Positive ? "negative" : "positive";
        var unstated = sources.Where(one => one.Earthing is null).Select(one => new MissingDatum(new DatumPlace(one.Source, nameof(Supply.Earthing)), Network.Label(one.Source))).ToList();
        if (network.IsUnknown(rail, nameof(Rail.Polarity)))
        {
            foreach (var place in devices)
            {
                yield return Subject.Of(Description, place, nameof(Element.Designator)).ToUndecided([new MissingDatum(new DatumPlace(rail, nameof(Rail.Polarity)), Network.Label(rail))]);
            }

            yield break;
        }

        var earthed = sources.Select(one => one.Earthing).OfType<Earthing>().Distinct().ToList();
        var earthedPoles = new[] { (Pole: live, Word: liveWord, Is: Earthed(liveWord)), (Pole: back, Word: backWord, Is: Earthed(backWord)) };
        foreach (var (pole, word, earthing) in earthedPoles)
        {
            if (!earthed.Contains(earthing))
            {
                continue;
            }

            var source = sources.First(one => one.Earthing == earthing).Source;
            foreach (var place in pole)
            {
                var other = ReferenceEquals(pole, live) ? back : live;
                var subject = Subject.Of(Description, place, nameof(Element.Designator), new DatumPlace(source, nameof(Supply.Earthing)));
                var together = place.Part is CircuitBreaker && other.Any(one => IsOneBreaker(one.Part, place.Part));
                yield return subject.ToStructural(together, together
                    ? $"{subject.Where} opens the earthed {word} conductor together with the live one"
                    : $"{subject.Where} opens the earthed {word} conductor; a fault from the live conductor to chassis bypasses it") with
                {
                    Corner = $"'{Network.Label(source)}' has its {word} pole earthed",
                };
            }
        }

        if (unstated.Count > 0)
        {
            // Without a word on earthing only a device in the return is doubtful; the live conductor is where devices belong.
            foreach (var place in back.Where(place => earthed.All(one => one != Earthed(backWord))))
            {
                yield return Subject.Of(Description, place, nameof(Element.Designator)).ToUndecided(unstated);
            }

            yield break;
        }

        foreach (var check in Floating(network, rail, live, back, sources, liveWord, backWord))
        {
            yield return check;
        }

        if (live.Count > 0 && earthed.Count > 0 && earthed.All(one => one == Earthed(backWord)))
        {
            var subject = Subject.Of(Description, live[0], nameof(Element.Designator));
            yield return subject.ToStructural(true, $"{subject.Where} stands in the live {liveWord} conductor; the {backWord} one is earthed");
        }
    }

    /// <summary>Neither pole is earthed, or the middle: above the policy's voltage each pole needs a device.</summary>
    private IEnumerable<Check> Floating(
        Network network, Rail rail, List<Network.PartPlace> live, List<Network.PartPlace> back, ImmutableArray<(Earthing? Earthing, Source Source)> sources, string liveWord, string backWord)
    {
        if (sources.FirstOrDefault(one => one.Earthing is Earthing.None or Earthing.Middle) is not { Source: { } floating } source)
        {
            yield break;
        }

        var present = live.Count > 0 ? live : back;
        var place = present[0];
        var margins = network.PolicyAt(rail, place.Part.Policy, place.Part);
        var subject = Subject.Of(Description, place, nameof(Element.Designator), new DatumPlace(floating, nameof(Supply.Earthing)));
        if (network.UnknownMargin(margins, nameof(DesignPolicy.ProtectBothPolesAbove)) is { } unknown)
        {
            yield return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
            yield break;
        }

        var limit = margins.Policy.ProtectBothPolesAbove.Volts;
        var high = network.VoltagesOf(rail).High;
        var both = live.Count > 0 && back.Count > 0;
        if (!both && !high.IsKnown && high.Value <= limit)
        {
            yield return subject.ToUndecided(high.Missing);
        }
        else if (high.Value > limit * (1 + Weighing.Tolerance))
        {
            var other = live.Count > 0 ? backWord : liveWord;
            var word = source.Earthing == Earthing.Middle ? "the middle of which is earthed" : "neither pole of which is earthed";
            yield return subject.ToStructural(
                both,
                both
                    ? $"{subject.Where}: both poles of '{Network.Label(floating)}' have a device"
                    : $"{subject.Where} opens one pole of '{Network.Label(floating)}', {word}; at {Figures.Text(high.Value, "V")} the {other} one needs a device too",
                high.Step("highest steady voltage"),
                new WorkingStep("both poles above", "", "", new Figure(limit, "V"), Network.PolicySource(margins.Policy, nameof(DesignPolicy.ProtectBothPolesAbove)), new DatumPlace(margins.Policy, nameof(DesignPolicy.ProtectBothPolesAbove)))) with
            {
                Corner = "highest steady voltage",
            };
        }
    }

    private static Earthing Earthed(string pole) => pole == "positive" ? Earthing.Positive : Earthing.Negative;

    /// <summary>One breaker with a pole in each conductor is written in both, as the same part.</summary>
    private static bool IsOneBreaker(Element one, Element other) => one is CircuitBreaker && one.Equals(other);
}
