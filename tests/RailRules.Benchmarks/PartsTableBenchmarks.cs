using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Basic.Reference.Assemblies;
using BenchmarkDotNet.Attributes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;
using RailRules.Analyzers.Generation;
using RailRules.Tables;

namespace RailRules.Benchmarks;

/// <summary>A parts table of invented fuses: reading, generating, an edit elsewhere, and what the compiler does with the generated class.</summary>
[MemoryDiagnoser]
public class PartsTableBenchmarks
{
    private static readonly CSharpParseOptions ParseOptions = new(LanguageVersion.Latest, DocumentationMode.Diagnose);

    private string text = "";
    private CSharpCompilation bare = null!;
    private CSharpCompilation edited = null!;
    private GeneratorDriver ran = null!;
    private PartsTable<Fuse> read = null!;

    /// <summary>Parts of the table.</summary>
    [Params(100, 1000, 10_000, 100_000)]
    public int Parts { get; set; }

    [GlobalSetup]
    public void Make()
    {
        text = Table(Parts);
        bare = CSharpCompilation.Create(
            "Consumer",
            [CSharpSyntaxTree.ParseText("class A { }", ParseOptions)],
            [.. Net100.References.All, MetadataReference.CreateFromFile(typeof(Rail).Assembly.Location), MetadataReference.CreateFromFile(typeof(UnitsNet.Length).Assembly.Location)],
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        edited = bare.AddSyntaxTrees(CSharpSyntaxTree.ParseText("class B { }", ParseOptions));
        ran = Driver().RunGenerators(bare);
        read = new PartsTable<Fuse>(PartsTableText.Read(text).ToCanonical());
    }

    /// <summary>Every cell read and checked.</summary>
    [Benchmark]
    public int Read() => PartsTableText.Read(text).Rows.Count;

    /// <summary>The generator from nothing: reading, checking, writing and parsing of the generated source.</summary>
    [Benchmark]
    public int Generate() => Driver().RunGenerators(bare).GetRunResult().GeneratedTrees.Length;

    /// <summary>The generator after an edit elsewhere.</summary>
    [Benchmark]
    public int EditElsewhere() => ran.RunGenerators(edited).GetRunResult().GeneratedTrees.Length;

    /// <summary>The compiler with the generated class, generator included.</summary>
    [Benchmark]
    public bool Compile() => Compile(table: true);

    /// <summary>The compiler without it.</summary>
    [Benchmark(Baseline = true)]
    public bool CompileNothing() => Compile(table: false);

    /// <summary>One part at run time, the table being read.</summary>
    [Benchmark]
    public Fuse OnePart() => read.At(Parts / 2);

    /// <summary>Each once in this process, the first of each with just-in-time compilation: wall and processor time, which says more on a busy machine.</summary>
    public static void Once(int parts)
    {
        var benchmark = new PartsTableBenchmarks { Parts = parts };
        Time("first generation", () => Driver(Table(parts)).RunGenerators(CSharpCompilation.Create("Consumer", references: [.. Net100.References.All, MetadataReference.CreateFromFile(typeof(Rail).Assembly.Location)])).GetRunResult().GeneratedTrees.Length.ToString(CultureInfo.InvariantCulture));
        benchmark.Make();
        Time("read", () => benchmark.Read().ToString(CultureInfo.InvariantCulture));
        Time("generate", () => benchmark.Generate().ToString(CultureInfo.InvariantCulture));
        Time("edit elsewhere", () => benchmark.EditElsewhere().ToString(CultureInfo.InvariantCulture));
        Time("compile nothing, first", () => benchmark.CompileNothing().ToString());
        Time("compile, first", () => benchmark.Compile().ToString());
        Time("compile nothing", () => benchmark.CompileNothing().ToString());
        Time("compile", () => benchmark.Compile().ToString());
        Time("one part", () => benchmark.OnePart().PartNumber!);
    }

    private static void Time(string what, Func<string> work)
    {
        using var process = Process.GetCurrentProcess();
        var (wall, processor) = (Stopwatch.StartNew(), process.TotalProcessorTime);
        string result;
        try
        {
            result = work();
        }
        catch (InvalidOperationException exception)
        {
            result = exception.Message;
        }

        process.Refresh();
        Console.WriteLine(FormattableString.Invariant($"{what,-24} wall {wall.Elapsed.TotalMilliseconds,9:0.0} ms, processor {(process.TotalProcessorTime - processor).TotalMilliseconds,9:0} ms  ({result})"));
    }

    private bool Compile(bool table)
    {
        Compilation compilation = bare.Clone();
        if (table)
        {
            Driver().RunGeneratorsAndUpdateCompilation(compilation, out compilation, out _);
        }

        using var image = new MemoryStream();
        var result = compilation.Emit(image);
        return result.Success ? true : throw new InvalidOperationException(result.Diagnostics.First(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error).ToString());
    }

    private GeneratorDriver Driver() => Driver(text);

    private static CSharpGeneratorDriver Driver(string text) => CSharpGeneratorDriver.Create([new PartsTableGenerator().AsSourceGenerator()], ImmutableArray.Create<AdditionalText>(new File("/x/Fuses.parts.csv", text)), ParseOptions);

    private static string Table(int parts)
    {
        var text = new StringBuilder("Fuse,RatedCurrent [A],DcVoltageRating [V],InterruptingRatings [A@V@ms],MeltingIntegral [A²s],ClearingIntegrals [A²s@V@ms],Derating [°C],ColdResistance [mΩ],OperatingTemperature [°C],Citation\n");
        for (var i = 0; i < parts; i++)
        {
            var rated = (i % 63) + 1;
            text.Append(CultureInfo.InvariantCulture, $"F{i},{rated},80,10000@80@2 1000@150,{rated * rated},{3 * rated * rated}@80@2,25:1.00 60:0.86 85:0.71,2.1..2.6..3.1,-40..105,\"invented, not for use\"\n");
        }

        return text.ToString();
    }

    private sealed class File(string path, string text) : AdditionalText
    {
        private readonly SourceText source = SourceText.From(text, Encoding.UTF8);

        public override string Path { get; } = path;

        public override SourceText GetText(CancellationToken cancellationToken = default) => source;
    }
}
