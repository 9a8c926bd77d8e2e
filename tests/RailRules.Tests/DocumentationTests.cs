using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using RailRules.Rules;
using RailRules.Tests.Reference;

namespace RailRules.Tests;

/// <summary>Pages and index agree with the rules, and the worked examples with what the rules compute.</summary>
public sealed partial class DocumentationTests
{
    private sealed record Described(string Id, string Title, string Severity);

    /// <summary>The rules on the model, by their own descriptions, and those of the analyzer, as its source states them.</summary>
    private static readonly IReadOnlyDictionary<string, Described> Rules = Registry.All
        .Select(rule => new Described(rule.Description.Id, rule.Description.Title, Word(rule.Description.Severity)))
        .Concat(Foundation().Matches(File.ReadAllText(Repository.PathOf("analyzers", "RailRules.Analyzers", "FoundationRules.cs")))
            .Select(match => new Described(match.Groups[1].Value, match.Groups[2].Value, match.Groups[3].Value.ToLowerInvariant())))
        .ToDictionary(rule => rule.Id);

    private static readonly string[] Sections =
        ["What it finds", "Why it matters", "What is compared", "Worked example", "How to fix it", "Severity and waivers", "What it ignores", "When it is undecided", "Source"];

    public static TheoryData<string> Ids() => [.. Rules.Keys];

    public static TheoryData<string> Examples() => [.. ExampleTypes().Select(type => "RAIL" + type.Name["Rail".Length..])];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_rule_has_a_page_with_its_title_severity_and_sections(string id)
    {
        var lines = Page(id).Split('\n');
        Assert.Equal($"# {id}: {Rules[id].Title}", lines[0]);
        Assert.StartsWith($"Default severity: **{Rules[id].Severity}**.", lines[2], StringComparison.Ordinal);
        Assert.Equal(Sections, lines.Where(line => line.StartsWith("## ", StringComparison.Ordinal)).Select(line => line[3..]));
        Assert.Contains($"dotnet_diagnostic.{id}.severity = ", Page(id), StringComparison.Ordinal);
        Assert.Contains("Results are a design aid", lines[^2], StringComparison.Ordinal);
        Assert.DoesNotMatch(Forbidden(), Page(id));
    }

    [Fact]
    public void The_index_lists_every_page_and_nothing_else()
    {
        var listed = IndexRow().Matches(File.ReadAllText(Repository.PathOf("docs", "rules", "README.md"))).Select(match => new Described(match.Groups[1].Value, match.Groups[2].Value, match.Groups[3].Value)).ToList();
        Assert.Equal(Rules.Values.OrderBy(rule => rule.Id, StringComparer.Ordinal), listed);
        Assert.Equal(listed.Select(rule => rule.Id), Directory.GetFiles(Repository.PathOf("docs", "rules"), "RAIL*.md").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal));
    }

    /// <summary>The page shows the source of a board of this assembly and, below it, every check of the rule on it with its working.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void The_worked_example_is_what_the_rule_computes(string id)
    {
        var name = "Rail" + id["RAIL".Length..];
        var example = Page(id).Split("## Worked example")[1].Split("\n## ")[0];
        var source = File.ReadAllText(Repository.PathOf("tests", "RailRules.Tests", "Documentation", "Examples", name + ".cs"));
        Assert.Equal(source[source.IndexOf("/// <summary>Invented", StringComparison.Ordinal)..].Trim(), Block(example, "csharp"));
        Assert.Equal(Said(id, name), Block(example, "text"));
    }

    [Fact]
    public void Every_rule_on_the_model_has_a_worked_example() =>
        Assert.Equal(Registry.All.Select(rule => rule.Description.Id), ExampleTypes().Select(type => "RAIL" + type.Name["Rail".Length..]).Order(StringComparer.Ordinal));

    /// <summary>The checks of a rule on an example, each with margin and working.</summary>
    private static string Said(string id, string name)
    {
        var board = ExampleTypes().Single(type => type.Name == name);
        var fields = board.GetFields(BindingFlags.Static | BindingFlags.NonPublic);
        var options = new CheckOptions
        {
            Members = [.. fields.Select(field => new BoardMember(field.Name, [field.GetValue(null)!]))],
            Waivers = [.. board.GetCustomAttributes<WaiverAttribute>().Select(waiver => new Waiver(waiver.Rule) { On = waiver.On, Reason = waiver.Reason, ApprovedBy = waiver.ApprovedBy, Until = waiver.Until })],
            Today = new DateTime(2026, 7, 1, 0, 0, 0, DateTimeKind.Unspecified),
        };
        var text = new StringBuilder();
        foreach (var check in Engine.Check(fields.Select(field => field.GetValue(null)).OfType<Rail>(), options).Where(check => check.Rule == id))
        {
            text.Append(check.Verdict.ToString().ToLowerInvariant());
            text.Append(check.Margin is { } margin ? $", margin {Figures.Text(margin, "×")}: " : ": ").Append(check.Message).Append('\n');
            foreach (var step in check.Working)
            {
                text.Append("    ").Append(step.Quantity).Append(" = ").Append(step.Numbers.Length > 0 ? step.Numbers + " = " : "").Append(step.Result.Text);
                text.Append(step.Source.Length > 0 ? $" ({step.Source})" : "").Append('\n');
            }
        }

        return text.ToString().Trim();
    }

    private static string Page(string id) => File.ReadAllText(Repository.PathOf("docs", "rules", id + ".md"));

    private static string Block(string text, string language)
    {
        var start = text.IndexOf("```" + language + "\n", StringComparison.Ordinal) + language.Length + 4;
        return text[start..text.IndexOf("\n```", start, StringComparison.Ordinal)].Trim();
    }

    private static IEnumerable<Type> ExampleTypes() =>
        typeof(DocumentationTests).Assembly.GetTypes().Where(type => type.Namespace == "RailRules.Tests.Documentation.Examples" && type.GetCustomAttribute<BoardAttribute>() is not null);

    private static string Word(RuleSeverity severity) => severity.ToString().ToLowerInvariant();

    [GeneratedRegex("\"(RAIL\\d{4})\", \"([^\"]+)\", RuleSeverity\\.(\\w+)")]
    private static partial Regex Foundation();

    [GeneratedRegex(@"^\| \[(RAIL\d{4})\]\(\1\.md\) \| (.+?) \| (\w+) \|$", RegexOptions.Multiline)]
    private static partial Regex IndexRow();

    /// <summary>No page says of a result that it is one of these.</summary>
    [GeneratedRegex(@"\b(is|are) (safe|compliant|certified)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Forbidden();
}
