using System.Diagnostics;
using System.Globalization;
using Microsoft.CodeAnalysis;

namespace RailRules.Benchmarks;

/// <summary>The compiler's binding of a board and our own share after it, in milliseconds; cold: the first analysis of a process.</summary>
internal static class Shares
{
    private static readonly int[] Sizes = [10, 100, 1000, 10000];

    public static void Run()
    {
        Console.WriteLine("| rails | | runs | bind: wall least / median | bind: processor median | own: wall least / median | own: processor median | own, processor, a rail |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (var rails in Sizes)
        {
            Row(rails, "cold", Enumerable.Range(0, rails > 1000 ? 3 : 5).Select(_ => Child(rails)).ToList());
        }

        foreach (var rails in Sizes)
        {
            var source = GeneratedBoard.Source(rails);
            Row(rails, "warm", Enumerable.Range(0, rails > 1000 ? 4 : 12).Select(_ => Once(source)).Skip(rails > 1000 ? 1 : 3).ToList());
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
        GC.Collect();
        var bind = Measure.Of(() => GeneratedBoard.BindInitializers(compilation));
        return (bind, Measure.Of(() => AnalysisBenchmarks.Analyze(compilation)));
    }

    private static (Measure Bind, Measure Own) Child(int rails)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true, ArgumentList = { "cold", rails.ToString(CultureInfo.InvariantCulture) } };
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

    private static void Row(int rails, string kind, List<(Measure Bind, Measure Own)> runs)
    {
        var own = Measure.Median(runs.Select(run => run.Own.Processor));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {rails} | {kind} | {runs.Count} | {runs.Min(run => run.Bind.Wall):0.0} / {Measure.Median(runs.Select(run => run.Bind.Wall)):0.0} | {Measure.Median(runs.Select(run => run.Bind.Processor)):0} | {runs.Min(run => run.Own.Wall):0.0} / {Measure.Median(runs.Select(run => run.Own.Wall)):0.0} | {own:0} | {own / rails:0.000} |"));
    }
}
