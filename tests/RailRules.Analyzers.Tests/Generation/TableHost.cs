using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using CsCheck;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;
using RailRules.Analyzers.Generation;
using RailRules.Analyzers.Tests.Boards;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>Sources and tables through generator and analyzers, as a build does it.</summary>
internal sealed class TableHost
{
    private TableHost(CSharpCompilation compilation, ImmutableArray<AdditionalText> tables, ImmutableArray<Diagnostic> generatorDiagnostics)
    {
        Compilation = compilation;
        Tables = tables;
        GeneratorDiagnostics = generatorDiagnostics;
    }

    public CSharpCompilation Compilation { get; }

    public ImmutableArray<AdditionalText> Tables { get; }

    public ImmutableArray<Diagnostic> GeneratorDiagnostics { get; }

    /// <summary>Files whose names end in .cs are source, the others additional files. Places in a table are marked by nothing: tests name line and column.</summary>
    public static TableHost Run(params (string Path, string Text)[] files)
    {
        ImmutableArray<AdditionalText> tables = [.. files.Where(file => !file.Path.EndsWith(".cs", StringComparison.Ordinal)).Select(file => new Table(file.Path, file.Text))];
        var compilation = AnalyzerHost.Compile([.. files.Where(file => file.Path.EndsWith(".cs", StringComparison.Ordinal))]);
        Driver(tables).RunGeneratorsAndUpdateCompilation(compilation, out var updated, out var diagnostics);
        return new TableHost((CSharpCompilation)updated, tables, diagnostics);
    }

    public static GeneratorDriver Driver(ImmutableArray<AdditionalText> tables, string? rootNamespace = "Site") => CSharpGeneratorDriver.Create(
        [new PartsTableGenerator().AsSourceGenerator()],
        tables,
        new CSharpParseOptions(LanguageVersion.Preview),
        new Options(rootNamespace),
        new GeneratorDriverOptions(IncrementalGeneratorOutputKind.None, trackIncrementalGeneratorSteps: true));

    /// <summary>The findings of table and board analyzer, as text, in order of file and place; the compilation must have no errors of its own.</summary>
    public async Task<string[]> Findings()
    {
        AssertCompiles(Compilation);
        return [.. (await Diagnostics()).Select(AnalyzerHost.Text)];
    }

    public async Task<ImmutableArray<Diagnostic>> Diagnostics()
    {
        var host = Compilation.WithAnalyzers(
            [new PartsTableAnalyzer(), new BoardAnalyzer()],
            new CompilationWithAnalyzersOptions(new AnalyzerOptions(Tables), (exception, _, _) => throw new InvalidOperationException("The analyzer threw.", exception), concurrentAnalysis: true, logAnalyzerExecutionTime: false));
        var found = await host.GetAnalyzerDiagnosticsAsync();
        return [.. found.OrderBy(diagnostic => diagnostic.Location.GetLineSpan().Path, StringComparer.Ordinal).ThenBy(diagnostic => diagnostic.Location.SourceSpan.Start).ThenBy(diagnostic => diagnostic.Id, StringComparer.Ordinal)];
    }

    /// <summary>No errors and no warnings but those of the host's references, which a project does not have.</summary>
    public static void AssertCompiles(Compilation compilation) =>
        Assert.Empty(compilation.GetDiagnostics().Where(diagnostic => diagnostic.Severity >= DiagnosticSeverity.Warning && diagnostic.Id != "CS1701"));

    /// <summary>The program, loaded.</summary>
    public System.Reflection.Assembly Load()
    {
        using var image = new MemoryStream();
        var result = Compilation.Emit(image);
        Assert.True(result.Success, string.Join("\n", result.Diagnostics));
        return System.Reflection.Assembly.Load(image.ToArray());
    }

    internal sealed class Table(string path, string text) : AdditionalText
    {
        private readonly SourceText source = SourceText.From(text, System.Text.Encoding.UTF8);

        public override string Path { get; } = path;

        public override SourceText GetText(CancellationToken cancellationToken = default) => source;
    }

    private sealed class Options(string? rootNamespace) : AnalyzerConfigOptionsProvider
    {
        public override AnalyzerConfigOptions GlobalOptions { get; } = new Global(rootNamespace);

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => GlobalOptions;

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) => GlobalOptions;

        private sealed class Global(string? rootNamespace) : AnalyzerConfigOptions
        {
            public override bool TryGetValue(string key, [NotNullWhen(true)] out string? value)
            {
                value = key == "build_property.RootNamespace" ? rootNamespace : null;
                return value is not null;
            }
        }
    }
}

/// <summary>Everything that an object of the model says, as text, so that two can be compared whatever their arrays are.</summary>
internal static class Said
{
    public static string By(object? value) => value switch
    {
        null => "null",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        string text => "\"" + text + "\"",
        Enum or bool or int => string.Format(CultureInfo.InvariantCulture, "{0}", value),
        JouleIntegral integral => By(integral.AmpereSquaredSeconds) + " A²s",
        UnitsNet.IQuantity quantity => By((double)quantity.Value) + " " + quantity.Unit,
        System.Collections.IEnumerable items when value.GetType().GetProperty("IsDefault")?.GetValue(value) is not true => "[" + string.Join("; ", items.Cast<object?>().Select(By)) + "]",
        _ when value.GetType().GetProperty("IsDefault") is not null => "default",
        _ => value.GetType().Name + "{" + string.Join(", ", value.GetType().GetProperties().Where(property => property.GetIndexParameters().Length == 0 && property.Name is not "IsOrdered").OrderBy(property => property.Name, StringComparer.Ordinal).Select(property => property.Name + "=" + By(property.GetValue(value)))) + "}",
    };
}

internal static class Draw
{
    public static Gen<T> From<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
