using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules.Review;

/// <summary>What a review says of a check.</summary>
public enum Outcome
{
    /// <summary>A check of the severity warning or error fails.</summary>
    Fails,

    /// <summary>Data are missing that decide.</summary>
    Undecided,

    /// <summary>It fails, and someone has answered for it.</summary>
    Waived,

    /// <summary>A suggestion: worth a look, and no failure.</summary>
    Suggestion,

    /// <summary>The capacity covers the demand.</summary>
    Holds,
}

/// <summary>A board's review: the checks in the order in which a reviewer asks, each with its place and its working. Writers only lay it out.</summary>
public sealed partial class BoardReview
{
    private BoardReview(BoardInput input)
    {
        Input = input;
        Network = new Network(input.Rails, input.IsUnknown);
    }

    /// <summary>What it was made from.</summary>
    public BoardInput Input { get; }

    /// <summary>Name of the program that made it.</summary>
    public static string Tool => "railrules";

    /// <summary>Version of the rules.</summary>
    public static string Version { get; } = typeof(Rail).Assembly.GetName().Version is { } version ? version.ToString(3) : "";

    /// <summary>Every check but the summaries of undecided ones, in order of rail and rule.</summary>
    public ImmutableArray<ReviewedCheck> Checks { get; private set; } = [];

    /// <summary>The checks with those of the same rail kind put together, thin margins first.</summary>
    public ImmutableArray<CheckGroup> Groups { get; private set; } = [];

    /// <summary>Worksheets: a thing that is judged, with its checks; equal ones put together.</summary>
    public ImmutableArray<Worksheet> Worksheets { get; private set; } = [];

    /// <summary>The rails.</summary>
    public ImmutableArray<RailSummary> Rails { get; private set; } = [];

    /// <summary>What each protective device protects.</summary>
    public ImmutableArray<Protection> Protections { get; private set; } = [];

    /// <summary>The data that undecided checks lack.</summary>
    public ImmutableArray<MissingData> Missing { get; private set; } = [];

    /// <summary>What was assumed where the data are silent.</summary>
    public ImmutableArray<Assumption> Assumptions { get; private set; } = [];

    /// <summary>The policies in force.</summary>
    public ImmutableArray<PolicyInForce> Policies { get; private set; } = [];

    /// <summary>Parts that may be fitted instead, and what the checks say of them.</summary>
    public ImmutableArray<AlternatePart> Alternates { get; private set; } = [];

    /// <summary>Facts that call for care whatever the verdicts: high voltage, stored energy.</summary>
    public ImmutableArray<string> Notes { get; private set; } = [];

    /// <summary>Findings of evaluation that stop checks, errors first.</summary>
    public ImmutableArray<BoardFinding> Findings { get; private set; } = [];

    /// <summary>On which day the ends of the board's waivers were judged, or that they were not; null where none has an end.</summary>
    public string? WaiversJudged =>
        !Checks.Any(check => (check.Check.Waiver ?? check.Check.Part as Waiver) is { Until: not null }) ? null
        : Input.Today is { } today ? $"Waivers were judged as of {today.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}."
        : "No date was given (build property RailRulesToday, or --today), so whether a dated waiver is past its end was not judged.";

    internal Network Network { get; }

    /// <summary>How many checks have an outcome; findings of evaluation with the severity error count as failing.</summary>
    public int CountOf(Outcome outcome) =>
        Checks.Count(check => check.Outcome == outcome) + (outcome == Outcome.Fails ? Findings.Count(finding => finding.Severity == RuleSeverity.Error) : 0);

    /// <summary>The worst outcome.</summary>
    public Outcome Verdict =>
        CountOf(Outcome.Fails) > 0 ? Outcome.Fails
        : CountOf(Outcome.Undecided) > 0 || !Findings.IsEmpty || !Input.CompilerErrors.IsEmpty || Checks.IsEmpty ? Outcome.Undecided
        : Outcome.Holds;

    /// <summary>Makes the review of a board.</summary>
    public static BoardReview Of(BoardInput input)
    {
        var review = new BoardReview(input)
        {
            Findings = [.. input.Findings.OrderByDescending(finding => finding.Severity).ThenBy(finding => finding.At?.File, StringComparer.Ordinal).ThenBy(finding => finding.At?.Line).ThenBy(finding => finding.Rule, StringComparer.Ordinal)],
        };
        review.ReadChecks();
        review.ReadGroups();
        review.ReadWorksheets();
        review.ReadRails();
        review.ReadProtections();
        review.ReadGaps();
        review.ReadPolicies();
        review.ReadAlternates();
        return review;
    }

    /// <summary>Where a datum is written, and where its figure comes from.</summary>
    internal SourcePlace? Written(DatumPlace? place) => place is { Owner: not null } known ? Input.Written(known) : null;

    /// <summary>The citation of the object that has a datum.</summary>
    internal static string? CitationOf(DatumPlace? place) => place?.Owner switch
    {
        Element part => part.Citation,
        Source source => source.Citation,
        Load load => load.Citation,
        Capacitor capacitor => capacitor.Citation,
        TransientSuppressor clamp => clamp.Citation,
        DesignPolicy policy => policy.Citation,
        _ => null,
    };

    private void ReadChecks()
    {
        var rules = Registry.All.Select(rule => rule.Description).Concat(Input.DesignRules.Select(rule => rule.Description)).ToDictionary(rule => rule.Id, StringComparer.Ordinal);
        var keys = new Dictionary<string, int>(StringComparer.Ordinal);
        var result = ImmutableArray.CreateBuilder<ReviewedCheck>(Input.Checks.Length);
        foreach (var check in Input.Checks)
        {
            // RAIL0004 sums up the undecided checks; here each is told itself.
            if (check.Rule == UndecidedSummary)
            {
                continue;
            }

            rules.TryGetValue(check.Rule, out var rule);
            var severity = rule?.Severity ?? RuleSeverity.Error;
            var outcome = check.Verdict switch
            {
                RailRules.Verdict.Holds => Outcome.Holds,
                RailRules.Verdict.Undecided => Outcome.Undecided,
                RailRules.Verdict.Fails => severity >= RuleSeverity.Warning ? Outcome.Fails : Outcome.Suggestion,
                _ => Outcome.Waived,
            };
            var (thing, datum) = Split(check.Subject);
            var key = KeyOf(check, thing, datum);
            keys.TryGetValue(key, out var before);
            keys[key] = before + 1;
            result.Add(new ReviewedCheck
            {
                Check = check,
                Key = before == 0 ? key : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{key} #{before + 1}"),
                Title = rule?.Title ?? "",
                Severity = severity,
                Outcome = outcome,
                Thing = thing,
                Datum = datum,
                Rail = check.Rail is { } rail ? Network.Label(rail) : "",
                Designator = (check.Part as Element)?.Designator,
                At = Input.Belongs?.Invoke(check) ?? check.Places.Select(place => Input.Written(place)).FirstOrDefault(place => place is not null) ?? Input.At,
            });
        }

        Checks = result.ToImmutable();
    }

    private const string UndecidedSummary = "RAIL0004";

    /// <summary>"'Reed20' on rail 'Sled 1': DcVoltageRating" into what is judged and which datum.</summary>
    private static (string Thing, string Datum) Split(string subject)
    {
        var at = subject.LastIndexOf(": ", StringComparison.Ordinal);
        return at < 0 ? (subject, "") : (subject[..at], subject[(at + 2)..]);
    }

    /// <summary>What stays the same when a part is replaced in its place: rule, rail, designator, datum.</summary>
    private static string KeyOf(Check check, string thing, string datum) =>
        (check.Part as Element)?.Designator is { Length: > 0 } designator && check.Rail is { } rail
            ? $"{check.Rule} {designator} on rail '{Network.Label(rail)}': {datum}"
            : $"{check.Rule} {thing}: {datum}";
}

/// <summary>A check with what the review adds to it.</summary>
public sealed record ReviewedCheck
{
    /// <summary>The check itself.</summary>
    public required Check Check { get; init; }

    /// <summary>What names the check from one review to the next, whichever part is fitted.</summary>
    public required string Key { get; init; }

    /// <summary>The rule's title.</summary>
    public required string Title { get; init; }

    /// <summary>The rule's default severity.</summary>
    public required RuleSeverity Severity { get; init; }

    /// <summary>What the review says.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>What is judged, e.g. <c>'Reed20' on rail 'Sled 1'</c>.</summary>
    public required string Thing { get; init; }

    /// <summary>Which datum of it.</summary>
    public required string Datum { get; init; }

    /// <summary>The rail's name; empty: none.</summary>
    public required string Rail { get; init; }

    /// <summary>The part's designator.</summary>
    public string? Designator { get; init; }

    /// <summary>Where the finding belongs.</summary>
    public SourcePlace? At { get; init; }

    /// <summary>The check's message, and why it may stay where it is waived.</summary>
    public string Said => Check.Waiver is { } waiver ? $"{Check.Message}; waived: {waiver.Text}" : Check.Message;

    /// <summary>What tells it apart from like checks: designator and rail.</summary>
    public string Where => Designator is { Length: > 0 } ? $"{Designator} on '{Rail}'" : Rail.Length > 0 ? $"'{Rail}'" : "";
}
