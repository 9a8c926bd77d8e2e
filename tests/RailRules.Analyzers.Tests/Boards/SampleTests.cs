using System.Globalization;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Tests.Boards;

/// <summary>The sound sample has no findings; its unsafe twin has exactly those that its comments name, with the numbers that matter.</summary>
public sealed class SampleTests
{
    private static readonly Lazy<Task<System.Collections.Immutable.ImmutableArray<Diagnostic>>> Unsafe = new(() => AnalyzerHost.Findings(Read("Lockhouse.Unsafe")));

    [Fact]
    public async Task Sound_sample_has_no_findings()
    {
        var findings = await AnalyzerHost.Findings(Read("Lockhouse"));
        Assert.True(findings.IsEmpty, string.Join("\n", findings.Select(AnalyzerHost.Text)));
    }

    [Fact]
    public async Task Unsafe_sample_has_one_finding_a_mistake_at_its_line()
    {
        var files = Read("Lockhouse.Unsafe");
        var expected = files
            .SelectMany(file => file.Text.Split('\n').Select((line, index) => (file.Path, Line: index + 1, Mark: line.IndexOf("// RAIL", StringComparison.Ordinal), Text: line)))
            .Where(item => item.Mark >= 0)
            .Select(item => $"{item.Path}({item.Line}): {item.Text[(item.Mark + 3)..].Trim()}")
            .Order(StringComparer.Ordinal);
        var findings = await Unsafe.Value;
        var found = findings.Select(finding => $"{finding.Location.GetLineSpan().Path}({finding.Location.GetLineSpan().StartLinePosition.Line + 1}): {finding.Id}").Order(StringComparer.Ordinal);
        Assert.True(expected.SequenceEqual(found), "expected:\n" + string.Join("\n", expected) + "\nfound:\n" + string.Join("\n", findings.Select(AnalyzerHost.Text)));
    }

    [Theory]
    [InlineData("RAIL0001", "File.ReadAllText", "not on the list")]
    [InlineData("RAIL0002", "'Pump'", "5 000 000")]
    [InlineData("RAIL0003", "SwappedTrace", "1.5 mΩ", "500 µΩ")]
    [InlineData("RAIL0004", "SledUnknown", "DcVoltageRating", "Alder25")]
    [InlineData("RAIL0007", "SledOvervoltage", "SledTwice", "F11")]
    [InlineData("RAIL0008", "SledTwice", "no longer needed", "margin 1.1")]
    [InlineData("RAIL0009", "'Pump'", "Forgotten")]
    [InlineData("RAIL0010", "no fuse for F33")]
    [InlineData("RAIL0011", "Late")]
    [InlineData("RAIL0012", "'Pump' is not static")]
    [InlineData("RAIL0015", "RAIL0201", "Reed20", "until the larger fuse arrives", "protection engineer")]
    [InlineData("RAIL0101", "Reed25Low", "SledOvervoltage", "60 V", "58 V")]
    [InlineData("RAIL0102", "Mains25", "250 V", "60 V")]
    [InlineData("RAIL0104", "LowClamp", "SledClamped", "54 V", "57 V")]
    [InlineData("RAIL0201", "Reed20", "SledOverloaded", "0.75", "0.86", "55 °C", "12.9 A")]
    [InlineData("RAIL0202", "Rush25", "55 °C", "25 °C")]
    [InlineData("RAIL0203", "Moss25", "-5 °C", "0 °C")]
    [InlineData("RAIL0301", "Reed25Weak", "SledWeak", "1 kA", "80 V")]
    [InlineData("RAIL0302", "Reed25", "Signals", "33.8 A", "29 A", "source limit")]
    [InlineData("RAIL0303", "Lag25", "FarLamps", "5 s is allowed")]
    [InlineData("RAIL0304", "Weir200", "Sluice300", "Reserve", "18000 A²s")]
    [InlineData("RAIL0306", "Reed25Quick", "SledQuick", "20 kA", "100 µs")]
    [InlineData("RAIL0307", "LampCable", "Plant")]
    [InlineData("RAIL0308", "WinchCable", "between", "bears 76 A")]
    [InlineData("RAIL0501", "Sled", "SledSagging", "40 V")]
    [InlineData("RAIL0504", "SledStarved", "600 W", "43 V")]
    [InlineData("RAIL0601", "Tinder25", "HB", "V-1")]
    [InlineData("RAIL0602", "Reed25", "SledUnqualified", "Lock-2")]
    [InlineData("RAIL0603", "Clip25", "a clip", "10 m/s²", "15 m/s²")]
    [InlineData("RAIL0910", "LOCK001: 'Hearsay25'", "SledHearsay", "no citation")]
    [InlineData("RAIL0701", "Reed25Low", "Reed25OrLow", "SledSecondSource", "RAIL0101", "58 V", "1.33 ×")]
    public async Task Messages_of_the_unsafe_sample_say_part_and_numbers(string id, params string[] words)
    {
        var findings = await Unsafe.Value;
        var message = findings.First(finding => finding.Id == id).GetMessage(CultureInfo.InvariantCulture);
        Assert.All(words, word => Assert.Contains(word, message, StringComparison.Ordinal));
    }

    /// <summary>An editor asks for one document at a time and shows only what is reported inside it.</summary>
    [Theory]
    [InlineData("Lockhouse")]
    [InlineData("Lockhouse.Unsafe")]
    public async Task Findings_by_document_are_those_of_the_whole(string sample)
    {
        var compilation = AnalyzerHost.Compile(Read(sample));
        var whole = await AnalyzerHost.Findings(compilation);
        var byDocument = await AnalyzerHost.FindingsByDocument(compilation);
        Assert.Equal(whole.Select(AnalyzerHost.Text), byDocument.Select(AnalyzerHost.Text));
    }

    [Fact]
    public async Task Every_finding_has_a_page_of_help()
    {
        foreach (var finding in await Unsafe.Value)
        {
            Assert.EndsWith($"docs/rules/{finding.Id}.md", finding.Descriptor.HelpLinkUri, StringComparison.Ordinal);
            Assert.NotEqual(Location.None, finding.Location);
        }
    }

    private static (string Path, string Text)[] Read(string sample) =>
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Samples", sample), "*.cs").Order(StringComparer.Ordinal).Select(file => (Path.GetFileName(file), File.ReadAllText(file).ReplaceLineEndings("\n")))];
}
