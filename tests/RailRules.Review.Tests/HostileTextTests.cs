using System.Text.Json.Nodes;
using Markdig;
using RailRules.Tool;

namespace RailRules.Review.Tests;

/// <summary>Names are text, whatever they hold: markup, control and direction characters, 10,000 letters, formulas.</summary>
public sealed class HostileTextTests
{
    private static readonly string[] Names =
    [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "</style></svg><b>",
        "]]>--><!--",
        "a\u202Eb\u2066c\u200F",
        "bell\u0007 nul\u0000 esc\u001B[31m",
        "=cmd|' /C calc'!A0",
        "| a | b |\n|---|---|",
        "[link](https://example.org) ![img](x) `code` *b* @all #1",
        new string('W', 10_000),
        "\uD800 alone",
        "{0} {{1}} [x](1)",
    ];

    [Fact]
    public async Task Page_shows_them_as_text()
    {
        foreach (var name in Names)
        {
            var review = Of(name);
            var html = await HtmlPage.WriteAsync(review);
            var page = await PageTests.ParseAsync(review);
            Assert.Single(page.QuerySelectorAll("script"));
            Assert.Single(page.QuerySelectorAll("style"));
            Assert.Empty(page.QuerySelectorAll("img, b"));
            Assert.DoesNotContain(html, c => char.IsControl(c) && c != '\n');
            Assert.DoesNotContain('\u202E', html);
            Assert.Contains(Shown.Short(name, 40)[..Math.Min(5, name.Length)], page.Body!.TextContent, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Markdown_makes_neither_markup_nor_links_of_them()
    {
        var pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseAutoLinks().Build();
        foreach (var name in Names)
        {
            var html = Markdown.ToHtml(ReviewMarkdown.Write(Of(name)), pipeline);
            var page = new AngleSharp.Html.Parser.HtmlParser().ParseDocument(html);
            Assert.Empty(page.QuerySelectorAll("script, img, b, em, a, style, svg"));
            Assert.All(page.QuerySelectorAll("table"), table => Assert.All(table.QuerySelectorAll("tbody tr"), row => Assert.Equal(table.QuerySelectorAll("thead th").Length, row.Children.Length)));
        }
    }

    [Fact]
    public void Data_files_keep_their_form()
    {
        foreach (var name in Names)
        {
            var review = Of(name);
            Schemas.AssertValid(Schemas.Review, ReviewJson.Write(review));
            Schemas.AssertValid(Schemas.Sarif, ReviewSarif.Write(review));
            if (!name.Any(char.IsSurrogate))
            {
                // Programs get the name itself; half a character there is none to give.
                Assert.Equal(name, (string?)JsonNode.Parse(ReviewJson.Write(review))!["board"]!["name"]);
            }

            var csv = ReviewCsv.Write(review);
            using var reader = new CsvHelper.CsvReader(new StringReader(csv), System.Globalization.CultureInfo.InvariantCulture);
            var lines = reader.GetRecords<dynamic>().Cast<IDictionary<string, object>>().ToList();
            Assert.Equal(review.Checks.Length, lines.Count);
            Assert.All(lines.SelectMany(line => line.Values.Cast<string>()), cell => Assert.False(cell.StartsWith('=') || cell.StartsWith('@'), cell));
        }
    }

    /// <summary>Nothing in a name steers the terminal or the file system, nor is it taken for the terminal's own markup.</summary>
    [Fact]
    public void Terminal_and_file_names_are_plain()
    {
        var reviews = Names.Select(Of).ToList();
        var names = Tool.Output.Names([.. reviews.Select(review => review.Input)]);
        Assert.Equal(names.Count, names.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(names, name => Assert.Matches(@"\A[\w.-]{1,130}\z", name));
        using var output = new StringWriter();
        var options = new ReviewOptions("", "out", ["html"], new BuildOptions(null, null, Restore: false), null, false, false, null, null);
        Terminal.Sum(output, [.. names.Zip(reviews, (name, review) => new NamedReview(name, review))], [], options);
        Assert.DoesNotContain(output.ToString(), c => (char.IsControl(c) && c is not ('\n' or '\r')) || c is '\u202E' or '\u2066' or '\u200F');
        Assert.Contains("[link](https://example.org)", output.ToString(), StringComparison.Ordinal);
    }

    private static BoardReview Of(string name)
    {
        var supply = new Supply { Name = name, Voltage = Band.Of(43.Volts(), 57.Volts()), TransientMax = 60.Volts(), Citation = name };
        var rail = new Rail
        {
            Name = name,
            From = supply,
            Path = [new Fuse { Name = name, RatedCurrent = 20.Amperes(), DcVoltageRating = 58.Volts(), Citation = name, Designator = name }],
            Loads = [new() { Name = name, Power = 600.Watts(), MaxVoltage = 75.Volts() }],
        };
        return BoardReview.Of(new BoardInput { Name = name, FullName = name, Project = name, Rails = [rail], Checks = Engine.Check([rail]), At = new SourcePlace(name, 1, 1) });
    }
}
