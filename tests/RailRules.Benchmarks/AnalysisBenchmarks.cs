using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using RailRules.Analyzers;

namespace RailRules.Benchmarks;

/// <summary>One analysis of one board in process: the compiler's binding, our share after it, and both together as an analyzer host runs them.</summary>
[MemoryDiagnoser]
public class AnalysisBenchmarks
{
    private CSharpCompilation parsed = null!;
    private Compilation bound = null!;

    /// <summary>Rails of the board.</summary>
    [Params(10, 100, 1000, 10000)]
    public int Rails { get; set; }

    [GlobalSetup]
    public void Parse() => parsed = GeneratedBoard.Compile(GeneratedBoard.Source(Rails));

    [IterationSetup(Target = nameof(OwnShare))]
    public void BindFirst()
    {
        bound = Fresh();
        GeneratedBoard.BindInitializers(bound);
    }

    /// <summary>The compiler binds all initialisers.</summary>
    [Benchmark(Baseline = true)]
    public int Binding() => GeneratedBoard.BindInitializers(Fresh());

    /// <summary>Evaluation, rules and findings where all is bound.</summary>
    [Benchmark]
    public int OwnShare() => Analyze(bound);

    /// <summary>The analyzer in its host, binding included.</summary>
    [Benchmark]
    public int InHost()
    {
        var findings = Shared(parsed.Clone()).GetAnalyzerDiagnosticsAsync().GetAwaiter().GetResult();
        return findings.IsEmpty ? 0 : throw new InvalidOperationException(findings[0].ToString());
    }

    internal static int Analyze(Compilation compilation)
    {
        var types = KnownTypes.TryCreate(compilation)!;
        var board = compilation.GetTypeByMetadataName("Generated." + GeneratedBoard.ClassName)!;
        var findings = new CompilationBoards(compilation, types).FindingsOf(board, CancellationToken.None);
        return findings.IsEmpty ? 0 : throw new InvalidOperationException(findings[0].Message);
    }

    /// <summary>A compilation whose semantic models are kept, as in an analyzer host; nothing is bound yet.</summary>
    internal static Compilation Fresh(CSharpCompilation parsed) => Shared(parsed.Clone()).Compilation;

    private static CompilationWithAnalyzers Shared(CSharpCompilation compilation) => compilation.WithAnalyzers(ImmutableArray.Create<DiagnosticAnalyzer>(new BoardAnalyzer()));

    private Compilation Fresh() => Fresh(parsed);
}
