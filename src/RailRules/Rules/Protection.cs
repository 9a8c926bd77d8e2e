using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace RailRules.Rules;

/// <summary>What a device protects: the elements from it to the next device, through rails without one.</summary>
internal static class Protection
{
    private static readonly ConditionalWeakTable<Network, Dictionary<DatumPlace, ImmutableArray<FarEnd>>> Known = new();

    private static readonly ConditionalWeakTable<Network, Dictionary<(DatumPlace, Element), List<Guarding>>> Guarded = new();

    /// <summary>An end of what a device protects: where the next device stands, or the end of the last rail.</summary>
    /// <param name="Rail">The rail on which it lies.</param>
    /// <param name="Supplier">The feed of that rail in which it lies; −1: the rail's own path.</param>
    /// <param name="Behind">The index of the last element before it; −1: the beginning of the path.</param>
    /// <param name="Place">Where it lies, in words.</param>
    /// <param name="Elements">The elements between, those of the return included; before the first device of a path also those ahead of it.</param>
    internal sealed record FarEnd(Rail Rail, int Supplier, int Behind, string Place, ImmutableArray<Network.PartPlace> Elements);

    /// <summary>A device and the end of its protection on whose way an element lies.</summary>
    internal readonly record struct Guarding(Network.PartPlace Device, FarEnd End);

    /// <summary>The devices that are judged by what they protect: in live conductors.</summary>
    internal static IEnumerable<Network.PartPlace> Devices(Network network, Rail rail) =>
        network.Parts(rail).Where(place => !place.InReturn && place.Part is Fuse or CircuitBreaker or ElectronicFuse or ResettableFuse);

    /// <summary>The devices that are the nearest above an element, with the ends of their protection.</summary>
    internal static List<Guarding> GuardsOf(Network network, Network.PartPlace element)
    {
        var all = Guarded.GetValue(network, one =>
        {
            var result = new Dictionary<(DatumPlace, Element), List<Guarding>>();
            foreach (var device in one.Rails.SelectMany(rail => Devices(one, rail)))
            {
                foreach (var end in FarEnds(one, device))
                {
                    foreach (var guarded in end.Elements)
                    {
                        if (!result.TryGetValue((guarded.Place, guarded.Part), out var list))
                        {
                            result.Add((guarded.Place, guarded.Part), list = []);
                        }

                        list.Add(new Guarding(device, end));
                    }
                }
            }

            return result;
        });
        return all.TryGetValue((element.Place, element.Part), out var found) ? found : [];
    }

    /// <summary>The far ends of what a device in a live conductor protects.</summary>
    internal static ImmutableArray<FarEnd> FarEnds(Network network, Network.PartPlace place)
    {
        var known = Known.GetOrCreateValue(network);
        if (!known.TryGetValue(place.Place, out var ends))
        {
            known.Add(place.Place, ends = [.. Find(network, place)]);
        }

        return ends;
    }

    private static List<FarEnd> Find(Network network, Network.PartPlace place)
    {
        var result = new List<FarEnd>();
        var seen = new HashSet<(Rail, int)>();
        var pending = new Stack<(Rail Rail, int Supplier, int First, ImmutableArray<Network.PartPlace> Elements)>();
        var own = place.Place.Index ?? 0;
        var path = network.PathOf(place.Rail, place.Supplier);
        ImmutableArray<Network.PartPlace> ahead = [];
        if (!path.Take(own).Any(one => one is not null && UnprotectedStretch.IsDevice(one)))
        {
            ahead = [.. Enumerable.Range(0, own).Where(i => path[i] is not null).Select(i => network.PlaceOf(place.Rail, place.Supplier, i))];
        }

        pending.Push((place.Rail, place.Supplier, own + 1, ahead.AddRange(network.ReturnOf(place.Rail, place.Supplier))));
        while (pending.Count > 0)
        {
            var (rail, supplier, first, elements) = pending.Pop();
            path = network.PathOf(rail, supplier);
            var i = first;
            for (; i < path.Length && !(path[i] is { } next && UnprotectedStretch.IsDevice(next)); i++)
            {
                if (path[i] is not null)
                {
                    elements = elements.Add(network.PlaceOf(rail, supplier, i));
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
                    pending.Push((rail, -1, 0, elements.AddRange(network.ReturnOf(rail, -1))));
                }

                continue;
            }

            result.Add(new(rail, -1, path.Length - 1, $"a fault at the end of rail '{Network.Label(rail)}'", elements));
            foreach (var child in network.Children(rail))
            {
                var suppliers = network.Suppliers(child);
                for (var k = 0; k < suppliers.Length; k++)
                {
                    var entry = suppliers[k].Feed is null ? -1 : k;
                    var start = network.PathOf(child, entry);

                    // A rail that begins with a device adds nothing to what lies before it.
                    if (ReferenceEquals(suppliers[k].From, rail) && !(start.Length > 0 && start[0] is { } device && UnprotectedStretch.IsDevice(device)) && seen.Add((child, entry)))
                    {
                        pending.Push((child, entry, 0, elements.AddRange(network.ReturnOf(child, entry))));
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
        var own = network.OpeningOf(place);
        var isUnstated = false;
        var missing = new List<MissingDatum>();
        var here = Lasting(Guard.Above(network, place), place.Rail);
        here = new Range(Math.Min(here.Low, sure.Low), Math.Min(here.High, sure.High));
        var last = Lasting(Guard.Above(network, end), end.Rail);
        bool? holds = true;
        if (policy.PersistentFaultPower is { } power)
        {
            var high = network.VoltagesOf(end.Rail).High;
            var allowed = high is { IsKnown: true, Value: > 0 } ? (double)power.Watts / high.Value : 0;
            holds = Both(holds, last.High <= allowed * (1 + Weighing.Tolerance) ? true : last.Low > allowed ? false : null);
        }

        foreach (var element in end.Elements)
        {
            if (network.EnduranceOf(element) is not { } bears)
            {
                continue;
            }

            // What stands in the same series as the device carries its current; where feeds join, it is the sum of theirs.
            var current = ReferenceEquals(element.Rail, place.Rail) && element.Supplier == place.Supplier ? here : Lasting(Guard.Above(network, element), element.Rail);
            // Nor can more last than a fault right behind it settles to, where that is known.
            var one = Bears(bears.ForEver, current);
            one = one != true && Weighing.Covers(bears.ForEver.Low, network.SettledAt(element).Current.High) ? true : one;
            if (one is null)
            {
                missing.AddRange(bears.ForEverMissing);
                missing.AddRange(current.IsExact ? [] : sureMissing);
            }

            holds = Both(holds, one);
            if (holds == false)
            {
                break;
            }
        }

        var opens = Guard.Above(network, end).Lasting(device => ReferenceEquals(device, own) ? sure : device.Sure, _ => double.PositiveInfinity).High;
        var by = opens > last.High ? (isUnstated ? "the limit of the sources, taken to be made by hardware" : "the limit of the sources")
            : opens < sure.High ? "a smaller device above"
            : opens > sure.High ? "the devices of the feeds together"
            : $"'{place.Label}'";
        by += end.Elements.IsEmpty ? "; no conductor or contact is stated between device and fault" : "";
        return (holds, holds is null ? Subject.Distinct(missing) : [], new WorkingStep("current that can last", "", "", new Figure(last.High, "A"), "bounded by " + by));

        Range Lasting(Guard above, Rail rail)
        {
            var one = above.Lasting(device => ReferenceEquals(device, own) ? sure : device.Sure, source => LimitOf(source));
            var (limit, unstated) = network.SustainedLimit(rail, policy, latches);
            isUnstated |= unstated;
            return new Range(Math.Min(one.Low, limit), Math.Min(one.High, limit));
        }

        double LimitOf(Source source) => network.SustainedLimitOf(source, policy, latches).Limit;

        static bool? Bears(Range bears, Range current) => Weighing.Covers(bears.Low, current.High) ? true : Weighing.Covers(bears.High, current.Low) ? null : false;
    }

    /// <summary>Why a device need not open at an end by itself although the smallest fault there is too small, or slow: capacitors melt it, or a device above opens for certain.</summary>
    internal static string? OpenedOtherwise(Network network, Network.PartPlace place, FarEnd end, Range fault)
    {
        // The sum of C V²/(2 R) of the capacitors above, at the lowest voltage, least capacitance and hot copper.
        if (place.Part is Fuse { MeltingIntegral: { } melting } && network.StoredIntegral(place, end.Rail, end.Supplier, end.Behind) >= melting.Max.AmpereSquaredSeconds)
        {
            return $"is melted by the capacitors that discharge into {Short(end.Place)}";
        }

        return Guard.Above(network, place) is var above && above.Sure.High is var opens && !double.IsInfinity(opens) && Weighing.Covers(fault.Low, opens)
            ? $"need not open on {Short(end.Place)}: a smaller device above does"
            : null;
    }

    /// <summary>
    /// Whether a wire or busbar counts as protected by the fuses next above it although their let-through is not drawn: full-range fuses that protect it against overload, rated
    /// current not above I_z and sure-opening current not above the overload factor × I_z. IEC 60364-4-43, 435.1 (from memory); of breakers it need not be so.
    /// </summary>
    internal static bool IsProtectedByRating(Network network, Network.PartPlace element, List<Guarding> guards, Network.Endurance endurance)
    {
        var factor = network.PolicyAt(element.Rail, element.Part.Policy, element.Part).Policy.OverloadFactor;
        return element.Part is Wire or Busbar && guards.All(guard =>
            guard.Device.Part is Fuse { RatedCurrent: { } rated, BreakingRange: not BreakingRange.Partial, MinimumBreakingCurrent: null }
            && network.OpeningOf(guard.Device) is { IsDrawn: false } opening
            && Weighing.Covers(endurance.ForEver.Low, rated.Amperes * opening.Branches) && Weighing.Covers(factor * endurance.ForEver.Low, opening.Sure.High));
    }

    /// <summary>What is said where that counts.</summary>
    internal const string ByRating = "a full-range fuse that protects a conductor against overload is taken to protect it against short circuit (IEC 60364-4-43, 435.1)";

    /// <summary>A far end as the object of "on".</summary>
    internal static string Short(string place) => place.StartsWith("the ", StringComparison.Ordinal) ? "a fault at " + place : place;

    /// <summary>The worse of two checks of one subject.</summary>
    internal static Check Worse(Check? before, Check now) =>
        before is null || Rank(now) > Rank(before) || (Rank(now) == Rank(before) && (now.Margin ?? double.PositiveInfinity) < (before.Margin ?? double.PositiveInfinity)) ? now : before;

    private static int Rank(Check check) => check.Verdict switch { Verdict.Fails => 2, Verdict.Undecided => 1, _ => 0 };

    /// <summary>The smallest fault that an element meets behind the devices nearest above it.</summary>
    internal static Network.SmallFault SmallestFault(Network network, List<Guarding> guards)
    {
        Network.SmallFault? least = null;
        foreach (var (device, end) in guards)
        {
            var one = network.SmallestFault(end.Rail, end.Supplier, end.Behind, device);
            least = least is null ? one
                : (one.Current.Low < least.Current.Low ? one : least) with
                {
                    Current = new Range(Math.Min(one.Current.Low, least.Current.Low), Math.Min(one.Current.High, least.Current.High)),
                    Gaps = [.. least.Gaps.Union(one.Gaps)],
                };
        }

        return least!;
    }

    /// <summary>
    /// The largest current of an element: of a fault just behind it, its own resistance left out; in a conductor at its beginning, where its other conductor adds none
    /// either. In a return that of the devices above it.
    /// </summary>
    internal static (Range Peak, Range Settled, Network.FaultCurrent Fault) LargestFault(Network network, Network.PartPlace element, List<Guarding> guards)
    {
        var places = element.InReturn ? guards.Select(guard => guard.Device).Distinct() : [element];
        Range peak = default, settled = default;
        Network.FaultCurrent? most = null;
        foreach (var place in places)
        {
            var index = (place.Place.Index ?? 0) - (place.Part is Wire or Trace or Busbar ? 1 : 0);
            var worst = network.LargestFault(place, index, reverse: false, least: false);
            var best = worst.Gaps.IsEmpty && worst.SlowGaps.IsEmpty ? worst : network.LargestFault(place, index, reverse: false, least: true);
            peak = new Range(peak.Low + Math.Min(best.Peak, worst.Peak), peak.High + worst.Peak);
            settled = new Range(settled.Low + Math.Min(best.Settled, worst.Settled), settled.High + worst.Settled);
            most = most is null || worst.Peak > most.Peak ? worst : most;
        }

        return (peak, settled, most!);
    }

    private static bool? Both(bool? a, bool? b) => a == false || b == false ? false : a is null || b is null ? null : true;
}
