using System.Collections.Immutable;
using System.Reflection;
using BenchmarkDotNet.Attributes;

namespace RailRules.Benchmarks;

/// <summary>The same board as a compiled program: the rules alone, on objects that the program made.</summary>
[MemoryDiagnoser]
public class ProgramBenchmarks
{
    private ImmutableArray<Rail> rails;

    /// <summary>Rails of the board.</summary>
    [Params(10, 100, 1000, 10000)]
    public int Rails { get; set; }

    [GlobalSetup]
    public void CompileAndRun() => rails = GeneratedBoard.Run(Load(Rails));

    /// <summary>Every check of the board.</summary>
    [Benchmark]
    public int Check() => Engine.Check(rails).Length;

    internal static Type Load(int rails)
    {
        using var assembly = new MemoryStream();
        var result = GeneratedBoard.Compile(GeneratedBoard.Source(rails)).Emit(assembly);
        return result.Success
            ? Assembly.Load(assembly.ToArray()).GetType("Generated." + GeneratedBoard.ClassName)!
            : throw new InvalidOperationException(result.Diagnostics[0].ToString());
    }
}
