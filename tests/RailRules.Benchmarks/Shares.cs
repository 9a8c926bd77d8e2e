using System.Diagnostics;
using System.Globalization;
using Microsoft.CodeAnalysis;

namespace RailRules.Benchmarks;

/// <summary>The compiler's binding of a board and our own share after it, in milliseconds; cold: the first analysis of a process.</summary>
internal static class Shares
{
    private static readonly int[] Sizes = [10, 100, 1000, 10000];

    public static void Run(int most)
    {
        Console.WriteLine("Least wall / median wall / mean processor time, ms.");
        Console.WriteLine("| rails | | bind | own share | the rules alone, in the compiled program | own share a rail |");
        Console.WriteLine("|---|---|---|---|---|---|");
        foreach (var rails in Sizes.Where(size => size <= most))
        {
            // Ours runs again and again on a compilation that is bound, each time from nothing; the first half warms up.
            var source = GeneratedBoard.Source(rails);
            var binds = new List<Measure>();
            Compilation bound = null!;
            for (var run = 0; run < (rails > 1000 ? 2 : 6); run++)
            {
                bound = AnalysisBenchmarks.Fresh(GeneratedBoard.Compile(source));
                binds.Add(Measure.Of(() => GeneratedBoard.BindInitializers(bound)));
            }

            var repeats = rails switch { 10 => 1000, 100 => 400, 1000 => 40, _ => 6 };
            var owns = Enumerable.Range(0, repeats).Select(_ => Measure.Of(() => AnalysisBenchmarks.Analyze(bound))).Skip(repeats / 2).ToList();
            var made = GeneratedBoard.Run(ProgramBenchmarks.Load(rails));
            var rules = Enumerable.Range(0, repeats).Select(_ => Measure.Of(() => Engine.Check(made))).Skip(repeats / 2).ToList();
            Row(rails, "warm", [.. binds.Skip(binds.Count / 2)], owns, rules);
        }

        foreach (var rails in Sizes.Where(size => size <= most))
        {
            var runs = Enumerable.Range(0, rails > 1000 ? 3 : 5).Select(_ => Child(rails)).ToList();
            Row(rails, "cold", [.. runs.Select(run => run.Bind)], [.. runs.Select(run => run.Own)], null);
        }
    }

    /// <summary>One analysis in this process, printed for the parent.</summary>
    public static void Cold(int rails)
    {
        var (bind, own) = Once(GeneratedBoard.Source(rails));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{bind.Wall} {bind.Processor} {own.Wall} {own.Processor}"));
    }

    private static (Measure Bind, Measure Own) Once(string source)
    {
        var compilation = AnalysisBenchmarks.Fresh(GeneratedBoard.Compile(source));
        var bind = Measure.Of(() => GeneratedBoard.BindInitializers(compilation));
        return (bind, Measure.Of(() => AnalysisBenchmarks.Analyze(compilation)));
    }

    private static (Measure Bind, Measure Own) Child(int rails)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, ArgumentList = { typeof(Shares).Assembly.Location, "cold", rails.ToString(CultureInfo.InvariantCulture) } };
        using var process = Process.Start(start)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException(text);
        }

        var numbers = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        return (new(numbers[0], numbers[1]), new(numbers[2], numbers[3]));
    }

    private static void Row(int rails, string kind, List<Measure> binds, List<Measure> owns, List<Measure>? rules)
    {
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {rails} | {kind} | {Texts(binds)} | {Texts(owns)} | {(rules is null ? "" : Texts(rules))} | {owns.Min(run => run.Wall) / rails:0.000} / {Measure.Median(owns.Select(run => run.Wall)) / rails:0.000} / {owns.Average(run => run.Processor) / rails:0.000} |"));

        static string Texts(List<Measure> runs) => string.Create(
            CultureInfo.InvariantCulture,
            $"{runs.Min(run => run.Wall):0.0} / {Measure.Median(runs.Select(run => run.Wall)):0.0} / {runs.Average(run => run.Processor):0.0}");
    }
}
