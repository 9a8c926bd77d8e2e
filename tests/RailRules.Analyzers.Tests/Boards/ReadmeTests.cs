namespace RailRules.Analyzers.Tests.Boards;

/// <summary>The first rail of the README gives, word for word, the findings that the README shows.</summary>
public sealed class ReadmeTests
{
    [Fact]
    public async Task First_rail_gives_the_findings_shown()
    {
        var readme = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md")).ReplaceLineEndings("\n");
        var findings = await AnalyzerHost.Findings(("Cabin.cs", Block(readme, "## A first rail", "csharp")));
        var found = string.Join("\n", findings.Select(finding => AnalyzerHost.Text(finding).Replace(": RAIL", $": {finding.Severity.ToString().ToLowerInvariant()} RAIL", StringComparison.Ordinal)));
        Assert.True(found == Block(readme, "## What a finding looks like", "text").TrimEnd(), found);
    }

    private static string Block(string readme, string heading, string language)
    {
        var from = readme.IndexOf("```" + language + "\n", readme.IndexOf(heading, StringComparison.Ordinal), StringComparison.Ordinal) + language.Length + 4;
        return readme[from..readme.IndexOf("```", from, StringComparison.Ordinal)];
    }
}
