using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules;

/// <summary>A rule of the team's own as the engine applies it. <see cref="DesignRuleAttribute"/> is what a team writes; the generator makes this from it.</summary>
public sealed class DesignRule
{
    private readonly Func<Rail, IEnumerable<Check>>? ofRail;
    private readonly Func<BoardModel, IEnumerable<Check>>? ofBoard;

    private DesignRule(string id, string title, FindingSeverity severity, string help, Func<Rail, IEnumerable<Check>>? ofRail, Func<BoardModel, IEnumerable<Check>>? ofBoard)
    {
        Id = id;
        Title = title;
        Severity = severity;
        Help = help;
        this.ofRail = ofRail;
        this.ofBoard = ofBoard;
    }

    /// <summary>The team's id.</summary>
    public string Id { get; }

    /// <summary>What the rule finds, without a final period.</summary>
    public string Title { get; }

    /// <summary>How a failing check is shown.</summary>
    public FindingSeverity Severity { get; }

    /// <summary>What the rule's documentation comment says; empty where it has none.</summary>
    public string Help { get; }

    /// <summary>Whether it is only known here and not run, so that nothing can be said of what it would find.</summary>
    internal bool IsNotRun { get; set; }

    /// <summary>A rule that is applied to every rail.</summary>
    /// <param name="id">The team's id.</param>
    /// <param name="title">What the rule finds, without a final period.</param>
    /// <param name="severity">How a failing check is shown.</param>
    /// <param name="judge">The checks of a rail.</param>
    /// <param name="help">What people read about the rule.</param>
    public static DesignRule OfRail(string id, string title, FindingSeverity severity, Func<Rail, IEnumerable<Check>> judge, string help = "") => new(id, title, severity, help, judge, null);

    /// <summary>A rule that is applied to a board as a whole.</summary>
    /// <param name="id">The team's id.</param>
    /// <param name="title">What the rule finds, without a final period.</param>
    /// <param name="severity">How a failing check is shown.</param>
    /// <param name="judge">The checks of a board.</param>
    /// <param name="help">What people read about the rule.</param>
    public static DesignRule OfBoard(string id, string title, FindingSeverity severity, Func<BoardModel, IEnumerable<Check>> judge, string help = "") => new(id, title, severity, help, null, judge);

    /// <summary>The rule's checks, with what their author left to the engine filled in. What the rule throws comes through: it is a fault of the rule, not of a rail.</summary>
    internal IEnumerable<Check> Apply(Network network, BoardModel board) => ofRail is not null
        ? network.JudgedRails.SelectMany(rail => Complete(ofRail(rail), rail, board))
        : Complete(ofBoard!(board), null, board);

    private IEnumerable<Check> Complete(IEnumerable<Check>? checks, Rail? rail, BoardModel board)
    {
        var what = rail is null ? $"board '{board.Name}'" : $"rail '{Network.Label(rail)}'";
        foreach (var given in checks ?? [null!])
        {
            var check = given ?? new Check("", "", Verdict.Undecided, null, $"{what}: {Id} gave null in place of a check");
            var on = check.Rail ?? rail;

            // A rule may be written against nullability, and half-typed code gives nothing for a text or an owner.
            ImmutableArray<DatumPlace> places = [.. Network.Items(check.Places).Where(place => place.Owner is not null)];
            ImmutableArray<MissingDatum> missing = [.. Network.Items(check.Missing).Where(datum => datum?.Place.Owner is not null)];
            yield return check with
            {
                Rule = Id,
                Subject = check.Subject is { Length: > 0 } ? check.Subject : $"{(on is null ? what : $"rail '{Network.Label(on)}'")}: {Title}",
                Message = check.Message is { Length: > 0 } ? check.Message : Title,

                // Only the team's waivers waive.
                Verdict = check.Verdict == Verdict.Waived ? Verdict.Fails : check.Verdict,
                Rail = on,
                Part = check.Part ?? (places.IsEmpty ? on : places[places.Length - 1].Owner),
                Places = !places.IsEmpty ? places : on is null ? [] : [new DatumPlace(on)],
                Working = [.. Network.Items(check.Working).Where(step => step is not null).Select(step => step.Place is { Owner: null } ? step with { Place = null } : step)],
                Missing = missing.IsEmpty && check.Verdict == Verdict.Undecided ? [new MissingDatum(new DatumPlace(this, "result"), Id)] : missing,
                Assumptions = [.. Network.Items(check.Assumptions).Where(text => text is not null)],
                Corner = check.Corner ?? "",
                Basis = check.Basis is { Length: > 0 } ? check.Basis : "the team's own rule",
            };
        }
    }

    /// <summary>As the rules of this library are described.</summary>
    internal RuleDescription Description => new(Id, Title, Severity switch
    {
        FindingSeverity.Error => RuleSeverity.Error,
        FindingSeverity.Warning => RuleSeverity.Warning,
        FindingSeverity.Information => RuleSeverity.Information,
        _ => RuleSeverity.Off,
    },
    Help)
    {
        Basis = "the team's own rule",
    };
}
