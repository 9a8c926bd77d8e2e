using System.Collections.Immutable;
using System.Globalization;
using RailRules.Rules;

namespace RailRules.Choosing;

/// <summary>
/// The search behind <see cref="PartChoice"/>. Only rails connected with the places are judged; parts that a bound proves to fail are not tried further, and of the others
/// the rules are applied until one fails. A part that passes has passed them all.
/// </summary>
internal sealed partial class PartSearch
{
    /// <summary>Rules that judge no part: what waits, what has been waived, what the field reports.</summary>
    private static readonly HashSet<string> Left = ["RAIL0004", "RAIL0008", "RAIL0015", "RAIL0702", "RAIL0900"];

    private readonly ImmutableArray<Rail> rails;
    private readonly ImmutableArray<Place> places;
    private readonly Func<object, string, bool>? isUnknown;
    private readonly ImmutableArray<Rule> rules;
    private readonly Dictionary<Source, int> indexOf = [];
    private readonly HashSet<string> anyway = [];
    private readonly HashSet<Rail> own;
    private readonly List<Rule> order;
    private readonly Trial[] trials;
    private readonly bool asWritten;

    internal PartSearch(ImmutableArray<Rail> board, ImmutableArray<Place> places, IEnumerable<object> parts, Func<object, string, bool>? isUnknown, Exhaustive? exhaustive = null)
    {
        this.places = Network.Items(places);
        this.isUnknown = isUnknown;
        asWritten = exhaustive is not null;
        own = [.. this.places.Select(place => place.Rail)];
        rails = asWritten ? board : Connected.With(board, own);
        rules = [.. Registry.All.Where(rule => rule.Description.Severity != RuleSeverity.Off || Left.Contains(rule.Description.Id))];
        order = [.. rules];
        for (var i = 0; i < rails.Length; i++)
        {
            indexOf[rails[i]] = i;
        }

        var clamps = this.places.Any(place => place.IsClamp);
        trials = [.. parts.Where(part => clamps ? part is TransientSuppressor : part is Element).Select((part, index) => new Trial(part, index))];
        FindFailingAnyway();
    }

    /// <summary>Asks for every part to be tried on the whole board with every rule: the measure of the search.</summary>
    internal sealed class Exhaustive;

    internal int Count => trials.Length;

    internal ImmutableArray<Check> FailingAnyway { get; private set; } = [];

    internal PartChoice Run(int nearMisses)
    {
        if (places.IsEmpty)
        {
            return new PartChoice(this, [], []);
        }

        if (!asWritten)
        {
            Prune();
        }

        foreach (var trial in trials)
        {
            if (asWritten)
            {
                Judge(trial);
            }
            else if (trial.Bound is null)
            {
                TryUntilOneFails(trial);
            }
        }

        var passing = trials.Where(trial => trial.Passes).Select(trial => trial.Candidate!)
            .OrderBy(candidate => candidate.Undecided.Length)
            .ThenBy(candidate => candidate.Rating ?? double.PositiveInfinity)
            .ThenBy(candidate => candidate.Dissipation ?? double.PositiveInfinity)
            .ThenByDescending(candidate => candidate.SmallestMargin)
            .ThenByDescending(candidate => candidate.Alternates)
            .ThenBy(candidate => candidate.Index)
            .ToImmutableArray();
        return new PartChoice(this, passing, Nearest(trials, nearMisses));
    }

    /// <summary>The nearest of the parts that fail. A bound on how near one comes spares trying those that cannot be among the nearest.</summary>
    private ImmutableArray<NearMiss> Nearest(IEnumerable<Trial> among, int wanted)
    {
        var found = new List<NearMiss>();
        foreach (var trial in among.Where(trial => !trial.Passes).OrderByDescending(trial => trial.Bound ?? double.PositiveInfinity))
        {
            if (found.Count >= wanted && (wanted == 0 || found[wanted - 1].Nearness > (trial.Bound ?? double.PositiveInfinity)))
            {
                break;
            }

            found.Add(MissOf(trial));
            found.Sort(Compare);
            if (found.Count > wanted)
            {
                found.RemoveRange(wanted, found.Count - wanted);
            }
        }

        return [.. found];

        static int Compare(NearMiss a, NearMiss b) =>
            a.Nearness != b.Nearness ? b.Nearness.CompareTo(a.Nearness)
            : a.RuledOutBy.Length != b.RuledOutBy.Length ? a.RuledOutBy.Length.CompareTo(b.RuledOutBy.Length)
            : a.Index.CompareTo(b.Index);
    }

    private NearMiss MissOf(Trial trial)
    {
        Judge(trial);
        return trial.Miss!;
    }

    /// <summary>Applies the rules, the one that last failed first, until one fails; all of them where none does.</summary>
    private void TryUntilOneFails(Trial trial)
    {
        var (board, network) = BoardWith(trial.Part);
        var raw = new List<Check>();
        for (var i = 0; i < order.Count; i++)
        {
            foreach (var check in Engine.Apply(order[i], network))
            {
                raw.Add(check);
                if (Counts(check, board, trial.Part))
                {
                    trial.Bound = Math.Min(trial.Bound ?? double.PositiveInfinity, check.Margin ?? 0);
                }
            }

            if (trial.Bound is not null)
            {
                var failed = order[i];
                order.RemoveAt(i);
                order.Insert(0, failed);
                return;
            }
        }

        Settle(trial, board, network, [.. raw.OrderBy(check => check.Rule, StringComparer.Ordinal)]);
    }

    /// <summary>Tries a part with every rule.</summary>
    private void Judge(Trial trial)
    {
        if (trial.Candidate is null && trial.Miss is null)
        {
            var (board, network) = BoardWith(trial.Part);
            Settle(trial, board, network, [.. rules.SelectMany(rule => Engine.Apply(rule, network))]);
        }
    }

    private void Settle(Trial trial, Rebuilding board, Network network, List<Check> raw)
    {
        // What other rules silence still fails: nothing passes because another finding is shown in its stead.
        var failing = raw.Where(check => Counts(check, board, trial.Part)).ToList();
        var shown = Silencing.Apply(network, [.. raw]);
        failing.AddRange(rules.SelectMany(rule => rule.Summarize(network, shown)).Where(check => Counts(check, board, trial.Part)));
        if (failing.Count > 0)
        {
            trial.Miss = new NearMiss(trial.Part, LabelOf(trial.Part))
            {
                Index = trial.Index,
                Rating = RatingOf(trial.Part),
                RuledOutBy = [.. failing.Select(check => MarginOf(check, trial, board)).OrderBy(margin => margin.Margin ?? 0).ThenBy(margin => margin.Rule, StringComparer.Ordinal).ThenBy(margin => margin.Subject, StringComparer.Ordinal)],
            };
            trial.Bound = trial.Miss.Nearness;
            return;
        }

        var affected = shown.Where(check => !Left.Contains(check.Rule) && !anyway.Contains(SignatureOf(check, board))).ToList();
        trial.Candidate = new Candidate(trial.Part, LabelOf(trial.Part))
        {
            Index = trial.Index,
            Rating = RatingOf(trial.Part),
            Dissipation = DissipationOf(trial.Part, board, network),
            Alternates = trial.Part is Element element ? Network.Items(element.Alternates).Length : 0,
            Undecided = [.. affected.Where(check => check.Verdict == Verdict.Undecided).Select(check => MarginOf(check, trial, board))],
            Margins =
            [
                .. affected.Where(check => check.Verdict == Verdict.Holds).Select(check => MarginOf(check, trial, board))
                    .OrderBy(margin => margin.Margin ?? double.PositiveInfinity).ThenBy(margin => margin.Rule, StringComparer.Ordinal).ThenBy(margin => margin.Subject, StringComparer.Ordinal),
            ],
        };
    }

    /// <summary>What stands alike, number for number, with the place as it is and with the place empty does not depend on the choice. Where the place is empty now, this holds for other rails only.</summary>
    private void FindFailingAnyway()
    {
        if (places.IsEmpty)
        {
            return;
        }

        var (emptied, without) = BoardWith(null);
        var asIs = Rebuilding.Of(rails, (source, _) => source);
        var network = new Network(rails, isUnknown);
        var alike = new HashSet<string>(ChecksOf(without).Where(check => !IsOwnEmpty(check, emptied)).Select(check => SignatureOf(check, emptied)));
        var shared = ChecksOf(network).Where(check => alike.Contains(SignatureOf(check, asIs))).ToList();
        anyway.UnionWith(shared.Select(check => SignatureOf(check, asIs)));
        FailingAnyway = [.. shared.Where(check => check.Verdict == Verdict.Fails && !Left.Contains(check.Rule))];

        bool IsOwnEmpty(Check check, Rebuilding board) => places[0].IsEmpty && check.Rail is { } rail && own.Contains((Rail)board.Original(rail));

        IEnumerable<Check> ChecksOf(Network one) => rules.SelectMany(rule => Engine.Apply(rule, one));
    }

    private (Rebuilding Board, Network Network) BoardWith(object? part)
    {
        var board = Rebuilding.With(rails, places, part);
        return (board, new Network(board.Rails, isUnknown is null ? null : (owner, datum) => isUnknown(board.Original(owner), datum)));
    }

    /// <summary>Whether a check rules a part out: it fails, and it judges the part itself or does not fail alike without it.</summary>
    private bool Counts(Check check, Rebuilding board, object part) =>
        check.Verdict == Verdict.Fails && !Left.Contains(check.Rule) && ((check.Part is { } judged && ReferenceEquals(board.Original(judged), part)) || !anyway.Contains(SignatureOf(check, board)));

    private string SignatureOf(Check check, Rebuilding board) => string.Join("|",
        check.Rule, check.Verdict, check.Rail is { } rail && indexOf.TryGetValue((Rail)board.Original(rail), out var index) ? index : -1, check.Subject, check.Message, Exact(check.Margin), Exact(check.Demand?.Value), Exact(check.Capacity?.Value));

    private static string Exact(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static PartMargin MarginOf(Check check, Trial trial, Rebuilding board) => new(check.Rule, check.Subject, check.Margin, check.Demand, check.Capacity, check.Message)
    {
        IsOwn = check.Part is { } part && ReferenceEquals(board.Original(part), trial.Part),
    };

    /// <summary>What people call a part of a table.</summary>
    internal string LabelOf(object part) => part switch
    {
        Element element => Network.Label(element, places[0].Rail, places[0].Index),
        TransientSuppressor clamp => Network.Label(clamp, places[0].Rail, places[0].Index),
        _ => "",
    };

    /// <summary>By what parts of a kind are ordered.</summary>
    internal static double? RatingOf(object part) => part switch
    {
        Fuse fuse => fuse.RatedCurrent?.Amperes,
        CircuitBreaker breaker => breaker.RatedCurrent?.Amperes,
        ResettableFuse resettable => resettable.HoldCurrent?.Amperes,
        ElectronicFuse electronic => electronic.TripLevel?.Min.Amperes,
        Switch contact => contact.RatedCurrent?.Amperes,
        BlockingDiode diode => diode.RatedCurrent?.Amperes,
        FuseHolder holder => holder.RatedCurrent?.Amperes,
        Inductor inductor => inductor.RatedCurrent?.Amperes,
        InrushLimiter limiter => limiter.MaxCurrent?.Amperes,
        Connector connector => connector.ContactRating?.Amperes * Math.Max(1, connector.Contacts ?? 1),
        Wire wire => wire.Ampacity?.Amperes,
        Busbar busbar => busbar.Ampacity?.Amperes,
        TransientSuppressor clamp => clamp.StandOffVoltage?.Volts,
        _ => null,
    };

    private double? DissipationOf(object part, Rebuilding board, Network network)
    {
        if (part is not Element element || Network.StatedResistance(element) is not { } resistance)
        {
            return null;
        }

        double heat = 0;
        foreach (var rail in own)
        {
            foreach (var place in network.Parts((Rail)board.Now(rail)).Where(place => ReferenceEquals(board.Original(place.Part), element)))
            {
                var current = network.CurrentOf(place).High;
                heat = Math.Max(heat, current * current * resistance);
            }
        }

        return double.IsInfinity(heat) || double.IsNaN(heat) ? null : heat;
    }

    /// <summary>A part and what came of trying it.</summary>
    private sealed class Trial(object part, int index)
    {
        internal object Part { get; } = part;

        internal int Index { get; } = index;

        /// <summary>The margin of a check that is known to fail, not below the smallest that fails; null: none is known.</summary>
        internal double? Bound { get; set; }

        internal Candidate? Candidate { get; set; }

        internal NearMiss? Miss { get; set; }

        internal bool Passes => Candidate is not null;
    }
}
