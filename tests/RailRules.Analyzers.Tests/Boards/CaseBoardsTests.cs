using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Tests.Boards;

/// <summary>
/// The boards of the reference cases (tests/RailRules.Tests/Cases/Boards), evaluated by the analyzer and really run: both must find the same, word for word.
/// Whether the verdicts are the right ones, Cases of RailRules.Tests tells from the reference file.
/// </summary>
public sealed class CaseBoardsTests
{
    private static readonly string[] Files = [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Cases"), "Case*.cs").Order(StringComparer.Ordinal)];

    [Fact]
    public async Task Analyzer_and_running_program_find_the_same_on_every_case()
    {
        Assert.True(Files.Length >= 28);
        var compilation = AnalyzerHost.Compile([.. Files.Select(file => (Path.GetFileName(file), File.ReadAllText(file)))]);
        using var image = new MemoryStream();
        var emitted = compilation.Emit(image);
        Assert.True(emitted.Success, string.Join("\n", emitted.Diagnostics.Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error)));
        image.Position = 0;
        var context = new AssemblyLoadContext("cases", isCollectible: true);
        var program = context.LoadFromStream(image);

        var byFile = (await AnalyzerHost.Findings(compilation)).ToLookup(finding => finding.Location.GetLineSpan().Path);
        foreach (var file in Files)
        {
            var name = Path.GetFileNameWithoutExtension(file);
            var boards = program.GetTypes().Where(type => type.FullName!.Contains("." + name, StringComparison.Ordinal) && type.GetCustomAttribute<BoardAttribute>() is not null).ToList();
            Assert.NotEmpty(boards);
            var expected = boards.SelectMany(board => Engine.Check(RailsOf(board))).Where(check => check.Verdict == Verdict.Fails).Select(check => $"{check.Rule}: {check.Message}").ToList();
            var found = byFile[Path.GetFileName(file)].Select(Said).ToList();

            // One place shows one finding for all rails that it makes, so the analyzer may say less often, never something else, and no rule is lost.
            Assert.True(found.All(expected.Contains), name + "\nfound:\n" + string.Join("\n", found) + "\nexpected:\n" + string.Join("\n", expected));
            Assert.Equal(expected.Select(Rule).Where(Shown).Distinct().Order(StringComparer.Ordinal), found.Select(Rule).Distinct().Order(StringComparer.Ordinal));
        }

        context.Unload();
    }

    /// <summary>Rules that are off until turned on are not in the findings.</summary>
    private static bool Shown(string rule) => new BoardAnalyzer().SupportedDiagnostics.Single(descriptor => descriptor.Id == rule).IsEnabledByDefault;

    private static string Rule(string said) => said[..8];

    private static string Said(Diagnostic finding)
    {
        var message = finding.GetMessage(CultureInfo.InvariantCulture);
        var counted = message.IndexOf(" (and so on ", StringComparison.Ordinal);
        return $"{finding.Id}: {(counted < 0 ? message : message[..counted])}";
    }

    private static List<Rail> RailsOf(Type board)
    {
        var rails = new List<Rail>();
        foreach (var field in board.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic).OrderBy(field => field.MetadataToken))
        {
            var value = field.GetValue(null);
            if (value is Rail rail)
            {
                rails.Add(rail);
            }
            else if (value is IEnumerable items and not string)
            {
                rails.AddRange(items.OfType<Rail>());
            }
        }

        return rails;
    }
}
