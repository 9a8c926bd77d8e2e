using RailRules.Rules;

namespace RailRules.Choosing;

/// <content>Bounds that prove that a part fails before the rules are applied.</content>
internal sealed partial class PartSearch
{
    /// <summary>
    /// Two bounds, for fuses and circuit breakers in a rail's own path or a feed's: the rail's highest voltage, which no part in the path changes, against the voltage rating (RAIL0101);
    /// and the least current that any of the parts can draw against what this one may carry (RAIL0201). That least current is the network's own lower bound where the resistance in the
    /// place is anything from 0 to the largest among the parts.
    /// </summary>
    private void Prune()
    {
        if (places.Any(place => place.IsClamp || !place.Branches.IsDefaultOrEmpty))
        {
            return;
        }

        var prunable = trials.Where(trial => trial.Part is Fuse or CircuitBreaker).Select(trial => (Trial: trial, Most: MostResistance((Element)trial.Part))).Where(one => one.Most is not null).ToList();
        if (prunable.Count == 0)
        {
            return;
        }

        // A fuse without resistance data is bounded by half a volt at its rated current; this one's bound is the largest resistance of all.
        var most = Math.Max(prunable.Max(one => one.Most!.Value), 1e-9);
        var probe = new Fuse { PartNumber = "probe", RatedCurrent = UnitsNet.ElectricCurrent.FromAmperes(Network.CompactDrop / (most * 1.000001)) };
        var (board, network) = BoardWith(probe);
        var spots = own.SelectMany(rail => network.Parts((Rail)board.Now(rail))).Where(spot => ReferenceEquals(board.Original(spot.Part), probe)).ToList();
        foreach (var (trial, _) in prunable)
        {
            foreach (var spot in spots)
            {
                // What the place states of surroundings and margins is the probe's now.
                var part = (Element)board.Placed(trial.Part, spot.Part);
                var here = spot with { Part = part, Label = trial.Index.ToString(System.Globalization.CultureInfo.InvariantCulture) };
                foreach (var margin in new[] { VoltageMargin(here, network), CurrentMargin(here, network, spot) })
                {
                    if (margin is { } found)
                    {
                        trial.Bound = Math.Min(trial.Bound ?? double.PositiveInfinity, found);
                    }
                }
            }
        }
    }

    /// <summary>The margin of RAIL0101 where it fails for certain.</summary>
    private static double? VoltageMargin(Network.PartPlace place, Network network)
    {
        var rated = (place.Part switch
        {
            Fuse fuse => fuse.DcVoltageRating,
            CircuitBreaker breaker => breaker.DcVoltageRating,
            _ => null,
        } ?? place.Part.VoltageRating)?.Volts;
        var peak = network.VoltagesOf(place.Rail).Peak;
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (rated is not { } volts || network.UnknownMargin(margins, nameof(DesignPolicy.VoltageFraction)) is not null)
        {
            return null;
        }

        var weighing = Weighing.Of(new Range(peak.Value, peak.IsKnown ? peak.Value : double.PositiveInfinity), Range.Exactly(volts * margins.Policy.VoltageFraction));
        return weighing.Verdict == Verdict.Fails ? weighing.Margin : null;
    }

    /// <summary>A bound on the margin of RAIL0201 where that fails for certain.</summary>
    private static double? CurrentMargin(Network.PartPlace place, Network network, Network.PartPlace probed)
    {
        var flow = network.CurrentOf(probed);
        if (flow.Reason != Network.FlowReason.Solved || network.RatingOf(place) is not { } rating)
        {
            return null;
        }

        // A little less, so that rounding in the bound never rules out what equality would let pass.
        var weighing = Weighing.Of(new Range(flow.Low * (1 - 1e-6), double.PositiveInfinity), rating.Capacity);
        return weighing.Verdict == Verdict.Fails ? weighing.Margin : null;
    }

    private static double? MostResistance(Element part) =>
        (Network.StatedResistance(part) ?? (RatingOf(part) is > 0 and { } rated ? Network.CompactDrop / rated : null)) is { } ohms && ohms < 1e9 ? Math.Max(0, ohms) : null;
}
