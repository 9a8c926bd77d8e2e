using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace RailRules.Rules;

/// <summary>All that may interrupt the current of an element: the devices in series above it, and those of each feed where feeds join above it.</summary>
internal sealed class Guard
{
    /// <summary>How many devices in series are asked; those further up are larger.</summary>
    private const int MostDevices = 6;

    /// <summary>How many joints of feeds are followed above each other.</summary>
    private const int MostJoints = 3;

    private static readonly ConditionalWeakTable<Network, Dictionary<DatumPlace, Guard>> Known = new();

    /// <summary>Devices in series, nearest first; of parallel devices all must open.</summary>
    private readonly List<ImmutableArray<Network.DeviceOpening>> series = [];

    private readonly List<Guard> feeds = [];

    private Source? source;

    private bool unknown;

    private Guard()
    {
    }

    /// <summary>What stands above a place of a path.</summary>
    internal static Guard Above(Network network, Network.PartPlace place)
    {
        var known = Known.GetOrCreateValue(network);
        if (!known.TryGetValue(place.Place, out var guard))
        {
            known.Add(place.Place, guard = Above(network, place.Rail, place.Supplier, place.InReturn ? network.PathOf(place.Rail, place.Supplier).Length : place.Place.Index ?? 0, 0));
        }

        return guard;
    }

    /// <summary>What stands above the end of what a device protects.</summary>
    internal static Guard Above(Network network, Protection.FarEnd end) => Above(network, end.Rail, end.Supplier, end.Behind + 1, 0);

    private static Guard Above(Network network, Rail rail, int supplier, int before, int joints)
    {
        var result = new Guard();
        var seen = new HashSet<Rail>();
        while (result.series.Count < MostDevices)
        {
            var path = network.PathOf(rail, supplier);
            for (var i = Math.Min(before, path.Length) - 1; i >= 0 && result.series.Count < MostDevices; i--)
            {
                if (path[i] is { } element && UnprotectedStretch.IsDevice(element)
                    && network.PlacesAt(rail, supplier, i).Select(network.OpeningOf).OfType<Network.DeviceOpening>().ToImmutableArray() is { Length: > 0 } devices)
                {
                    result.series.Add(devices);
                }
            }

            var all = network.Suppliers(rail);
            if (supplier < 0 && all.Length == 1 && all[0].Feed is null)
            {
                supplier = 0;
            }
            else if (supplier < 0 && all.Length == 1)
            {
                (supplier, before) = (0, int.MaxValue);
                continue;
            }
            else if (supplier < 0)
            {
                if (joints >= MostJoints)
                {
                    result.unknown = true;
                    break;
                }

                for (var k = 0; k < all.Length; k++)
                {
                    result.feeds.Add(Above(network, rail, k, int.MaxValue, joints + 1));
                }

                break;
            }

            if (all[supplier].From is Rail above && !network.IsCyclic(above) && seen.Add(above))
            {
                (rail, supplier, before) = (above, -1, int.MaxValue);
                continue;
            }

            result.source = all[supplier].From is Rail ? null : all[supplier].From;
            break;
        }

        return result;
    }

    /// <summary>The devices, nearest first.</summary>
    internal IEnumerable<Network.DeviceOpening> Devices => series.SelectMany(one => one).Concat(feeds.SelectMany(feed => feed.Devices));

    /// <summary>The current (A) that opens one of them for certain; of several feeds together the sum. Infinite: there is none.</summary>
    internal Range Sure => SureWithout(null);

    /// <summary>The same with some devices closed.</summary>
    internal Range SureWithout(Func<Network.DeviceOpening, bool>? skip) => Least(device => device.Sure, skip);

    /// <summary>The current (A) that melts or trips one of them for certain, whether or not it can break it.</summary>
    internal Range Begins(Func<Network.DeviceOpening, bool>? skip) => Least(device => device.Begins, skip);

    private Range Least(Func<Network.DeviceOpening, Range> of, Func<Network.DeviceOpening, bool>? skip)
    {
        var least = new Range(double.PositiveInfinity, double.PositiveInfinity);
        foreach (var stage in series.Where(stage => skip is null || !stage.Any(skip)))
        {
            least = new Range(Math.Min(least.Low, stage.Max(one => of(one).Low)), Math.Min(least.High, stage.Max(one => of(one).High)));
        }

        var joined = feeds.Select(feed => feed.Least(of, skip)).ToList();
        return joined.Count == 0 ? least : new Range(Math.Min(least.Low, joined.Sum(one => one.Low)), Math.Min(least.High, joined.Sum(one => one.High)));
    }

    /// <summary>The largest current (A) that lasts: in series what the device that opens first or the source bounds, of several feeds the sum.</summary>
    /// <param name="sure">What opens a device for certain.</param>
    /// <param name="limit">What a source gives for long.</param>
    internal Range Lasting(Func<Network.DeviceOpening, Range> sure, Func<Source, double> limit)
    {
        var least = Range.Exactly(source is null ? double.PositiveInfinity : limit(source));
        foreach (var stage in series)
        {
            // Of parallel devices each statement is of all of them together.
            least = Lesser(least, new Range(stage.Max(one => sure(one).Low), stage.Max(one => sure(one).High)));
        }

        var joined = feeds.Select(feed => feed.Lasting(sure, limit)).ToList();
        return joined.Count == 0 ? least : Lesser(least, new Range(joined.Sum(one => one.Low), joined.Sum(one => one.High)));
    }

    /// <summary>The conventional time (s) of the slowest of them.</summary>
    internal double ConventionalTime => Devices.Select(device => device.ConventionalTime).DefaultIfEmpty(0).Max();

    /// <summary>The data that bound the times.</summary>
    internal IEnumerable<MissingDatum> Missing => Devices.SelectMany(device => device.Missing);

    internal IEnumerable<string> Assumptions => Devices.SelectMany(device => device.Assumptions);

    /// <summary>Currents (A) at which the times change their course.</summary>
    internal IEnumerable<double> Corners => series.SelectMany(one => one).SelectMany(device => device.Corners).Concat(feeds.SelectMany(feed => feed.Corners.Concat(feed.Corners.Select(one => one * feeds.Count))));

    /// <summary>Bounds of the longest time (s) until a current through the element is interrupted: by the fastest in series, by the slowest of several feeds that share it.</summary>
    /// <param name="current">The current (A).</param>
    /// <param name="skip">Devices that count as closed; null: none.</param>
    internal Range Longest(double current, Func<Network.DeviceOpening, bool>? skip = null)
    {
        var least = unknown ? new Range(0, double.PositiveInfinity) : Range.Exactly(double.PositiveInfinity);
        foreach (var stage in series)
        {
            var times = stage.Select(device => skip?.Invoke(device) == true ? Range.Exactly(double.PositiveInfinity) : device.Longest(current)).ToList();
            least = Lesser(least, new Range(times.Max(time => time.Low), times.Max(time => time.High)));
        }

        if (feeds.Count > 0)
        {
            var times = feeds.Select(feed => feed.Longest(current / feeds.Count, skip)).ToList();
            least = Lesser(least, new Range(times.Max(time => time.Low), times.Max(time => time.High)));
        }

        var limit = source switch { Supply supply => supply.CurrentLimit, Converter converter => converter.CurrentLimit, _ => null };
        if (limit is { Style: CurrentLimitStyle.LatchOff, Level: { } level, LimitedBy: not LimitedBy.Firmware } && current >= level.Max.Amperes * (1 - Weighing.Tolerance))
        {
            least = Lesser(least, limit.TripTime is { } trip ? Range.Exactly(trip.Max.Seconds) : new Range(0, double.PositiveInfinity));
        }

        return least;
    }

    /// <summary>
    /// Bounds of the Joule integral (A²s) that an element meets: the least that one in series lets through. Of several feeds each may give the whole, or all their shares,
    /// whose square roots add at most (Minkowski).
    /// </summary>
    internal Range LetThrough(double current)
    {
        var least = unknown ? new Range(0, double.PositiveInfinity) : Range.Exactly(double.PositiveInfinity);
        foreach (var stage in series)
        {
            var each = stage.Select(device => device.LetThrough(current)).ToList();
            least = Lesser(least, new Range(each.Max(one => one.Low), each.Max(one => one.High)));
        }

        if (feeds.Count > 0)
        {
            var alone = feeds.Select(feed => feed.LetThrough(current)).ToList();
            var shared = feeds.Select(feed => feed.LetThrough(current / feeds.Count)).ToList();
            least = Lesser(least, new Range(
                alone.Max(one => one.Low),
                Math.Max(alone.Max(one => one.High), Math.Pow(shared.Sum(one => Math.Sqrt(one.High)), 2))));
        }

        return least;
    }

    /// <summary>Currents (A) to look at between two: both ends, corners and their lower sides, and steps of an even ratio.</summary>
    internal List<double> Grid(double low, double high, IEnumerable<double> more, int steps = 24)
    {
        low = Math.Max(low, 1e-6);
        var result = new SortedSet<double> { low, high };
        foreach (var corner in Corners.Concat(more))
        {
            foreach (var at in (double[])[corner * (1 - 1e-7), corner])
            {
                if (at > low && at < high)
                {
                    result.Add(at);
                }
            }
        }

        for (var k = 1; k < steps && high > low; k++)
        {
            result.Add(low * Math.Pow(high / low, (double)k / steps));
        }

        return [.. result];
    }

    private static Range Lesser(Range a, Range b) => new(Math.Min(a.Low, b.Low), Math.Min(a.High, b.High));
}
