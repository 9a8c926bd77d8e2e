using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace RailRules.Review;

/// <summary>The review as JSON, for programs and for comparing with a committed one. Its schema is docs/review.schema.json.</summary>
public static class ReviewJson
{
    /// <summary>Version of the form.</summary>
    public const int Version = 1;

    internal static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    /// <summary>The JSON text.</summary>
    public static string Write(BoardReview review)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://github.com/railrules/railrules/blob/main/docs/review.schema.json");
            json.WriteNumber("version", Version);
            json.WriteStartObject("tool");
            json.WriteString("name", BoardReview.Tool);
            json.WriteString("version", BoardReview.Version);
            json.WriteEndObject();
            json.WriteStartObject("board");
            json.WriteString("name", review.Input.Name);
            json.WriteString("fullName", review.Input.FullName);
            json.WriteString("project", review.Input.Project);
            WritePlace(json, "at", review.Input.At);
            json.WriteString("fingerprint", review.Input.Fingerprint);
            json.WriteNumber("fingerprintFiles", review.Input.FingerprintFiles);
            if (review.Input.Today is { } today)
            {
                json.WriteString("today", today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            }

            json.WriteEndObject();
            json.WriteString("verdict", Word(review.Verdict));
            json.WriteStartObject("counts");
            foreach (var outcome in Enum.GetValues<Outcome>())
            {
                json.WriteNumber(Word(outcome), review.CountOf(outcome));
            }

            json.WriteEndObject();
            json.WriteStartArray("checks");
            foreach (var check in review.Checks)
            {
                WriteCheck(json, review, check);
            }

            json.WriteEndArray();
            WriteFindings(json, "findings", review.Findings);
            WriteFindings(json, "compilerErrors", review.Input.CompilerErrors);
            WriteRails(json, review);
            WriteProtections(json, review);
            WriteTexts(json, "notes", review.Notes);
            WriteTexts(json, "cautions", Texts.Cautions);
            WriteTexts(json, "outOfScope", Texts.OutOfScope);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>The word for an outcome in every machine-readable form.</summary>
    internal static string Word(Outcome outcome) => outcome.ToString().ToLowerInvariant();

    /// <summary>Nine significant digits: what differs beyond is arithmetic, not data.</summary>
    internal static double Nine(double value) => double.Parse(value.ToString("E8", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static void WriteCheck(Utf8JsonWriter json, BoardReview review, ReviewedCheck one)
    {
        var check = one.Check;
        json.WriteStartObject();
        json.WriteString("key", one.Key);
        json.WriteString("rule", check.Rule);
        json.WriteString("subject", check.Subject);
        if (one.Rail.Length > 0)
        {
            json.WriteString("rail", one.Rail);
        }

        if (one.Designator is { Length: > 0 } designator)
        {
            json.WriteString("designator", designator);
        }

        json.WriteString("verdict", Word(one.Outcome));
        json.WriteString("message", check.Message);
        if (check.Waiver is { } waiver)
        {
            json.WriteStartObject("waiver");
            json.WriteString("reason", waiver.Reason);
            json.WriteString("approvedBy", waiver.ApprovedBy);
            if (waiver.Until is { } until)
            {
                json.WriteString("until", until);
            }

            json.WriteEndObject();
        }

        WriteFigure(json, "demand", check.Demand);
        WriteFigure(json, "capacity", check.Capacity);
        if (check.Margin is { } margin)
        {
            if (double.IsFinite(margin))
            {
                json.WriteNumber("margin", Nine(margin));
            }
            else
            {
                json.WriteNull("margin");
            }

            json.WriteString("marginText", Shown.Margin(margin));
        }

        json.WriteString("corner", check.Corner);
        json.WriteStartArray("working");
        foreach (var step in check.Working)
        {
            json.WriteStartObject();
            json.WriteString("quantity", step.Quantity);
            json.WriteString("formula", step.Formula);
            json.WriteString("numbers", step.Numbers);
            WriteFigure(json, "result", step.Result);
            json.WriteString("source", step.Source);
            WritePlace(json, "at", review.Written(step.Place));
            if (BoardReview.CitationOf(step.Place) is { Length: > 0 } citation)
            {
                json.WriteString("citation", citation);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("basis", check.Basis);
        if (!check.Missing.IsEmpty)
        {
            json.WriteStartArray("missing");
            foreach (var missing in check.Missing)
            {
                json.WriteStartObject();
                json.WriteString("datum", missing.Place.Datum ?? "value");
                json.WriteString("of", missing.Of);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        WriteTexts(json, "assumptions", check.Assumptions);
        WritePlace(json, "at", one.At);
        json.WriteEndObject();
    }

    private static void WriteFigure(Utf8JsonWriter json, string name, Figure? figure)
    {
        if (figure is not { } value)
        {
            return;
        }

        json.WriteStartObject(name);
        if (double.IsFinite(value.Value))
        {
            json.WriteNumber("value", Nine(value.Value));
        }
        else
        {
            json.WriteNull("value");
        }

        json.WriteString("unit", value.Unit);
        json.WriteString("text", value.Text);
        json.WriteEndObject();
    }

    private static void WritePlace(Utf8JsonWriter json, string name, SourcePlace? place)
    {
        if (place is not null)
        {
            json.WriteStartObject(name);
            json.WriteString("file", place.File);
            json.WriteNumber("line", place.Line);
            json.WriteEndObject();
        }
    }

    private static void WriteFindings(Utf8JsonWriter json, string name, IReadOnlyCollection<BoardFinding> findings)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
            json.WriteString("message", finding.Message);
            WritePlace(json, "at", finding.At);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteRails(Utf8JsonWriter json, BoardReview review)
    {
        json.WriteStartArray("rails");
        foreach (var rail in review.Rails)
        {
            json.WriteStartObject();
            json.WriteString("name", rail.Name);
            WriteTexts(json, "from", rail.From);
            WriteFigure(json, "lowestVoltage", rail.Low);
            WriteFigure(json, "highestVoltage", rail.High);
            WriteFigure(json, "transientVoltage", rail.Peak);
            WriteFigure(json, "current", rail.Current);
            WritePlace(json, "at", rail.At);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteProtections(Utf8JsonWriter json, BoardReview review)
    {
        json.WriteStartArray("protection");
        foreach (var one in review.Protections)
        {
            json.WriteStartObject();
            json.WriteString("device", one.Label);
            json.WriteString("kind", one.Kind);
            WriteTexts(json, "places", [.. one.Places.Select(place => place.ToString())]);
            WriteTexts(json, "protects", one.Protects);
            WriteTexts(json, "sources", one.Sources);
            json.WriteString("direction", one.Direction);
            if (one.Upstream is { } upstream)
            {
                json.WriteString("upstream", upstream);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IReadOnlyCollection<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
