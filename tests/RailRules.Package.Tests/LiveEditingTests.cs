using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using Xunit.Abstractions;

namespace RailRules.Package.Tests;

/// <summary>The package in a real language server, as an editor starts it.</summary>
[Collection(PackageCollection.Name)]
public sealed class LiveEditingTests(PackageFeed feed, ITestOutputHelper output)
{
    private const int Edits = 5;

    [Fact]
    public async Task The_finding_comes_with_the_mistake_and_goes_with_its_correction()
    {
        var consumer = new Consumer(feed, "Live editing", "<TargetFramework>net10.0</TargetFramework>");
        var file = consumer.Write("BladeShelf.cs", Sources.Unsound);
        consumer.Restore().Succeeds();
        var document = new JsonObject { ["uri"] = new Uri(file).AbsoluteUri };

        await using var server = await LanguageServer.StartAsync(consumer.Folder);
        await server.NotifyAsync("textDocument/didOpen", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = new Uri(file).AbsoluteUri, ["languageId"] = "csharp", ["version"] = 1, ["text"] = Sources.Unsound },
        });
        var clock = Stopwatch.StartNew();
        var finding = Assert.Single(await PullAsync(server, document, isThere: true));
        var first = clock.Elapsed;
        Assert.Equal("RAIL0101", (string?)finding["code"]);
        Assert.Equal(1, (int)finding["severity"]!);
        Assert.Equal(Sources.UnsoundLine - 1, (int)finding["range"]!["start"]!["line"]!);
        Assert.Equal("'Sallow25' on rail 'Blade' can meet 60 V (transient); it is rated 32 V DC", (string?)finding["message"]);

        // The rating, back and forth: over the protocol, the file on disk stays as it is.
        var lines = Sources.Unsound.Split('\n');
        var line = Array.FindIndex(lines, text => text.Contains("32.Volts()", StringComparison.Ordinal));
        var column = lines[line].IndexOf("32.Volts()", StringComparison.Ordinal);
        List<double> latencies = [];
        for (var edit = 0; edit < Edits; edit++)
        {
            var isThere = edit % 2 == 1;
            clock.Restart();
            await server.NotifyAsync("textDocument/didChange", new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = new Uri(file).AbsoluteUri, ["version"] = 2 + edit },
                ["contentChanges"] = new JsonArray(new JsonObject
                {
                    ["range"] = new JsonObject
                    {
                        ["start"] = new JsonObject { ["line"] = line, ["character"] = column },
                        ["end"] = new JsonObject { ["line"] = line, ["character"] = column + 2 },
                    },
                    ["text"] = isThere ? "32" : "80",
                }),
            });
            Assert.Equal(isThere ? 1 : 0, (await PullAsync(server, document, isThere)).Length);
            latencies.Add(clock.Elapsed.TotalMilliseconds);
        }

        var record = string.Create(CultureInfo.InvariantCulture, $"first finding {first.TotalSeconds:0.0} s after opening; after an edit, ms: {string.Join(", ", latencies.Select(value => value.ToString("0", CultureInfo.InvariantCulture)))}");
        output.WriteLine(record);
        var results = Directory.CreateDirectory(Path.Combine(Repository.Root, "artifacts", "test-results")).FullName;
        await File.WriteAllTextAsync(Path.Combine(results, "language-server-latency.txt"), record + "\n");
    }

    /// <summary>Asks for the document's findings until they are as awaited; while the server loads the project it answers with none.</summary>
    private static async Task<JsonNode[]> PullAsync(LanguageServer server, JsonObject document, bool isThere)
    {
        var clock = Stopwatch.StartNew();
        while (true)
        {
            var answer = await server.RequestAsync("textDocument/diagnostic", new JsonObject { ["textDocument"] = document.DeepClone() });
            var findings = (answer?["items"]?.AsArray() ?? []).Where(item => ((string?)item!["code"])?.StartsWith("RAIL", StringComparison.Ordinal) == true).Select(item => item!).ToArray();
            if (findings.Length > 0 == isThere)
            {
                return findings;
            }

            Assert.True(clock.Elapsed < TimeSpan.FromMinutes(4), $"No change in four minutes; last answer: {answer?.ToJsonString()}\n{server.Messages}");
            await Task.Delay(20);
        }
    }
}
