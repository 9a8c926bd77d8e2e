using System.Globalization;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace RailRules.Review.Tests;

/// <summary>The page: valid HTML (read by AngleSharp in strict mode, which throws at every parse error of the HTML standard), every figure that of its check.</summary>
[Collection(SampleCollection.Name)]
public sealed partial class PageTests(SampleReviews samples)
{
    [Fact]
    public async Task Every_figure_of_the_table_and_of_the_worksheets_is_that_of_its_check()
    {
        Assert.NotEmpty(samples.All);
        foreach (var (_, review) in samples.All)
        {
            var page = await ParseAsync(review);
            var rows = page.QuerySelectorAll("#margins tbody tr").ToList();
            Assert.Equal(review.Groups.Length, rows.Count);
            Assert.Equal(review.Checks.Length, review.Groups.Sum(group => group.Checks.Length));
            foreach (var (row, group) in rows.Zip(review.Groups))
            {
                // Whoever is told together has the same figures.
                Assert.All(group.Checks, check => AssertRow(row, check));
            }

            foreach (var outcome in Enum.GetValues<Outcome>())
            {
                var count = review.Checks.Count(check => check.Outcome == outcome) + (outcome == Outcome.Fails ? review.Findings.Count(finding => finding.Severity == Rules.RuleSeverity.Error) : 0);
                Assert.Equal(count.ToString(CultureInfo.InvariantCulture), page.QuerySelector($".counts .{outcome.ToString().ToLowerInvariant()} strong")!.TextContent);
            }

            var open = review.Groups.Where(group => group.First.Outcome is Outcome.Fails or Outcome.Undecided or Outcome.Suggestion && group.First.Check.Margin is not null).Select(group => Shown.Margin(group.First.Check.Margin));
            Assert.Equal(open.Order(StringComparer.Ordinal), page.QuerySelectorAll("#open .margin").Select(margin => margin.TextContent).Order(StringComparer.Ordinal));
            var rails = page.QuerySelectorAll("#rails tbody tr").ToList();
            Assert.All(rails, row =>
            {
                // Each rail's margin and verdict are the thinnest and the worst of its checks.
                var name = row.Children[0].QuerySelector("span")!.TextContent;
                var checks = review.Checks.Where(check => check.Rail == name && check.Check.Rail is not null).ToList();
                var margin = checks.Where(check => check.Check.Margin is not null).Select(check => check.Check.Margin!.Value).DefaultIfEmpty(double.PositiveInfinity).Min();
                Assert.Equal(double.IsInfinity(margin) ? "" : Shown.Margin(margin), row.Children[6].TextContent);
                Assert.Equal(checks.Count == 0 ? "not checked" : checks.Min(check => check.Outcome).ToString().ToLowerInvariant(), row.QuerySelector(".verdict")?.ClassList[1] ?? row.Children[7].TextContent);
            });

            var shown = page.QuerySelectorAll("#worksheets .check").ToList();
            var sheets = review.Worksheets.SelectMany(sheet => sheet.Checks).ToList();
            Assert.Equal(sheets.Count, shown.Count);
            Assert.Equal(review.Checks.Length, review.Worksheets.Sum(sheet => sheet.All.Length));
            foreach (var (section, check) in shown.Zip(sheets))
            {
                AssertWorking(section, check.Check);
            }
        }
    }

    [Fact]
    public async Task Parts_stand_in_the_order_in_which_a_reviewer_asks()
    {
        var page = await ParseAsync(samples.Of("Lockhouse.Unsafe.LockhouseShelf").Review);
        Assert.Equal(
            ["open", "tree", "rails", "margins", "worksheets", "protection", "missing", "assumptions", "waivers", "alternates", "policy", "scope", "cautions"],
            page.QuerySelectorAll("main > section").Select(section => section.Id));
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.All(page.QuerySelectorAll("table"), table => Assert.All(table.QuerySelectorAll("thead th"), head => Assert.Equal("col", head.GetAttribute("scope"))));
        Assert.Equal(page.QuerySelectorAll("[id]").Length, page.QuerySelectorAll("[id]").Select(element => element.Id).Distinct().Count());
        Assert.All(page.QuerySelectorAll("a[href^='#']"), link => Assert.NotNull(page.GetElementById(link.GetAttribute("href")![1..])));
    }

    [Fact]
    public async Task Page_needs_nothing_from_elsewhere()
    {
        foreach (var (_, review) in samples.All)
        {
            var page = await ParseAsync(review);
            Assert.Empty(page.QuerySelectorAll("link, iframe, object, embed, script[src], img, [srcset], base"));
            Assert.DoesNotContain("@import", HtmlPage.Style, StringComparison.Ordinal);
            Assert.DoesNotContain("url(", HtmlPage.Style, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Margins_stand_thin_first_after_what_is_open()
    {
        var page = await ParseAsync(samples.Of("Lockhouse.Unsafe.LockhouseShelf").Review);
        var rows = page.QuerySelectorAll("#margins tbody tr").Select(row => (Verdict: Verdict(row), Margin: row.Children[1].GetAttribute("data-v")!)).ToList();
        string[] order = ["fails", "undecided", "waived", "suggestion", "holds"];
        Assert.Equal(rows.Select(row => Array.IndexOf(order, row.Verdict)).Order(), rows.Select(row => Array.IndexOf(order, row.Verdict)));
        var holding = rows.Where(row => row.Verdict == "holds" && row.Margin.Length > 0).Select(row => row.Margin == "∞" ? double.PositiveInfinity : double.Parse(row.Margin, CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(holding.Order(), holding);
    }

    [Fact]
    public async Task No_result_is_called_more_than_holding()
    {
        foreach (var (_, review) in samples.All)
        {
            foreach (var text in new[] { await HtmlPage.WriteAsync(review), ReviewMarkdown.Write(review), ReviewJson.Write(review), ReviewSarif.Write(review), ReviewCsv.Write(review) })
            {
                // The sample's own name has the word, and a transistor has a safe operating area; a result must not be called so.
                Assert.DoesNotMatch(Claims(), SafeArea().Replace(text.Replace("Lockhouse.Unsafe", "", StringComparison.Ordinal), ""));
            }
        }
    }

    internal static async Task<IDocument> ParseAsync(BoardReview review) =>
        new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(await HtmlPage.WriteAsync(review));

    private static void AssertRow(IElement row, ReviewedCheck check)
    {
        Assert.Equal(check.Outcome.ToString().ToLowerInvariant(), Verdict(row));
        Assert.Equal(Exact(check.Check.Margin), row.Children[1].GetAttribute("data-v"));
        Assert.Equal(Shown.Margin(check.Check.Margin), row.Children[1].TextContent);
        Assert.Equal(Exact(check.Check.Demand?.Value), row.Children[4].GetAttribute("data-v"));
        Assert.Equal(check.Check.Demand?.Text ?? "", row.Children[4].TextContent);
        Assert.Equal(Exact(check.Check.Capacity?.Value), row.Children[5].GetAttribute("data-v"));
        Assert.Equal(check.Check.Capacity?.Text ?? "", row.Children[5].TextContent);
        Assert.Equal(check.Check.Corner, row.Children[6].TextContent);
        Assert.Equal(check.Check.Rule, row.Children[7].TextContent);
    }

    private static void AssertWorking(IElement section, Check check)
    {
        var terms = section.QuerySelectorAll("dt").ToDictionary(term => term.TextContent, term => term.NextElementSibling!.TextContent);
        Assert.Equal(check.Demand?.Text, terms.GetValueOrDefault("Demand"));
        Assert.Equal(check.Capacity?.Text, terms.GetValueOrDefault("Capacity"));
        Assert.Equal(check.Margin is null ? null : Shown.Margin(check.Margin), terms.GetValueOrDefault("Margin"));
        var steps = section.QuerySelectorAll("tbody tr").ToList();
        Assert.Equal(check.Working.Length, steps.Count);
        foreach (var (row, step) in steps.Zip(check.Working))
        {
            Assert.Equal(step.Quantity, row.Children[1].TextContent);
            Assert.Equal(step.Formula, row.Children[2].TextContent);
            Assert.Equal(step.Numbers, row.Children[3].TextContent);
            Assert.Equal(step.Result.Text, row.Children[4].TextContent);
        }
    }

    private static string Verdict(IElement row) => row.QuerySelector(".verdict")!.ClassList[1]!;

    private static string Exact(double? value) => value?.ToString("G9", CultureInfo.InvariantCulture) ?? "";

    [GeneratedRegex(@"\b(safe|unsafe|compliant|compliance|certified)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Claims();

    [GeneratedRegex(@"\bsafe (operating )?area", RegexOptions.IgnoreCase)]
    private static partial Regex SafeArea();
}
