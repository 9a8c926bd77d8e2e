using System.Collections.Immutable;
using UnitsNet;

namespace RailRules.Choosing;

/// <content>What leaves no room, what bounds the window, and the smallest change that opens one.</content>
internal sealed partial class PartSearch
{
    private const double MostChange = 10;
    private const double Step = 1.01;

    private static readonly ChangeKind[] Kinds = [ChangeKind.LargerConductor, ChangeKind.LessInrush, ChangeKind.MoreFaultCurrent, ChangeKind.LessFaultCurrent];

    internal RatingWindow? FindWindow(ImmutableArray<Candidate> passing)
    {
        var ratings = passing.Where(candidate => candidate.Rating is not null).Select(candidate => candidate.Rating!.Value).ToList();
        if (ratings.Count == 0)
        {
            return null;
        }

        var (least, most) = (ratings.Min(), ratings.Max());
        var failing = trials.Where(trial => !trial.Passes && RatingOf(trial.Part) is not null).ToList();
        return new RatingWindow(least, most)
        {
            Below = NearestAt(failing.Where(trial => RatingOf(trial.Part) < least).OrderByDescending(trial => RatingOf(trial.Part))),
            Above = NearestAt(failing.Where(trial => RatingOf(trial.Part) > most).OrderBy(trial => RatingOf(trial.Part))),
        };
    }

    /// <summary>Of the parts with the first one's rating, the one that comes nearest.</summary>
    private NearMiss? NearestAt(IEnumerable<Trial> ordered)
    {
        var list = ordered.ToList();
        return list.Count == 0 ? null : Nearest(list.Where(trial => RatingOf(trial.Part) == RatingOf(list[0].Part)), 1).FirstOrDefault();
    }

    internal NoRoom? FindNoRoom()
    {
        if (trials.Length == 0)
        {
            return null;
        }

        var misses = trials.Select(MissOf).ToList();
        var byRule = misses.SelectMany(miss => miss.RuledOutBy.Select(margin => (margin.Rule, Miss: miss))).GroupBy(one => one.Rule, one => one.Miss)
            .OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => (Rule: group.Key, Fails: new HashSet<NearMiss>(group, Network.ByReference.Instance))).ToList();
        if (byRule.FirstOrDefault(one => one.Fails.Count == misses.Count) is { Rule: { } alone })
        {
            var nearest = NearestFor(misses, alone)!;
            return new NoRoom(alone, null, $"{alone} rules out every part tried; nearest comes '{nearest.Label}': {Reason(nearest, alone)}") { NearestFirst = nearest };
        }

        for (var i = 0; i < byRule.Count; i++)
        {
            for (var k = i + 1; k < byRule.Count; k++)
            {
                if (misses.All(miss => byRule[i].Fails.Contains(miss) || byRule[k].Fails.Contains(miss)))
                {
                    var first = NearestFor(misses.Where(miss => !byRule[k].Fails.Contains(miss)), byRule[i].Rule)!;
                    var second = NearestFor(misses.Where(miss => !byRule[i].Fails.Contains(miss)), byRule[k].Rule)!;
                    return new NoRoom(byRule[i].Rule, byRule[k].Rule,
                        $"every part tried fails {byRule[i].Rule} or {byRule[k].Rule}: '{first.Label}' ({Reason(first, byRule[i].Rule)}), '{second.Label}' ({Reason(second, byRule[k].Rule)})")
                    {
                        NearestFirst = first,
                        NearestSecond = second,
                    };
                }
            }
        }

        return null;
    }

    private static NearMiss? NearestFor(IEnumerable<NearMiss> misses, string rule) =>
        misses.OrderByDescending(miss => miss.RuledOutBy.Where(margin => margin.Rule == rule).Select(margin => margin.Margin ?? 0).DefaultIfEmpty(0).Min()).ThenBy(miss => miss.Index).FirstOrDefault();

    private static string Reason(NearMiss miss, string rule) => miss.RuledOutBy.First(margin => margin.Rule == rule).Message;

    internal ImmutableArray<SmallestChange> FindChanges()
    {
        var result = ImmutableArray.CreateBuilder<SmallestChange>();
        var likely = trials.Select((trial, at) => (trial.Part, Near: trial.Bound ?? 0, at)).OrderByDescending(one => one.Near).ThenBy(one => one.at).Select(one => one.Part).ToList();
        if (places.IsEmpty || likely.Count == 0)
        {
            return [];
        }

        foreach (var kind in Kinds)
        {
            // Upwards in coarse steps until a part passes, then by fine ones from the last factor that failed: no fine step below the one found passes.
            double failed = 1;
            for (var coarse = Math.Pow(Step, 10); coarse < MostChange * Step && Changed(kind, coarse, likely) is var found; coarse *= Math.Pow(Step, 10))
            {
                if (found is null)
                {
                    failed = coarse;
                    continue;
                }

                for (var fine = failed * Step; fine < coarse * (1 - 1e-9); fine *= Step)
                {
                    if (Changed(kind, fine, likely) is { } sooner)
                    {
                        (coarse, found) = (fine, sooner);
                        break;
                    }
                }

                result.Add(new SmallestChange(kind, coarse, found, LabelOf(found), $"{Words(kind, coarse)}: then '{LabelOf(found)}' passes"));
                break;
            }
        }

        return result.ToImmutable();
    }

    private static string Words(ChangeKind kind, double factor) => kind switch
    {
        ChangeKind.LargerConductor => $"conductors and contacts of the rail {Figures.Digits(factor)} times as large",
        ChangeKind.LessInrush => $"capacitance on the rail and below it divided by {Figures.Digits(factor)}",
        ChangeKind.MoreFaultCurrent => $"fault current of the sources {Figures.Digits(factor)} times as large",
        _ => $"fault current of the sources divided by {Figures.Digits(factor)}",
    };

    /// <summary>The first part that passes on the changed board; null: none.</summary>
    private object? Changed(ChangeKind kind, double factor, List<object> parts)
    {
        var affected = Affected(kind);
        var board = Rebuilding.Of(rails, (source, result) => affected.Contains(source) ? Change(source, kind, factor, result) : source);
        var moved = places.Select(place => place with { Rail = (Rail)board.Now(place.Rail) }).ToImmutableArray();
        var search = new PartSearch(board.Rails, moved, parts, isUnknown is null ? null : (owner, datum) => isUnknown(board.Original(owner), datum));
        search.Prune();
        foreach (var trial in search.trials.Where(trial => trial.Bound is null))
        {
            search.TryUntilOneFails(trial);
            if (trial.Passes)
            {
                return trial.Part;
            }
        }

        return null;
    }

    private HashSet<Source> Affected(ChangeKind kind)
    {
        switch (kind)
        {
            case ChangeKind.LargerConductor:
                return [.. own];
            case ChangeKind.LessInrush:
                var below = new HashSet<Source>(own);
                foreach (var source in Upstream.FirstToLast(rails))
                {
                    if (Upstream.Of(source).Any(below.Contains))
                    {
                        below.Add(source);
                    }
                }

                return below;
            default:
                return [.. Upstream.FirstToLast(own).Where(source => source is not Rail)];
        }
    }

    private static Source Change(Source source, ChangeKind kind, double factor, Rebuilding board) => (source, kind) switch
    {
        (Rail rail, ChangeKind.LargerConductor) => rail with
        {
            Path = [.. Network.Items(rail.Path).Select(part => Larger(part, factor, board))],
            Return = rail.Return is { IsMirrored: false, Elements.IsDefaultOrEmpty: false } back ? Return.Of([.. back.Elements.Select(part => Larger(part, factor, board))]) : rail.Return,
        },
        (Rail rail, ChangeKind.LessInrush) => rail with
        {
            Loads = [.. Network.Items(rail.Loads).Select(load => Noted(load, load is null ? null! : load with { InputCapacitance = Times(load.InputCapacitance, 1 / factor) }, board))],
            Capacitors = [.. Network.Items(rail.Capacitors).Select(one => Noted(one, one is null ? null! : one with { Capacitance = Times(one.Capacitance, 1 / factor) }, board))],
        },
        (Converter converter, ChangeKind.LessInrush) => converter with { InputCapacitance = Times(converter.InputCapacitance, 1 / factor) },
        (Supply supply, ChangeKind.MoreFaultCurrent) => supply with
        {
            SourceResistance = Times(supply.SourceResistance, 1 / factor),
            CurrentLimit = Raised(supply.CurrentLimit, factor, board),
            ProspectiveFault = Raised(supply.ProspectiveFault, factor, board),
        },
        (Supply supply, ChangeKind.LessFaultCurrent) => supply with { SourceResistance = Times(supply.SourceResistance, factor), ProspectiveFault = Raised(supply.ProspectiveFault, 1 / factor, board) },
        (Battery battery, ChangeKind.MoreFaultCurrent) => battery with { InternalResistance = Times(battery.InternalResistance, 1 / factor) },
        (Battery battery, ChangeKind.LessFaultCurrent) => battery with { InternalResistance = Times(battery.InternalResistance, factor) },
        (Converter converter, ChangeKind.MoreFaultCurrent) => converter with { CurrentLimit = Raised(converter.CurrentLimit, factor, board) },
        _ => source,
    };

    private static Element Larger(Element part, double factor, Rebuilding board) => part is null ? part! : Noted(part, part switch
    {
        Wire wire => wire with { Section = wire.Section * factor, Ampacity = wire.Ampacity * factor, Resistance = Times(wire.Resistance, 1 / factor), Withstand = Squared(wire.Withstand, factor) },
        Busbar bar => bar with { Section = bar.Section * factor, Ampacity = bar.Ampacity * factor, Resistance = Times(bar.Resistance, 1 / factor), Withstand = Squared(bar.Withstand, factor) },
        Trace trace => trace with { Width = trace.Width * factor, Resistance = Times(trace.Resistance, 1 / factor), Withstand = Squared(trace.Withstand, factor) },
        Connector contact => contact with { ContactRating = contact.ContactRating * factor, ContactResistance = Times(contact.ContactResistance, 1 / factor), Withstand = Squared(contact.Withstand, factor) },
        _ => part,
    }, board);

    private static JouleIntegral? Squared(JouleIntegral? withstand, double factor) =>
        withstand is { } value ? JouleIntegral.FromAmpereSquaredSeconds(value.AmpereSquaredSeconds * factor * factor) : null;

    private static CurrentLimit? Raised(CurrentLimit? limit, double factor, Rebuilding board) => limit is null ? null : Noted(limit, limit with { Level = Times(limit.Level, factor) }, board);

    private static ProspectiveFault? Raised(ProspectiveFault? fault, double factor, Rebuilding board) => fault is null ? null : Noted(fault, fault with { Current = Times(fault.Current, factor) }, board);

    private static T Noted<T>(T original, T made, Rebuilding board)
        where T : class
    {
        if (original is not null && !ReferenceEquals(original, made))
        {
            board.Note(made, original);
        }

        return made;
    }

    private static Band<ElectricResistance>? Times(Band<ElectricResistance>? band, double factor) => band is { } value ? new(value.Min * factor, value.Typical * factor, value.Max * factor) : null;

    private static Band<ElectricCapacitance>? Times(Band<ElectricCapacitance>? band, double factor) => band is { } value ? new(value.Min * factor, value.Typical * factor, value.Max * factor) : null;

    private static Band<ElectricCurrent>? Times(Band<ElectricCurrent>? band, double factor) => band is { } value ? new(value.Min * factor, value.Typical * factor, value.Max * factor) : null;
}
