using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0106: a one-direction device where current can flow both ways.</summary>
public sealed class OneDirectionDevice : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0106",
        "A one-direction device where current can flow both ways",
        RuleSeverity.Error,
        "A polarized circuit breaker, or an electronic fuse that cannot trip in reverse, stands where another feed, a battery, a converter or a regenerating load can drive current back through it.")
    {
        Basis = "Polarity of DC breakers: IEC 60947-2, marking of polarized equipment (from memory); a transistor without reverse blocking conducts backwards: circuit theory",
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
                if (place.Part is CircuitBreaker or ElectronicFuse && !place.InReturn && Judge(network, place) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private Check? Judge(Network network, Network.PartPlace place)
    {
        var back = network.BackFeeds(place);
        if (back.IsEmpty)
        {
            return null;
        }

        var (datum, bothWays) = Ways(network, place);
        var subject = Subject.Of(Description, place, datum);
        var own = new MissingDatum(new DatumPlace(place.Part, datum), place.Label);
        var sure = back.Where(one => one.Doubts.IsEmpty).ToList();
        var chosen = (sure.Count > 0 ? sure : [.. back]).OrderByDescending(one => one.Current ?? double.PositiveInfinity).First();
        var current = chosen.Current is { } amperes ? Figures.Text(amperes, "A") : "current";
        if (bothWays == true)
        {
            return subject.ToStructural(true, $"{subject.Where} works both ways; '{chosen.Label}' can drive {current} back through it", Step(chosen));
        }

        if (bothWays is null || sure.Count == 0)
        {
            return subject.ToUndecided((bothWays is null ? (ImmutableArray<MissingDatum>)[own] : []).AddRange(sure.Count == 0 ? back.SelectMany(one => one.Doubts) : []));
        }

        return subject.ToStructural(false, $"{subject.Where} works one way only; '{chosen.Label}' can drive {current} back through it", Step(chosen)) with
        {
            Demand = chosen.Current is { } demand ? new Figure(demand, "A") : null,
            Capacity = new Figure(0, "A"),
            Corner = "each feed by itself, highest voltage",
        };
    }

    private static WorkingStep Step(Network.BackFeed back) =>
        new("current from the load side", "", "", new Figure(back.Current ?? double.PositiveInfinity, "A"), $"the most '{back.Label}' gives{(back.Current is null ? ": not stated" : "")}", new DatumPlace(back.Origin));

    /// <summary>Whether a device opens, or blocks, in both directions; null: not stated. With the datum that says so.</summary>
    private static (string Datum, bool? BothWays) Ways(Network network, Network.PartPlace place) => place.Part switch
    {
        ElectronicFuse electronic => (nameof(ElectronicFuse.ReverseBlocking), electronic.ReverseBlocking),
        CircuitBreaker breaker when network.IsUnknown(breaker, nameof(CircuitBreaker.Polarized)) => (nameof(CircuitBreaker.Polarized), null),
        CircuitBreaker { ReverseAllowed: { } allowed } => (nameof(CircuitBreaker.ReverseAllowed), allowed),
        CircuitBreaker { Polarized: { } polarized } => (nameof(CircuitBreaker.Polarized), !polarized),
        _ => (nameof(CircuitBreaker.ReverseAllowed), null),
    };
}
