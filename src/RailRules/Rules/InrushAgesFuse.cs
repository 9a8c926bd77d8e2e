namespace RailRules.Rules;

/// <summary>RAIL0401: inrush ages the fuse.</summary>
public sealed class InrushAgesFuse : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0401",
        "Inrush ages the fuse",
        RuleSeverity.Error,
        "Each start sends a current pulse through a fuse that comes too near its melting I²t for the number of starts in its life; one day it opens at switch-on although nothing is wrong.")
    {
        Basis = "Charge of a capacitor: circuit theory; share of the melting I²t for a number of pulses: common practice of the fuse trade, no source",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail, nameof(Rail.Loads), nameof(Rail.Capacitors)).Where(_ => network.Parts(rail).Any(place => place.Part is Fuse)))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (place.Part is Fuse fuse && network.InrushOf(place) is { } inrush)
                {
                    yield return Judge(Description, network, place, fuse, inrush);
                }
            }
        }
    }

    /// <summary>Weighs an inrush against what a fuse bears.</summary>
    internal static Check Judge(RuleDescription rule, Network network, Network.PartPlace place, Fuse fuse, Network.Inrush inrush)
    {
        var margins = network.PolicyAt(place.Rail, fuse.Policy, fuse);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.PulseShare), nameof(DesignPolicy.AdiabaticLimit), nameof(DesignPolicy.StartsCoincide)) is { } unknown)
        {
            return Subject.Of(rule, place, nameof(Fuse.MeltingIntegral)).ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var limit = PulseLimit.Of(network, place, fuse, margins.Policy);
        var bears = limit.Within(inrush.Most, inrush.Least);
        var subject = Subject.Of(rule, place, bears.Datum);
        var weighing = Weighing.Of(bears.Demand, bears.Capacity);
        var (demand, capacity) = (Figures.Text(weighing.Demand, bears.Unit), Figures.Text(weighing.Capacity, bears.Unit));
        var starts = limit.StartsText(weighing.Verdict == Verdict.Holds);
        var share = Figures.Digits(weighing.Verdict == Verdict.Holds ? limit.Share.Low : limit.Share.High);
        var message = bears.Unit == "A²s"
            ? $"each start sends {demand} through '{place.Label}' on rail '{Network.Label(place.Rail)}'; {starts} allow {share} of {Figures.Text(limit.Melting ?? 0, "A²s")}, {capacity}"
            : $"each start sends {demand} for {Figures.Text((weighing.Verdict == Verdict.Holds ? inrush.Most : inrush.Least).EqualTime, "s")} through '{place.Label}' on rail '{Network.Label(place.Rail)}'; its melting edge allows {capacity} for {starts}";
        return weighing.ToCheck(subject, bears.Unit, message, [.. inrush.Working, new WorkingStep("inrush, integral", "∫ i² dt", "", new Figure(inrush.Most.Integral, "A²s"), "from closing until charged"), .. limit.Working], [.. inrush.Gaps, .. limit.Missing, .. bears.Missing]) with
        {
            Corner = "highest voltage, largest capacitance, everything cold and new",
            Assumptions = [.. inrush.Assumptions, .. limit.Assumptions],
            UsesOperatingPoint = true,
        };
    }
}
