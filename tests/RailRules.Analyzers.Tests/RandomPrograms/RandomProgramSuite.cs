using System.Collections.Immutable;
using System.Reflection;
using CsCheck;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers.Evaluation;
using RailRules.Analyzers.Tests.Programs;

namespace RailRules.Analyzers.Tests.RandomPrograms;

/// <summary>Runs and interprets random programs, many to one assembly.</summary>
internal static class RandomProgramSuite
{
    private static readonly SyntaxTree Prelude = ProgramSuite.Parse("Prelude.cs", RandomProgramGenerator.Prelude);

    /// <summary>The programs of a seed, from a given number on.</summary>
    public static ImmutableArray<string> Generate(ulong seed, int first, int count)
    {
        var generator = new RandomProgramGenerator();
        return [.. Enumerable.Range(first, count).Select(number => generator.Generate(new PCG((uint)number, seed), null, out _))];
    }

    /// <summary>Compiles and runs the programs, interprets them, and counts. Programs whose constants the compiler refuses are left out and counted.</summary>
    public static Outcome Compare(ImmutableArray<string> programs, ImmutableArray<string>? interpretedInstead = null)
    {
        var trees = programs.Select(Tree).ToImmutableArray();
        var rejected = new Dictionary<int, string>();
        var compilation = ProgramSuite.Compile([Prelude, .. trees]);
        foreach (var error in compilation.GetDiagnostics().Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error))
            rejected.TryAdd(int.Parse(Path.GetFileNameWithoutExtension(error.Location.SourceTree!.FilePath), System.Globalization.CultureInfo.InvariantCulture), error.ToString());
        if (rejected.Count > 0)
            compilation = compilation.RemoveSyntaxTrees(rejected.Keys.Select(number => trees[number]));
        var assembly = ProgramSuite.Emit(compilation);
        var interpreted = interpretedInstead is { } other ? ProgramSuite.Compile([Prelude, .. other.Select(Tree)]) : compilation;
        var session = EvaluationSession.TryCreate(interpreted)!;
        var outcome = new Outcome { Rejected = rejected };
        return session.OnDeepStack(() => Compare(programs.Length, assembly, interpreted, session, outcome));
    }

    private static Outcome Compare(int count, Assembly assembly, CSharpCompilation interpreted, EvaluationSession session, Outcome outcome)
    {
        for (var number = 0; number < count; number++)
        {
            if (outcome.Rejected.ContainsKey(number))
                continue;
            var name = $"Random.N{number}.P";
            var differences = ProgramSuite.Differences(session, assembly.GetType(name, throwOnError: true)!, interpreted.GetTypeByMetadataName(name)!, null, outcome.Count);
            if (differences.Count > 0)
                outcome.Different[number] = differences;
            outcome.Programs++;
        }

        return outcome;
    }

    private static SyntaxTree Tree(string members, int number) => ProgramSuite.Parse(
        $"{number}.cs",
        $"using System.Globalization;\nusing RailRules;\nusing UnitsNet;\n\nnamespace Random.N{number};\n\npublic static class P\n{{\n{members}}}\n");

    /// <summary>What came out of a batch.</summary>
    internal sealed class Outcome
    {
        public int Programs { get; set; }

        public int Values { get; private set; }

        public int Exceptions { get; private set; }

        public required Dictionary<int, string> Rejected { get; init; }

        public Dictionary<int, List<string>> Different { get; } = [];

        public void Count(bool thrown) => _ = thrown ? Exceptions++ : Values++;
    }
}
