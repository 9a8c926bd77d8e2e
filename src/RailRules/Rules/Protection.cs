using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>What a device protects: the elements from it to the next device, through rails without one.</summary>
internal static class Protection
{
    /// <summary>An end of what a device protects: where the next device stands, or the end of the last rail.</summary>
    /// <param name="Rail">The rail on which it lies.</param>
    /// <param name="Supplier">The feed of that rail in which it lies; −1: the rail's own path.</param>
    /// <param name="Behind">The index of the last element before it; −1: the beginning of the path.</param>
    /// <param name="Place">Where it lies, in words.</param>
    /// <param name="Elements">The elements between.</param>
    internal sealed record FarEnd(Rail Rail, int Supplier, int Behind, string Place, ImmutableArray<(Rail Rail, Element Element, string Label)> Elements);

    /// <summary>The far ends of what a device in a live conductor protects.</summary>
    internal static List<FarEnd> FarEnds(Network network, Network.PartPlace place)
    {
        var result = new List<FarEnd>();
        var seen = new HashSet<(Rail, int)>();
        var pending = new Stack<(Rail Rail, int Supplier, int First, ImmutableArray<(Rail, Element, string)> Elements)>();
        pending.Push((place.Rail, place.Supplier, (place.Place.Index ?? 0) + 1, []));
        while (pending.Count > 0)
        {
            var (rail, supplier, first, elements) = pending.Pop();
            var path = Network.Items(supplier < 0 ? rail.Path : network.Suppliers(rail)[supplier].Feed?.Path ?? []);
            var i = first;
            for (; i < path.Length && !(path[i] is { } next && UnprotectedStretch.IsDevice(next)); i++)
            {
                if (path[i] is { } element)
                {
                    elements = elements.Add((rail, element, Network.Label(element, rail, i)));
                }
            }

            if (i < path.Length)
            {
                var label = Network.Label(rail);
                result.Add(new(rail, supplier, i - 1, i == 0 ? $"the beginning of rail '{label}'" : $"a fault before '{Network.Label(path[i], rail, i)}' on rail '{label}'", elements));
                continue;
            }

            if (supplier >= 0)
            {
                if (seen.Add((rail, -1)))
                {
                    pending.Push((rail, -1, 0, elements));
                }

                continue;
            }

            result.Add(new(rail, -1, path.Length - 1, $"a fault at the end of rail '{Network.Label(rail)}'", elements));
            foreach (var child in network.Children(rail))
            {
                var suppliers = network.Suppliers(child);
                for (var k = 0; k < suppliers.Length; k++)
                {
                    var feed = suppliers[k].Feed;
                    var start = Network.Items(feed is null ? child.Path : feed.Path);

                    // A rail that begins with a device adds nothing to what lies before it.
                    if (ReferenceEquals(suppliers[k].From, rail) && !(start.Length > 0 && start[0] is { } device && UnprotectedStretch.IsDevice(device)) && seen.Add((child, feed is null ? -1 : k)))
                    {
                        pending.Push((child, feed is null ? -1 : k, 0, elements));
                    }
                }
            }
        }

        return result;
    }

    /// <summary>Whether the current that can flow for long harms no element on the way to a place, and why not. Null: cannot be said; the data are named.</summary>
    /// <param name="network">The board.</param>
    /// <param name="place">The device.</param>
    /// <param name="end">The place.</param>
    /// <param name="latches">Whether every source latches off on the fault.</param>
    /// <param name="sure">What surely opens the device (A).</param>
    /// <param name="sureMissing">The data without which that is not exact.</param>
    internal static (bool? Holds, ImmutableArray<MissingDatum> Missing, WorkingStep Step) Harmless(
        Network network, Network.PartPlace place, FarEnd end, bool latches, Range sure, ImmutableArray<MissingDatum> sureMissing)
    {
        var policy = network.PolicyAt(place.Rail, place.Part.Policy, place.Part).Policy;
        var (limit, isUnstated) = network.SustainedLimit(place.Rail, policy, latches);
        var persistent = new Range(Math.Min(sure.Low, limit), Math.Min(sure.High, limit));
        var missing = new List<MissingDatum>();
        if (!persistent.IsExact)
        {
            missing.AddRange(sureMissing);
        }

        bool? holds = true;
        if (policy.PersistentFaultPower is { } power)
        {
            var high = network.VoltagesOf(end.Rail).High;
            var allowed = high is { IsKnown: true, Value: > 0 } ? (double)power.Watts / high.Value : 0;
            holds = Both(holds, persistent.High <= allowed * (1 + Weighing.Tolerance) ? true : persistent.Low > allowed ? false : null);
        }

        foreach (var (rail, element, label) in end.Elements)
        {
            if (network.BearsForEver(rail, element, label) is not { } bears)
            {
                continue;
            }

            bool? one = Weighing.Covers(bears.Range.Low, persistent.High) ? true : Weighing.Covers(bears.Range.High, persistent.Low) ? null : false;
            if (one is null)
            {
                missing.AddRange(bears.Missing);
            }

            holds = Both(holds, one);
            if (holds == false)
            {
                break;
            }
        }

        var by = limit > sure.High ? $"'{place.Label}'" : isUnstated ? "the limit of the sources, taken to be made by hardware" : "the limit of the sources";
        by += end.Elements.IsEmpty ? "; no conductor or contact is stated between device and fault" : "";
        return (holds, holds is null ? Subject.Distinct(missing) : [], new WorkingStep("current that can last", "", "", new Figure(persistent.High, "A"), "bounded by " + by));
    }

    private static bool? Both(bool? a, bool? b) => a == false || b == false ? false : a is null || b is null ? null : true;
}
