using System.Text.Json.Nodes;

namespace RailRules.Review.Tests;

/// <summary>The command as a user runs it, in folders of its own; the exit codes are those that docs/review.md promises.</summary>
public sealed class ToolTests
{
    /// <summary>docs/waivers.md: no clock is read; the end of a waiver is judged against the day that the build or the command names.</summary>
    [Fact]
    public async Task A_dated_waiver_is_judged_on_the_day_that_is_named()
    {
        const string Waiver = """[Waiver("RAIL0201", Reason = "runs at half load", ApprovedBy = "protection engineer", Until = "2027-06-30")]""";
        using var project = new ScratchProject().With(ScratchProject.TooSmall.Replace("[Board]", "[Board]\n" + Waiver, StringComparison.Ordinal));

        var undated = (await project.ReviewAsync("--strict", "--format", "json,markdown,html")).Ends(2);
        Assert.Contains("whether that is past is not judged", Read("LockhouseShelf.json"), StringComparison.Ordinal);
        Assert.Contains("1 undecided", undated.Output, StringComparison.Ordinal);
        foreach (var file in new[] { "LockhouseShelf.md", "LockhouseShelf.html" })
        {
            Assert.Contains("whether a dated waiver is past its end was not judged", Read(file), StringComparison.Ordinal);
        }

        Assert.Null(Json()["board"]!["today"]);

        (await project.ReviewAsync("--no-restore", "--strict", "--format", "json,markdown", "--today", "2027-06-30")).Ends(0);
        Assert.Equal("2027-06-30", (string?)Json()["board"]!["today"]);
        Assert.Contains("Waivers were judged as of 2027-06-30.", Read("LockhouseShelf.md"), StringComparison.Ordinal);
        Assert.Contains("waived", Verdicts());

        // The same from the build: MSBuild's property reaches the command as it reaches the compiler.
        project.Write("Directory.Build.props", "<Project><PropertyGroup><RailRulesToday>2027-07-01</RailRulesToday></PropertyGroup></Project>");
        (await project.ReviewAsync("--no-restore", "--strict", "--format", "json")).Ends(1);
        Assert.Equal("2027-07-01", (string?)Json()["board"]!["today"]);
        Assert.DoesNotContain("waived", Verdicts());
        Assert.Contains(Json()["checks"]!.AsArray(), check => (string?)check!["rule"] == "RAIL0008" && (string?)check["verdict"] == "fails");

        (await project.ReviewAsync("--no-restore", "--strict", "--today", "2027-01-31")).Ends(0);
        Assert.Contains("is no date", (await project.ReviewAsync("--today", "31.1.2027")).Ends(3).Error, StringComparison.Ordinal);

        string Read(string file) => File.ReadAllText(Path.Combine(project.Output, file));
        JsonNode Json() => JsonNode.Parse(Read("LockhouseShelf.json"))!;
        IEnumerable<string?> Verdicts() => Json()["checks"]!.AsArray().Select(check => (string?)check!["verdict"]);
    }
}
