using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using RailRules.Rules;

namespace RailRules.Review;

/// <summary>The review's open checks as SARIF 2.1.0 (OASIS), for code-scanning views. Paths are relative to the project (or to the root that was given).</summary>
public static class ReviewSarif
{
    private const string Help = "https://github.com/railrules/railrules/blob/main/docs/rules/";

    /// <summary>The SARIF text.</summary>
    public static string Write(BoardReview review)
    {
        var open = review.Checks.Where(check => check.Outcome != Outcome.Holds).ToList();
        var ids = open.Select(check => check.Check.Rule).Concat(review.Findings.Select(finding => finding.Rule)).Distinct().Order(StringComparer.Ordinal).ToList();
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, ReviewJson.Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json");
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            WriteTool(json, ids, open, review);
            json.WriteStartObject("originalUriBaseIds");
            json.WriteStartObject("PROJECT");
            json.WriteStartObject("description");
            json.WriteString("text", "The folder of the project that was reviewed");
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
            foreach (var finding in review.Findings)
            {
                WriteResult(json, ids, finding.Rule, finding.Severity == RuleSeverity.Error ? "error" : "warning", "fail", finding.Message, finding.At, finding.Rule + finding.Message, null);
            }

            foreach (var one in open)
            {
                var (level, kind) = one.Outcome switch
                {
                    Outcome.Fails => (one.Severity == RuleSeverity.Error ? "error" : "warning", "fail"),
                    Outcome.Undecided => ("none", "open"),
                    Outcome.Suggestion => ("note", "fail"),
                    _ => ("error", "fail"),
                };
                WriteResult(json, ids, one.Check.Rule, level, kind, one.Check.Message, one.At, one.Key, one);
            }

            json.WriteEndArray();
            json.WriteStartObject("properties");
            json.WriteString("board", review.Input.FullName);
            json.WriteString("project", review.Input.Project);
            json.WriteString("fingerprint", review.Input.Fingerprint);
            json.WriteString("verdict", ReviewJson.Word(review.Verdict));
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void WriteTool(Utf8JsonWriter json, List<string> ids, List<ReviewedCheck> open, BoardReview review)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", BoardReview.Tool);
        json.WriteString("version", BoardReview.Version);
        json.WriteString("semanticVersion", BoardReview.Version);
        json.WriteString("informationUri", "https://github.com/railrules/railrules");
        json.WriteStartArray("rules");
        foreach (var id in ids)
        {
            var severity = open.FirstOrDefault(check => check.Check.Rule == id)?.Severity ?? review.Findings.FirstOrDefault(finding => finding.Rule == id)?.Severity ?? RuleSeverity.Error;
            json.WriteStartObject();
            json.WriteString("id", id);
            json.WriteStartObject("shortDescription");
            json.WriteString("text", Texts.TitleOf(id));
            json.WriteEndObject();
            if (id.StartsWith("RAIL", StringComparison.Ordinal))
            {
                json.WriteString("helpUri", Help + id + ".md");
            }

            json.WriteStartObject("defaultConfiguration");
            json.WriteString("level", severity switch { RuleSeverity.Error => "error", RuleSeverity.Warning => "warning", _ => "note" });
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteResult(Utf8JsonWriter json, List<string> ids, string rule, string level, string kind, string message, SourcePlace? at, string key, ReviewedCheck? check)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", rule);
        json.WriteNumber("ruleIndex", ids.IndexOf(rule));
        json.WriteString("kind", kind);
        json.WriteString("level", level);
        json.WriteStartObject("message");

        // In SARIF's plain text, brackets would be a link and braces a placeholder.
        json.WriteString("text", Shown.Text(message).Replace("\\", "\\\\", StringComparison.Ordinal).Replace("[", "\\[", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal).Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal));
        json.WriteEndObject();
        if (at is not null)
        {
            json.WriteStartArray("locations");
            json.WriteStartObject();
            json.WriteStartObject("physicalLocation");
            json.WriteStartObject("artifactLocation");
            json.WriteString("uri", string.Join('/', at.File.Split('/').Select(Uri.EscapeDataString)));
            json.WriteString("uriBaseId", "PROJECT");
            json.WriteEndObject();
            json.WriteStartObject("region");
            json.WriteNumber("startLine", at.Line);
            json.WriteNumber("startColumn", at.Column);
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteStartObject("partialFingerprints");
        json.WriteString("railRulesKey/v1", Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)))[..32]);
        json.WriteEndObject();
        if (check is { Outcome: Outcome.Waived })
        {
            json.WriteStartArray("suppressions");
            json.WriteStartObject();
            json.WriteString("kind", "inSource");
            json.WriteString("justification", check.Check.Waiver?.Text);
            json.WriteEndObject();
            json.WriteEndArray();
        }

        if (check?.Check.Margin is { } margin && double.IsFinite(margin))
        {
            json.WriteStartObject("properties");
            json.WriteNumber("margin", ReviewJson.Nine(margin));
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
