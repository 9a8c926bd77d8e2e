using System.Globalization;
using System.Text;

namespace RailRules.Review;

/// <summary>The checks as CSV (RFC 4180), for spreadsheets. A cell that a spreadsheet would take for a formula is preceded by an apostrophe.</summary>
public static class ReviewCsv
{
    private static readonly string[] Head =
        ["rule", "verdict", "margin", "subject", "rail", "designator", "demand", "demand unit", "capacity", "capacity unit", "corner", "message", "missing", "basis", "file", "line", "key"];

    /// <summary>The CSV text, lines ended by CR LF as the standard has it.</summary>
    public static string Write(BoardReview review)
    {
        var text = new StringBuilder();
        Line(text, Head);
        foreach (var one in review.Checks)
        {
            var check = one.Check;
            Line(
                text,
                [
                    check.Rule, ReviewJson.Word(one.Outcome), Number(check.Margin), check.Subject, one.Rail, one.Designator, Number(check.Demand?.Value), check.Demand?.Unit, Number(check.Capacity?.Value), check.Capacity?.Unit,
                    check.Corner, one.Said, string.Join("; ", check.Missing.Select(missing => $"{missing.Place.Datum} of '{missing.Of}'")), check.Basis, one.At?.File, one.At?.Line.ToString(CultureInfo.InvariantCulture), one.Key,
                ]);
        }

        foreach (var finding in review.Findings)
        {
            Line(text, [finding.Rule, finding.Severity == Rules.RuleSeverity.Error ? "fails" : "undecided", "", "", "", "", "", "", "", "", "", finding.Message, "", "", finding.At?.File, finding.At?.Line.ToString(CultureInfo.InvariantCulture), ""]);
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, IEnumerable<string?> cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");

    private static string Number(double? value) => value is { } number && double.IsFinite(number) ? ReviewJson.Nine(number).ToString("R", CultureInfo.InvariantCulture) : value is null ? "" : "unlimited";

    internal static string Cell(string? text)
    {
        var shown = Shown.Text(text);
        if (shown.Length > 0 && shown.TrimStart() is var first && (first.Length == 0 || first[0] is '=' or '+' or '@' or '＝' or '＋' or '－' or '＠' || (first[0] == '-' && !double.TryParse(shown, NumberStyles.Float, CultureInfo.InvariantCulture, out _))))
        {
            shown = "'" + shown;
        }

        return shown.AsSpan().ContainsAny(",\"\r\n") ? "\"" + shown.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : shown;
    }
}
