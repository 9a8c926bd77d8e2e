using System.Collections.Immutable;
using UnitsNet;

namespace RailRules.Rules;

/// <summary>What a device may have to interrupt: the faults on either side of it, and the part of their current that flows once it melts.</summary>
internal static class InterruptingDuty
{
    /// <summary>A fault that a device may have to interrupt.</summary>
    /// <param name="Place">Where it lies, in words.</param>
    /// <param name="Current">Bounds of the current that it has to interrupt (A).</param>
    /// <param name="TimeConstant">Bounds of the loop's time constant (s).</param>
    /// <param name="Settled">Largest settled current (A).</param>
    /// <param name="Missing">The data that were bounded for the current.</param>
    /// <param name="SlowMissing">The data that were bounded for the time constant.</param>
    /// <param name="Assumptions">What was assumed where data are silent.</param>
    /// <param name="Working">The steps to the current.</param>
    internal sealed record Fault(
        string Place, Range Current, Range TimeConstant, double Settled, ImmutableArray<MissingDatum> Missing, ImmutableArray<MissingDatum> SlowMissing, ImmutableArray<string> Assumptions, ImmutableArray<WorkingStep> Working);

    /// <summary>Every fault of a device: just behind it, behind each inductive element up to the next device, at the end of that stretch, and just before it.</summary>
    internal static IEnumerable<Fault> Of(Network network, Network.PartPlace place)
    {
        var index = place.Place.Index ?? 0;
        var path = Network.Items(place.Feed is { } feed ? feed.Path : place.Rail.Path);
        if (place.InReturn)
        {
            yield return Make(network, place, -1, false, "a fault at the beginning of the path");
            yield return Make(network, place, -1, true, "a fault at the beginning of the path, fed from the load side");
            yield break;
        }

        yield return Make(network, place, index, false, $"a fault behind '{place.Label}'");
        var last = index;
        for (var i = index + 1; i < path.Length && path[i] is { } element && !UnprotectedStretch.IsDevice(element); i++)
        {
            last = i;
            if (element is Inductor || element.Inductance is not null)
            {
                yield return Make(network, place, i, false, $"a fault behind '{Network.Label(element, place.Rail, i)}'");
            }
        }

        if (last > index && path[last] is not Inductor && path[last].Inductance is null)
        {
            yield return Make(network, place, last, false, last == path.Length - 1 ? "a fault at the far end" : $"a fault behind '{Network.Label(path[last], place.Rail, last)}'");
        }

        yield return Make(network, place, index, true, $"a fault before '{place.Label}'");
    }

    private static Fault Make(Network network, Network.PartPlace place, int behind, bool reverse, string where)
    {
        var worst = network.LargestFault(place, behind, reverse, least: false);
        var (most, needsMelting) = Interrupted(network, place, worst);
        var bounded = !worst.Gaps.IsEmpty || !worst.SlowGaps.IsEmpty;
        var best = bounded ? network.LargestFault(place, behind, reverse, least: true) : worst;
        var fewest = best.Current is null ? 0 : Math.Min(most, Interrupted(network, place, best).Current);
        var missing = worst.Gaps;
        if (needsMelting)
        {
            fewest = Math.Min(fewest, best.Settled);
            missing = missing.Add(new MissingDatum(new DatumPlace(place.Part, nameof(Fuse.MeltingIntegral)), place.Label));
        }

        // Inductances only decide where nothing else is missing.
        if (missing.IsEmpty && fewest < most)
        {
            missing = worst.SlowGaps;
        }

        return new Fault(
            where,
            new Range(fewest, most),
            new Range(Math.Min(best.TimeConstant, worst.TimeConstant), worst.Current is null ? double.PositiveInfinity : worst.TimeConstant),
            worst.Settled,
            missing,
            worst.SlowGaps.AddRange(worst.Gaps),
            worst.Assumptions,
            [
                .. worst.Sources,
                new WorkingStep("peak of the prospective current", "", "", new Figure(worst.Peak, "A"), where),
                new WorkingStep("current to be interrupted", "largest current from the earliest melting on", "", new Figure(most, "A"), where),
            ]);
    }

    /// <summary>
    /// The largest current from the earliest melting instant on (A); none where the pulse does not melt the element and nothing follows. Without melting data the peak;
    /// for a fuse its melting I²t would then help.
    /// </summary>
    private static (double Current, bool NeedsMelting) Interrupted(Network network, Network.PartPlace place, Network.FaultCurrent fault)
    {
        if (fault.Current is not { } current)
        {
            return (double.PositiveInfinity, false);
        }

        if (place.Part is not Fuse fuse)
        {
            return (current.PeakCurrent, false);
        }

        if (fuse.MeltingIntegral is not { } melting || network.IsUnknown(fuse, nameof(Fuse.MeltingIntegral)))
        {
            return (current.PeakCurrent, true);
        }

        return current.TimeToIntegral(melting.Min.AmpereSquaredSeconds) is { } melts ? (current.Peak(melts).Current, false) : (0, false);
    }

    /// <summary>The DC interrupting ratings of a device; null: it is not judged by any.</summary>
    internal static ImmutableArray<InterruptingRating>? RatingsOf(Element part) => part switch
    {
        Fuse fuse => Dc(fuse.InterruptingRatings),
        CircuitBreaker breaker => Dc(breaker.InterruptingRatings),
        _ => null,
    };

    private static ImmutableArray<InterruptingRating> Dc(ImmutableArray<InterruptingRating> ratings) =>
        [.. Network.Items(ratings).Where(rating => rating is { Kind: CurrentKind.Dc, Current: not null })];

    internal static bool IsAtLeast(double? stated, double needed) => stated is not { } value || value >= needed * (1 - Weighing.Tolerance);
}
