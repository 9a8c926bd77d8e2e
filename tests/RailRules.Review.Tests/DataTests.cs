using System.Globalization;
using System.Text.Json.Nodes;
using CsvHelper;

namespace RailRules.Review.Tests;

/// <summary>JSON by its published schema and SARIF by that of the standard (both read by JsonSchema.Net), CSV by CsvHelper.</summary>
[Collection(SampleCollection.Name)]
public sealed class DataTests(SampleReviews samples)
{
    [Fact]
    public void Json_is_valid_and_has_every_check_with_its_figures()
    {
        foreach (var (_, review) in samples.All)
        {
            var text = ReviewJson.Write(review);
            Schemas.AssertValid(Schemas.Review, text);
            var json = JsonNode.Parse(text)!;
            var checks = json["checks"]!.AsArray();
            Assert.Equal(review.Input.Checks.Count(check => check.Rule != "RAIL0004"), checks.Count);
            foreach (var (node, one) in checks.Zip(review.Checks))
            {
                Assert.Equal(one.Check.Subject, (string?)node!["subject"]);
                Near(one.Check.Demand?.Value, (double?)node["demand"]?["value"]);
                Near(one.Check.Capacity?.Value, (double?)node["capacity"]?["value"]);
                Near(one.Check.Margin, node["margin"] is null && node["marginText"] is not null ? double.PositiveInfinity : (double?)node["margin"]);
                Assert.Equal(one.Check.Working.Length, node["working"]!.AsArray().Count);
                foreach (var (step, working) in node["working"]!.AsArray().Zip(one.Check.Working))
                {
                    Near(working.Result.Value, (double?)step!["result"]!["value"] ?? double.PositiveInfinity);
                }
            }
        }
    }

    /// <summary>A waived finding is waived, not undecided, and every form of the review says why and by whom.</summary>
    [Fact]
    public async Task A_waiver_is_told_with_reason_and_approver_once()
    {
        const string Reason = "runs at half load until the larger fuse arrives";
        var review = samples.Of("Lockhouse.Unsafe.LockhouseShelf").Review;
        Assert.DoesNotContain(review.Findings, finding => finding.Rule == "RAIL0015");
        var waived = Assert.Single(review.Checks, check => check.Outcome == Outcome.Waived);
        Assert.Contains(Reason + " (approved by protection engineer)", waived.Said, StringComparison.Ordinal);
        var json = JsonNode.Parse(ReviewJson.Write(review))!["checks"]!.AsArray().Single(check => (string?)check!["verdict"] == "waived")!["waiver"]!;
        Assert.Equal((Reason, "protection engineer"), ((string?)json["reason"], (string?)json["approvedBy"]));
        foreach (var name in Tool.Formats.All.Keys)
        {
            Assert.Contains(Reason, await Tool.Formats.All[name].Write(review), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Json_schema_refuses_what_is_no_review()
    {
        var json = JsonNode.Parse(ReviewJson.Write(samples.Of("Lockhouse.Unsafe.LockhouseShelf").Review))!;
        json["checks"]!.AsArray()[0]!["verdict"] = "approved";
        Assert.NotEmpty(Schemas.Errors(Schemas.Review, json.ToJsonString()));
    }

    [Fact]
    public void Keys_are_unique_on_a_board()
    {
        foreach (var (_, review) in samples.All)
        {
            Assert.Equal(review.Checks.Length, review.Checks.Select(check => check.Key).Distinct().Count());
        }
    }

    [Fact]
    public void Every_check_of_a_sample_has_file_and_line()
    {
        foreach (var (_, review) in samples.All)
        {
            Assert.All(review.Checks, check =>
            {
                Assert.NotNull(check.At);
                Assert.False(Path.IsPathRooted(check.At.File), check.At.File);
                Assert.True(File.Exists(Path.Combine(Repository.Root, "samples", review.Input.Project, check.At.File)), check.At.File);
            });
        }
    }

    [Fact]
    public void Sarif_is_valid_by_its_schema()
    {
        foreach (var (_, review) in samples.All)
        {
            Schemas.AssertValid(Schemas.Sarif, ReviewSarif.Write(review));
        }

        var sarif = JsonNode.Parse(ReviewSarif.Write(samples.Of("Lockhouse.Unsafe.LockhouseShelf").Review))!;
        sarif["runs"]![0]!["results"]![0]!["kind"] = "undecided";
        Assert.NotEmpty(Schemas.Errors(Schemas.Sarif, sarif.ToJsonString()));
    }

    /// <summary>What SARIF 2.1.0 demands beyond its schema (OASIS, sections 3.13, 3.14, 3.19, 3.27).</summary>
    [Fact]
    public void Sarif_has_the_structure_of_the_standard()
    {
        foreach (var (_, review) in samples.All)
        {
            var sarif = JsonNode.Parse(ReviewSarif.Write(review))!;
            Assert.Equal("2.1.0", (string?)sarif["version"]);
            var run = Assert.Single(sarif["runs"]!.AsArray())!;
            var rules = run["tool"]!["driver"]!["rules"]!.AsArray().Select(rule => (string)rule!["id"]!).ToList();
            Assert.Equal(rules.Distinct(), rules);
            Assert.Equal(review.Findings.Length + review.Checks.Count(check => check.Outcome != Outcome.Holds), run["results"]!.AsArray().Count);
            foreach (var result in run["results"]!.AsArray())
            {
                Assert.Equal((string?)result!["ruleId"], rules[(int)result["ruleIndex"]!]);
                Assert.Contains((string?)result["kind"], new[] { "fail", "open" });
                Assert.True((string?)result["kind"] == "fail" || (string?)result["level"] == "none", "a level belongs to failing results only (3.27.10)");
                Assert.NotEmpty((string)result["message"]!["text"]!);
                var place = result["locations"]![0]!["physicalLocation"]!;
                Assert.True(Uri.TryCreate((string)place["artifactLocation"]!["uri"]!, UriKind.Relative, out _));
                Assert.True((int)place["region"]!["startLine"]! >= 1 && (int)place["region"]!["startColumn"]! >= 1);
            }
        }
    }

    [Fact]
    public void Csv_has_a_line_for_each_check()
    {
        foreach (var (_, review) in samples.All)
        {
            using var reader = new CsvReader(new StringReader(ReviewCsv.Write(review)), CultureInfo.InvariantCulture);
            var lines = reader.GetRecords<dynamic>().Cast<IDictionary<string, object>>().ToList();
            Assert.Equal(review.Checks.Length + review.Findings.Length, lines.Count);
            foreach (var (line, one) in lines.Zip(review.Checks))
            {
                Assert.Equal(one.Check.Rule, line["rule"]);
                Assert.Equal(one.Check.Demand is { } demand ? ReviewJson.Nine(demand.Value).ToString("R", CultureInfo.InvariantCulture) : "", line["demand"]);
                Assert.Equal(one.At?.Line.ToString(CultureInfo.InvariantCulture), line["line"]);
            }
        }
    }

    /// <summary>What spreadsheets take for a formula: OWASP, "CSV Injection" (=, +, -, @, tab, carriage return; from memory).</summary>
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+49", "'+49")]
    [InlineData("-cmd", "'-cmd")]
    [InlineData("-40", "-40")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "\"' =1\"")]
    [InlineData("'Reed20' on rail", "'Reed20' on rail")]
    public void Csv_cell_is_no_formula(string text, string cell) => Assert.Equal(cell.Trim('"'), ReviewCsv.Cell(text).Trim('"'));

    private static void Near(double? expected, double? actual)
    {
        Assert.Equal(expected is null, actual is null);
        if (expected is { } value && double.IsFinite(value))
        {
            Assert.Equal(value, actual!.Value, Math.Abs(value) * 1e-8);
        }
    }
}
