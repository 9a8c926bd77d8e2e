using System.Globalization;
using System.Text;

namespace RailRules.Review;

/// <summary>The review as Markdown, short enough for a pull request: what is open, and the thin margins.</summary>
public static class ReviewMarkdown
{
    private const int Most = 40;

    /// <summary>The Markdown text.</summary>
    public static string Write(BoardReview review)
    {
        var text = new StringBuilder();
        text.Append("# ").Append(Cell(review.Input.Name)).Append("\n\n");
        text.Append("**").Append(ReviewJson.Word(review.Verdict)).Append("**: ")
            .Append(string.Join(", ", Enum.GetValues<Outcome>().Select(outcome => string.Create(CultureInfo.InvariantCulture, $"{review.CountOf(outcome)} {ReviewJson.Word(outcome)}")))).Append("\n\n");
        text.Append(Cell(review.Input.FullName)).Append(", project ").Append(Cell(review.Input.Project)).Append("; ").Append(BoardReview.Tool).Append(' ').Append(BoardReview.Version);
        if (review.Input.Fingerprint.Length > 0)
        {
            text.Append("; inputs SHA-256 `").Append(review.Input.Fingerprint).Append('`');
        }

        if (review.WaiversJudged is { } judged)
        {
            text.Append("\n\n").Append(judged);
        }

        text.Append("\n\n> ").Append(string.Join(' ', Texts.Cautions)).Append("\n\n");
        WriteOpen(text, review);
        WriteMargins(text, review);
        WriteMissing(text, review);
        WriteList(text, "Assumed where the data are silent", [.. review.Assumptions.Select(one => one.Text)]);
        WriteList(text, "Take note", review.Notes);
        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static void WriteOpen(StringBuilder text, BoardReview review)
    {
        text.Append("## What is open\n\n");
        var open = review.Groups.Where(group => group.First.Outcome != Outcome.Holds).ToList();
        if (open.Count == 0 && review.Findings.IsEmpty && review.Input.CompilerErrors.IsEmpty)
        {
            text.Append(review.Checks.IsEmpty ? "No check was made.\n\n" : "Nothing: every check made is decided and none fails.\n\n");
            return;
        }

        if (!review.Input.CompilerErrors.IsEmpty)
        {
            text.Append("The source does not compile: ").Append(Shown.Count(review.Input.CompilerErrors.Length, "error")).Append(", the first ").Append(Cell(review.Input.CompilerErrors[0].Rule)).Append(At(review.Input.CompilerErrors[0].At)).Append(".\n\n");
        }

        text.Append("| verdict | rule | finding | places | at |\n|---|---|---|---|---|\n");
        foreach (var finding in review.Findings.Take(Most))
        {
            text.Append("| ").Append(finding.Severity == Rules.RuleSeverity.Error ? "fails" : "undecided").Append(" | ").Append(finding.Rule).Append(" | ").Append(Cell(finding.Message)).Append(" | | ").Append(Cell(finding.At?.ToString())).Append(" |\n");
        }

        foreach (var group in open.Take(Most))
        {
            text.Append("| ").Append(ReviewJson.Word(group.First.Outcome)).Append(" | ").Append(Cell(group.First.Check.Rule)).Append(" | ").Append(Cell(group.First.Said)).Append(" | ")
                .Append(Cell(group.First.Where)).Append(group.Checks.Length > 1 ? $" and {Shown.Count(group.Checks.Length - 1, "more")}".Replace("mores", "more", StringComparison.Ordinal) : "").Append(" | ").Append(Cell(group.First.At?.ToString())).Append(" |\n");
        }

        Left(text, Math.Max(0, open.Count - Most) + Math.Max(0, review.Findings.Length - Most));
    }

    private static void WriteMargins(StringBuilder text, BoardReview review)
    {
        var thin = review.Groups.Where(group => group.First.Outcome == Outcome.Holds && group.First.Check.Margin is { } margin && double.IsFinite(margin)).ToList();
        if (thin.Count == 0)
        {
            return;
        }

        text.Append("## Thinnest margins of what holds\n\n| margin (capacity over demand) | what is judged | places | demand | capacity | rule | at |\n|--:|---|---|--:|--:|---|---|\n");
        foreach (var group in thin.Take(20))
        {
            var check = group.First.Check;
            text.Append("| ").Append(Shown.Margin(check.Margin)).Append(" | ").Append(Cell(group.First.Thing)).Append(": ").Append(Cell(BoardReview.Words(group.First.Datum))).Append(" | ")
                .Append(group.Checks.Length > 1 ? Shown.Count(group.Checks.Length, "place") : Cell(group.First.Where)).Append(" | ").Append(check.Demand?.Text).Append(" | ").Append(check.Capacity?.Text).Append(" | ").Append(Cell(check.Rule)).Append(" | ").Append(Cell(group.First.At?.ToString())).Append(" |\n");
        }

        Left(text, Math.Max(0, thin.Count - 20));
    }

    private static void WriteMissing(StringBuilder text, BoardReview review)
    {
        if (review.Missing.IsEmpty)
        {
            return;
        }

        text.Append("## Missing data\n\n| datum | of | checks that wait | rules |\n|---|---|--:|---|\n");
        foreach (var one in review.Missing.Take(Most))
        {
            text.Append("| ").Append(Cell(one.Datum)).Append(" | ").Append(Cell(one.Of)).Append(" | ").Append(one.Checks.ToString(CultureInfo.InvariantCulture)).Append(" | ").Append(string.Join(", ", one.Rules)).Append(" |\n");
        }

        Left(text, Math.Max(0, review.Missing.Length - Most));
    }

    private static void WriteList(StringBuilder text, string title, IReadOnlyList<string> items)
    {
        if (items.Count == 0)
        {
            return;
        }

        text.Append("## ").Append(title).Append("\n\n");
        foreach (var item in items.Take(Most))
        {
            text.Append("- ").Append(Cell(item)).Append('\n');
        }

        Left(text, Math.Max(0, items.Count - Most));
    }

    private static void Left(StringBuilder text, int count) => text.Append(count > 0 ? string.Create(CultureInfo.InvariantCulture, $"\nand {count} more, in the HTML and JSON files.\n\n") : "\n");

    private static string At(SourcePlace? place) => place is null ? "" : " at " + Cell(place.ToString());

    /// <summary>Text that Markdown shows as it is, inside a table or outside.</summary>
    internal static string Cell(string? text)
    {
        var result = new StringBuilder();
        foreach (var c in Shown.Short(text, 300))
        {
            if (c is '<' or '>' or '&')
            {
                result.Append(c switch { '<' => "&lt;", '>' => "&gt;", _ => "&amp;" });
            }
            else
            {
                // '@' and '#' would call people and issues in a pull request.
                result.Append(c is '\\' or '`' or '*' or '_' or '[' or ']' or '|' or '~' or '#' or '!' or '$' ? "\\" + c : c == '@' ? "&#64;" : c.ToString());
            }
        }

        // Nor shall an address become a link.
        return result.ToString().Replace("://", "&#58;//", StringComparison.Ordinal).Replace("www.", "www&#46;", StringComparison.OrdinalIgnoreCase);
    }
}
