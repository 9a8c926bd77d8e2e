using System.Collections.Immutable;

namespace RailRules;

/// <content>Material and quality: what surroundings ask of parts, what parts state, and the power that is available at them.</content>
public sealed partial class Network
{
    /// <summary>The surroundings of a part, nearest first: its own, its rail's, those of what feeds the rail; and what hides some of them.</summary>
    internal (ImmutableArray<(Surroundings Surroundings, string Label)> Stated, MissingDatum? Hidden) SurroundingsOf(PartPlace place) => SurroundingsOf(place.Rail, place);

    /// <summary>The surroundings of a rail, nearest first.</summary>
    internal (ImmutableArray<(Surroundings Surroundings, string Label)> Stated, MissingDatum? Hidden) SurroundingsOf(Rail rail) => SurroundingsOf(rail, null);

    private (ImmutableArray<(Surroundings Surroundings, string Label)> Stated, MissingDatum? Hidden) SurroundingsOf(Rail? rail, PartPlace? place)
    {
        var result = ImmutableArray.CreateBuilder<(Surroundings, string)>();
        MissingDatum? hidden = null;
        if (place is not null)
        {
            Add(place.Part, place.Part.Surroundings, place.Label);
        }

        var seen = new HashSet<Rail>();
        while (rail is not null && seen.Add(rail))
        {
            Add(rail, rail.Surroundings, Label(rail));
            rail = Suppliers(rail).Select(supplying => supplying.From as Rail ?? (supplying.From as Converter)?.Input).FirstOrDefault(above => above is not null);
        }

        return (result.ToImmutable(), hidden);

        void Add(object owner, Surroundings? surroundings, string label)
        {
            if (surroundings is not null)
            {
                result.Add((surroundings, label));
            }
            else if (IsUnknown(owner, nameof(Rail.Surroundings)))
            {
                hidden ??= new MissingDatum(new DatumPlace(owner, nameof(Rail.Surroundings)), label);
            }
        }
    }

    /// <summary>What a part states of its material and make; null: a kind of part that has no such data.</summary>
    internal static Make? MakeOf(Element part) => part switch
    {
        Fuse fuse => new(fuse.Flammability, fuse.Joint, fuse.Qualifications),
        CircuitBreaker breaker => new(breaker.Flammability, breaker.Joint, breaker.Qualifications),
        ResettableFuse resettable => new(resettable.Flammability, resettable.Joint, resettable.Qualifications),
        ElectronicFuse electronic => new(electronic.Flammability, electronic.Joint, electronic.Qualifications),
        Connector connector => new(connector.Flammability, connector.Joint, connector.Qualifications),
        FuseHolder holder => new(holder.Flammability, holder.Joint, holder.Qualifications),
        _ => null,
    };

    /// <summary>Material and make of a part.</summary>
    internal sealed record Make(Flammability? Flammability, Joint? Joint, ImmutableArray<string>? Qualifications);

    /// <summary>
    /// Power (W) that can stay available at a part, V_high × the current that may flow for longer than conventional times: the smallest of what surely opens each
    /// device up to and with the part, of the sustained limits of the sources, and of what a fault behind the part can settle to; never below the steady current. Bounds.
    /// </summary>
    internal (Range Power, ImmutableArray<MissingDatum> Missing) AvailablePower(PartPlace place)
    {
        var voltage = VoltagesOf(place.Rail).High;
        var missing = new List<MissingDatum>(voltage.Missing);
        var persistent = Anything with { Low = double.PositiveInfinity };
        foreach (var device in DevicesUpTo(place))
        {
            if (SureOpening(device) is { } sure)
            {
                persistent = Least(persistent, sure.Current);
                missing.AddRange(sure.Missing);
            }
        }

        var policy = PolicyAt(place.Rail, place.Part.Policy, place.Part).Policy;
        persistent = Least(persistent, Range.Exactly(SustainedLimit(place.Rail, policy, latches: false).Limit));
        var (settled, gaps) = SettledAt(place);
        persistent = Least(persistent, settled);
        missing.AddRange(gaps);
        var steady = CurrentOf(place);
        var least = steady.Reason == FlowReason.Solved && !double.IsInfinity(steady.Low) ? steady.Low : 0;
        var current = new Range(Math.Max(persistent.Low, least), Math.Max(persistent.High, least));
        var volts = voltage.IsKnown ? Range.Exactly(voltage.Value) : new Range(voltage.Value, double.PositiveInfinity);
        var most = current.High == 0 || volts.High == 0 ? 0 : volts.High * current.High;
        return (new Range(double.IsInfinity(current.Low) ? volts.Low > 0 ? double.PositiveInfinity : 0 : volts.Low * current.Low, most), Rules.Subject.Distinct(missing));
    }

    /// <summary>The largest settled current (A) of a fault just behind a part.</summary>
    internal (Range Current, ImmutableArray<MissingDatum> Missing) SettledAt(PartPlace place)
    {
        var front = place.InReturn ? Parts(place.Rail).FirstOrDefault(one => !one.InReturn && ReferenceEquals(one.Feed, place.Feed)) : place;
        if (front is null)
        {
            return (Anything, []);
        }

        var index = front.Place.Index ?? 0;
        var most = LargestFault(front, index, reverse: false, least: false);
        var fewest = most.Gaps.IsEmpty ? most : LargestFault(front, index, reverse: false, least: true);
        return (new Range(fewest.Settled, most.Settled), most.Gaps);
    }

    /// <summary>The devices that every current through a part passes, itself included: of its path up to it, and of single feeds above.</summary>
    private IEnumerable<PartPlace> DevicesUpTo(PartPlace place)
    {
        var index = place.InReturn ? int.MaxValue : place.Place.Index ?? 0;
        var (rail, feed) = (place.Rail, place.Feed);
        var seen = new HashSet<Rail>();
        while (true)
        {
            foreach (var part in Parts(rail))
            {
                if (ReferenceEquals(part.Feed, feed) && !part.InReturn && part.Branches.IsEmpty && part.Place.Index <= index)
                {
                    yield return part;
                }
            }

            var all = Suppliers(rail);
            if (feed is null && all.Length == 1 && all[0].Feed is { } only)
            {
                (feed, index) = (only, int.MaxValue);
                continue;
            }

            var from = feed is not null ? feed.From : all.Length == 1 ? all[0].From : null;
            if (from is not Rail above || !seen.Add(rail))
            {
                yield break;
            }

            (rail, feed, index) = (above, null, int.MaxValue);
        }
    }

    private static Range Least(Range a, Range b) => new(Math.Min(a.Low, b.Low), Math.Min(a.High, b.High));
}
