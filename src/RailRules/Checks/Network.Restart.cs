using RailRules.Physics;

namespace RailRules;

/// <content>Starting again: how long a rail is without voltage, which inrush limiters have cooled by then, and what stands in series with them.</content>
public sealed partial class Network
{
    private double?[]? outages;

    private static Limiters StateOf(bool hot) => hot ? Limiters.Restarted : Limiters.Cold;

    /// <summary>The shortest interruption at a rail (s): its own, else the shortest of the rails that feed it. Null: not stated, by one of them at least.</summary>
    internal double? ShortestOutageOf(Rail rail)
    {
        if (outages is null)
        {
            outages = new double?[Rails.Length];
            for (var i = 0; i < Rails.Length; i++)
            {
                outages[i] = Own(Rails[i]);
            }

            foreach (var i in downstream)
            {
                var above = suppliers[i].Select(supplying => supplying.From is Rail one ? outages[indexOf[one]] : null).ToList();
                outages[i] = Own(Rails[i]) ?? (above.Count == 0 || above.Contains(null) || IsUnknown(Rails[i], nameof(Rail.ShortestOutage)) ? null : above.Min());
            }
        }

        return outages[indexOf[rail]];

        static double? Own(Rail one) => one.ShortestOutage is { } stated ? Finite(stated.Seconds) : null;
    }

    /// <summary>Whether an inrush limiter is surely cold again after the shortest outage.</summary>
    internal bool HasCooled(Rail rail, InrushLimiter limiter) => limiter.RecoveryTime is { } recovery && ShortestOutageOf(rail) >= recovery.Seconds;

    /// <summary>The fuses that the charge behind a part flows through: those on its rail, on the rails above and on the rails below, up to the next converter.</summary>
    internal IEnumerable<PartPlace> FusesInSeries(PartPlace place) =>
        RailsAbove(place.Rail).Concat(RailsBelow(place.Rail).Skip(1)).SelectMany(Parts)
            .Where(part => part.Part is Fuse && (part.Feed is null || place.Feed is null || !ReferenceEquals(part.Rail, place.Rail) || ReferenceEquals(part.Feed, place.Feed)));

    /// <summary>The supplies, batteries and converters from which the charge behind a part comes, each with the rail that it feeds.</summary>
    internal IEnumerable<(Source Source, Rail Rail)> SourcesOf(PartPlace place) =>
        RailsAbove(place.Rail)
            .SelectMany(rail => Suppliers(rail).Where(one => place.Feed is null || !ReferenceEquals(rail, place.Rail) || ReferenceEquals(one.Feed, place.Feed)).Select(one => (one.From, Rail: rail)))
            .Where(one => one.From is not null and not Rail).GroupBy(one => one.From, (source, all) => (source!, all.First().Rail));

    private List<Rail> RailsAbove(Rail rail)
    {
        var result = new List<Rail> { rail };
        for (var i = 0; i < result.Count; i++)
        {
            result.AddRange(Suppliers(result[i]).Select(supplying => supplying.From).OfType<Rail>().Where(above => !result.Contains(above)).Distinct());
        }

        return result;
    }

    private List<Rail> RailsBelow(Rail rail)
    {
        var result = new List<Rail> { rail };
        var seen = new HashSet<Rail>(result);
        for (var i = 0; i < result.Count; i++)
        {
            result.AddRange(Children(result[i]).Where(seen.Add));
        }

        return result;
    }

    /// <summary>The capacitance behind a part (F), between bounds where one could not be worked out.</summary>
    internal (Range Capacitance, List<MissingDatum> Missing) CapacitanceBehind(PartPlace place)
    {
        double low = 0, high = 0;
        var missing = new List<MissingDatum>();
        foreach (var (capacitance, _, _, _, gaps) in RailsBelow(place.Rail).SelectMany(rail => CapacitorsOf(rail, least: false)))
        {
            high += capacitance;
            low += double.IsInfinity(capacitance) ? 0 : capacitance;
            missing.AddRange(double.IsInfinity(capacitance) ? gaps : []);
        }

        return (new Range(low, high), missing);
    }

    /// <summary>The part of a charge that flows through a part: less than 1 in a parallel group.</summary>
    internal Range ShareOfCharge(PartPlace place) => ShareOf(place, Limiters.Cold);

    /// <summary>
    /// How long (s) a source with a current limit is held at it while it charges what is behind a part with inrush limiters still hot, and with the loads that are on.
    /// </summary>
    internal Range TimeAtLimit(PartPlace place, double voltage, Range capacitance, Band<UnitsNet.ElectricCurrent> level, List<MissingDatum> gaps)
    {
        var series = OwnSeries(place, hot: true);
        var load = LoadsOn(place);
        var result = new Range(Time(capacitance.Low, level.Max.Amperes, series.Resistance.High), Time(capacitance.High, level.Min.Amperes, series.Resistance.Low));
        gaps.AddRange(result.IsExact ? [] : series.Gaps);
        return result;

        double Time(double farads, double amperes, double ohms)
        {
            var reached = voltage - (amperes * ohms);
            if (!(farads > 0) || !(reached > 0))
            {
                return 0;
            }

            return double.IsInfinity(farads) || amperes <= 0 ? double.PositiveInfinity : SwitchedStart.Of(voltage, farads, new StartLimits(amperes), load)?.Until(reached)?.Time ?? double.PositiveInfinity;
        }
    }
}
