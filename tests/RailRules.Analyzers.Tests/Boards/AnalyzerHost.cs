using System.Collections.Immutable;
using Basic.Reference.Assemblies;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;

namespace RailRules.Analyzers.Tests.Boards;

/// <summary>Compiles sources with the library referenced and runs the analyzer on them, as a build does and as an editor does.</summary>
internal static class AnalyzerHost
{
    private static readonly ImmutableArray<MetadataReference> References =
    [
        .. Net100.References.All,
        MetadataReference.CreateFromFile(typeof(Rail).Assembly.Location),
        MetadataReference.CreateFromFile(Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll")),
    ];

    /// <summary>The implicit usings of an SDK project, which users have.</summary>
    private static readonly SyntaxTree Usings = Parse("Usings.g.cs", "global using System; global using System.Collections.Generic; global using System.Linq; global using System.IO;");

    public static SyntaxTree Parse(string path, string text) => CSharpSyntaxTree.ParseText(text, new CSharpParseOptions(LanguageVersion.Preview), path);

    public static CSharpCompilation Compile(params (string Path, string Text)[] files) => Compile([.. files.Select(file => Parse(file.Path, file.Text))]);

    public static CSharpCompilation Compile(ImmutableArray<SyntaxTree> trees) => CSharpCompilation.Create(
        "Consumer", [Usings, .. trees], References, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));

    /// <summary>All findings of the whole compilation, as in a build, in the order of their places.</summary>
    public static async Task<ImmutableArray<Diagnostic>> Findings(Compilation compilation, params (string Key, string Value)[] options) =>
        Ordered(await WithAnalyzer(compilation, options).GetAnalyzerDiagnosticsAsync());

    /// <summary>All findings, asked for document by document, as editors do.</summary>
    public static async Task<ImmutableArray<Diagnostic>> FindingsByDocument(Compilation compilation, params (string Key, string Value)[] options)
    {
        var found = new List<Diagnostic>();
        foreach (var tree in compilation.SyntaxTrees)
        {
            found.AddRange(await FindingsOfDocument(compilation, tree, options));
        }

        return Ordered(found);
    }

    /// <summary>The findings of one document on a host that has been asked for nothing else.</summary>
    public static async Task<ImmutableArray<Diagnostic>> FindingsOfDocument(Compilation compilation, SyntaxTree tree, params (string Key, string Value)[] options)
    {
        var host = WithAnalyzer(compilation, options);
        var model = compilation.GetSemanticModel(tree);
        return [.. await host.GetAnalyzerSyntaxDiagnosticsAsync(tree, default), .. await host.GetAnalyzerSemanticDiagnosticsAsync(model, null, default)];
    }

    /// <summary>The findings of sources given as text; the sources must compile.</summary>
    public static async Task<ImmutableArray<Diagnostic>> Findings(params (string Path, string Text)[] files)
    {
        var compilation = Compile(files);
        var errors = compilation.GetDiagnostics().Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error).ToList();
        Assert.True(errors.Count == 0, string.Join("\n", errors));
        return await Findings(compilation);
    }

    public static string Text(Diagnostic diagnostic)
    {
        var position = diagnostic.Location.GetLineSpan();
        return $"{position.Path}({position.StartLinePosition.Line + 1},{position.StartLinePosition.Character + 1}): {diagnostic.Id}: {diagnostic.GetMessage(System.Globalization.CultureInfo.InvariantCulture)}";
    }

    private static CompilationWithAnalyzers WithAnalyzer(Compilation compilation, (string Key, string Value)[] options) => compilation.WithAnalyzers(
        [new BoardAnalyzer()],
        new CompilationWithAnalyzersOptions(new AnalyzerOptions([], new Settings(options)), Throw, concurrentAnalysis: true, logAnalyzerExecutionTime: false));

    /// <summary>The same settings for the whole compilation and for each file.</summary>
    private sealed class Settings((string Key, string Value)[] settings) : AnalyzerConfigOptionsProvider
    {
        public override AnalyzerConfigOptions GlobalOptions { get; } = new Options(settings);

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => GlobalOptions;

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) => GlobalOptions;

        private sealed class Options((string Key, string Value)[] settings) : AnalyzerConfigOptions
        {
            public override bool TryGetValue(string key, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out string? value) =>
                (value = settings.FirstOrDefault(setting => KeyComparer.Equals(setting.Key, key)).Value) is not null;
        }
    }

    private static void Throw(Exception exception, DiagnosticAnalyzer analyzer, Diagnostic diagnostic) => throw new InvalidOperationException("The analyzer threw.", exception);

    private static ImmutableArray<Diagnostic> Ordered(IEnumerable<Diagnostic> diagnostics) =>
        [.. diagnostics.OrderBy(diagnostic => diagnostic.Location.GetLineSpan().Path, StringComparer.Ordinal).ThenBy(diagnostic => diagnostic.Location.SourceSpan.Start).ThenBy(diagnostic => diagnostic.Id, StringComparer.Ordinal)];
}
