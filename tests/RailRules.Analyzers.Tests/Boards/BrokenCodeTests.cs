using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace RailRules.Analyzers.Tests.Boards;

/// <summary>Half-typed and malformed files give diagnostics of the compiler and ours, never an exception of the analyzer (the host rethrows it).</summary>
public sealed class BrokenCodeTests
{
    /// <summary>Cuts, deletions and swaps of tokens of every sample under one fixed seed.</summary>
    [Fact]
    public Task Cut_deleted_and_swapped_tokens_never_throw() => Damaged(0, 750);

    /// <summary>More of the same.</summary>
    [NightlyFact]
    public Task Many_cut_deleted_and_swapped_tokens_never_throw() => Damaged(750, 3000);

    private static async Task Damaged(int first, int end)
    {
        var samples = Samples();
        var random = new Random(20260101);
        for (var i = 0; i < end; i++)
        {
            var sample = samples[i % samples.Length];
            var file = random.Next(sample.Length);
            var damaged = Damage(sample[file].Text, random);
            if (i >= first)
            {
                await Analyze(sample, file, damaged);
            }
        }
    }

    /// <summary>Each sample cut at every token.</summary>
    [NightlyFact]
    public async Task Every_cut_of_every_sample_never_throws()
    {
        foreach (var sample in Samples())
        {
            for (var file = 0; file < sample.Length; file++)
            {
                foreach (var token in CSharpSyntaxTree.ParseText(sample[file].Text).GetRoot().DescendantTokens())
                {
                    await Analyze(sample, file, sample[file].Text[..token.SpanStart]);
                }
            }
        }
    }

    private static async Task Analyze((string Path, string Text)[] sample, int file, string damaged)
    {
        var trees = sample.Select((item, index) => AnalyzerHost.Parse(item.Path, index == file ? damaged : item.Text)).ToImmutableArray();
        var compilation = AnalyzerHost.Compile(trees);
        var findings = await AnalyzerHost.Findings(compilation);
        Assert.DoesNotContain(findings, finding => finding.Id == "AD0001");
        Assert.DoesNotContain(findings, finding => finding.GetMessage(System.Globalization.CultureInfo.InvariantCulture) is var text && (text.Contains("internal error", StringComparison.Ordinal) || text.Contains("internal: ", StringComparison.Ordinal)));
    }

    private static string Damage(string text, Random random)
    {
        var tokens = CSharpSyntaxTree.ParseText(text).GetRoot().DescendantTokens().Where(token => token.Span.Length > 0).ToList();
        var first = tokens[random.Next(tokens.Count)];
        switch (random.Next(3))
        {
            case 0:
                return text[..first.SpanStart];
            case 1:
                return text.Remove(first.SpanStart, first.Span.Length);
            default:
                var second = tokens[random.Next(tokens.Count)];
                var (a, b) = first.SpanStart <= second.SpanStart ? (first, second) : (second, first);
                if (a == b)
                {
                    return text.Remove(a.SpanStart, a.Span.Length);
                }

                return new StringBuilder(text).Remove(b.SpanStart, b.Span.Length).Insert(b.SpanStart, a.Text).Remove(a.SpanStart, a.Span.Length).Insert(a.SpanStart, b.Text).ToString();
        }
    }

    /// <summary>The cabin and its unsafe twin; the loop that never ends is made to, since its budget is tested elsewhere and 3,000 times is too often.</summary>
    private static (string Path, string Text)[][] Samples() =>
    [
        .. new[] { "Lockhouse", "Lockhouse.Unsafe" }.Select(sample => Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Samples", sample), "*.cs").Order(StringComparer.Ordinal)
            .Select(file => (Path.GetFileName(file), File.ReadAllText(file).Replace("while (sum >= 0)", "while (sum < 0)", StringComparison.Ordinal))).ToArray()),
    ];
}
