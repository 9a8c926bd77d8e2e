using System.Collections.Immutable;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers.Generation;
using RailRules.Analyzers.Tests.Boards;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>Boards through generator and analyzer, as a build does it, and as programs.</summary>
internal sealed class BoardHost
{
    private BoardHost(CSharpCompilation compilation) => Compilation = compilation;

    /// <summary>The compilation with what was generated.</summary>
    public CSharpCompilation Compilation { get; }

    public static BoardHost Run(params (string Path, string Text)[] files) => Run(AnalyzerHost.Compile(files));

    public static BoardHost Run(CSharpCompilation compilation)
    {
        Driver().RunGeneratorsAndUpdateCompilation(compilation, out var updated, out var diagnostics);
        Assert.Empty(diagnostics);
        return new BoardHost((CSharpCompilation)updated);
    }

    public static GeneratorDriver Driver(LanguageVersion version = LanguageVersion.Preview) => CSharpGeneratorDriver.Create(
        [new BoardGenerator().AsSourceGenerator()], [], new CSharpParseOptions(version), null, new GeneratorDriverOptions(IncrementalGeneratorOutputKind.None, trackIncrementalGeneratorSteps: true));

    /// <summary>The findings as text, in order of file and place; the compilation must have no errors and warnings of its own.</summary>
    public async Task<string[]> Findings(params (string Key, string Value)[] options)
    {
        TableHost.AssertCompiles(Compilation);
        return [.. (await AnalyzerHost.Findings(Compilation, options)).Select(AnalyzerHost.Text)];
    }

    /// <summary>The program, loaded.</summary>
    public Assembly Load()
    {
        using var image = new MemoryStream();
        var result = Compilation.Emit(image);
        Assert.True(result.Success, string.Join("\n", result.Diagnostics));
        return Assembly.Load(image.ToArray());
    }

    public static BoardModel Model(Assembly assembly, string board) =>
        (BoardModel)assembly.GetType(board, throwOnError: true)!.GetProperty("Model", BindingFlags.Public | BindingFlags.Static)!.GetValue(null)!;

    public static ImmutableArray<Check> Review(Assembly assembly, string board, DateTime? today = null) =>
        (ImmutableArray<Check>)assembly.GetType(board, throwOnError: true)!.GetMethod("Review", BindingFlags.Public | BindingFlags.Static)!.Invoke(null, [today])!;

    /// <summary>The checks that the analyzer makes of a board.</summary>
    public ImmutableArray<Check> Checks(string board)
    {
        var boards = new CompilationBoards(Compilation, KnownTypes.TryCreate(Compilation)!);
        return boards.Of(Compilation.GetTypeByMetadataName(board)!, default).Checks;
    }

    public static IEnumerable<string> Text(IEnumerable<Check> checks) =>
        checks.Select(check => FormattableString.Invariant($"{check.Rule} {check.Rail?.Name} {check.Subject} {check.Verdict} {check.Margin:R} {check.Message}")).Order(StringComparer.Ordinal);
}
