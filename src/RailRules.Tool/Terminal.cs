using System.Globalization;
using RailRules.Review;
using Spectre.Console;

namespace RailRules.Tool;

/// <summary>The summary at the end: what is open, then the thinnest margins.</summary>
internal static class Terminal
{
    private const int Rows = 20;

    public static void Sum(TextWriter output, IReadOnlyList<NamedReview> reviews, IReadOnlyList<BoardChanges> changes, ReviewOptions options)
    {
        var console = ConsoleOf(output);
        foreach (var (name, review) in reviews)
        {
            if (!options.Quiet || review.Verdict == Outcome.Fails)
            {
                Board(console, name, review, options);
            }
        }

        foreach (var board in changes.Where(board => !options.Quiet || (options.MaxLoss is { } most && board.Lost(most).Any())))
        {
            Changes(console, board, options.MaxLoss);
        }

        if (reviews.Count == 0)
        {
            console.MarkupLineInterpolated($"No board, no review.");
        }
        else if (!options.Quiet)
        {
            foreach (var finding in reviews.SelectMany(one => one.Review.Input.OfProject).Distinct().Take(Rows))
            {
                console.MarkupLine(Text($"{finding.Rule} at {finding.At}: {finding.Message}", 300));
            }

            console.MarkupLineInterpolated($"A design aid, not an approval: the values entered decide. Verify by test.");
        }
    }

    /// <summary>A console that writes there: plain text, and wide enough for a table, where that is no terminal.</summary>
    public static IAnsiConsole ConsoleOf(TextWriter output)
    {
        var redirected = Console.IsOutputRedirected || !ReferenceEquals(output, Console.Out);
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = redirected ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = redirected ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
            Interactive = InteractionSupport.No,
        });
        if (redirected)
        {
            console.Profile.Width = 160;
        }

        return console;
    }

    private static void Board(IAnsiConsole console, string name, BoardReview review, ReviewOptions options)
    {
        console.Write(new Markup($"[bold]{Text(review.Input.FullName, 100)}[/]: "));
        console.MarkupLine(string.Join(", ", Enum.GetValues<Outcome>().Where(outcome => review.CountOf(outcome) > 0).Select(outcome => Coloured(outcome, string.Create(CultureInfo.InvariantCulture, $"{review.CountOf(outcome)} {Word(outcome)}")))));
        if (!review.Input.CompilerErrors.IsEmpty)
        {
            console.MarkupLine(Text($"The source does not compile ({Shown.Count(review.Input.CompilerErrors.Length, "error")}, the first {review.Input.CompilerErrors[0].Rule} at {review.Input.CompilerErrors[0].At}); what depends on it is undecided.", 300));
        }

        var table = new Table { Border = TableBorder.Rounded, ShowRowSeparators = false };
        table.AddColumns(new TableColumn("verdict").NoWrap(), new TableColumn("margin").RightAligned().NoWrap(), new TableColumn("rule").NoWrap(), new TableColumn("finding"), new TableColumn("at").NoWrap());
        foreach (var finding in review.Findings.Where(finding => !options.Quiet || finding.Severity == Rules.RuleSeverity.Error).Take(Rows))
        {
            table.AddRow(Coloured(finding.Severity == Rules.RuleSeverity.Error ? Outcome.Fails : Outcome.Undecided, null), "", Text(finding.Rule, 20), Text(finding.Message, 300), Text(finding.At?.ToString(), 60));
        }

        var groups = review.Groups.Where(group => options.Quiet ? group.First.Outcome == Outcome.Fails : group.First.Outcome != Outcome.Holds || group.First.Check.Margin is { } margin && double.IsFinite(margin)).ToList();
        var open = groups.Count(group => group.First.Outcome != Outcome.Holds);
        foreach (var group in groups.Take(Math.Max(open, Rows)).Take(200))
        {
            var first = group.First;
            var what = first.Outcome == Outcome.Holds ? $"{first.Thing}: {first.Check.Demand?.Text} of {first.Check.Capacity?.Text} ({BoardReview.Words(first.Datum)})" : first.Check.Message;
            table.AddRow(Coloured(first.Outcome, null), Text(Shown.Margin(first.Check.Margin), 20), Text(first.Check.Rule, 20), Text(group.Checks.Length > 1 ? $"{what} (and {group.Checks.Length - 1} more like it)" : what, 300), Text(first.At?.ToString(), 60));
        }

        if (table.Rows.Count > 0)
        {
            console.Write(table);
        }

        if (!options.Quiet)
        {
            console.MarkupLine("Written: " + Text(string.Join(", ", options.Formats.Select(format => System.IO.Path.Combine(options.Output, name + Formats.All[format].Extension))), 1000));
        }
    }

    private static void Changes(IAnsiConsole console, BoardChanges changes, double? most)
    {
        console.MarkupLine($"[bold]{Text(changes.Board, 100)}[/] against the baseline: {Text(changes.Summary, 300)}");
        foreach (var moved in most is { } share ? changes.Lost(share) : changes.Moved.Where(one => one.Loss > 0))
        {
            console.MarkupLine("  " + Text(moved.ToString(), 300));
        }
    }

    private static string Word(Outcome outcome) => outcome.ToString().ToLowerInvariant();

    private static string Coloured(Outcome outcome, string? text) =>
        $"[{outcome switch { Outcome.Fails => "red", Outcome.Undecided => "yellow", Outcome.Waived => "purple", Outcome.Suggestion => "green", _ => "teal" }}]{text ?? Word(outcome)}[/]";

    private static string Text(string? text, int length) => Markup.Escape(Shown.Short(text, length));
}
