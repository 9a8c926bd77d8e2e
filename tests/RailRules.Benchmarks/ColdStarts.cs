using System.Diagnostics;
using System.Globalization;

namespace RailRules.Benchmarks;

/// <summary>The first analysis of a process: nothing compiled to machine code, no units loaded.</summary>
internal static class ColdStarts
{
    private const int Processes = 5;

    public static void Run()
    {
        foreach (var rails in (int[])[10, 100, 1000, 10000])
        {
            var runs = Enumerable.Range(0, rails > 1000 ? 3 : Processes).Select(_ => Child(rails)).ToList();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rails} rails, cold, median of {runs.Count}: bind {Median(runs, 0):0} ms, own share after it {Median(runs, 1):0} ms"));
        }
    }

    public static void Once(int rails)
    {
        var compilation = AnalysisBenchmarks.Fresh(GeneratedBoard.Compile(GeneratedBoard.Source(rails)));
        var clock = Stopwatch.StartNew();
        GeneratedBoard.BindInitializers(compilation);
        var bind = clock.Elapsed;
        clock.Restart();
        AnalysisBenchmarks.Analyze(compilation);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{bind.TotalMilliseconds:0.0} {clock.Elapsed.TotalMilliseconds:0.0}"));
    }

    internal static double Median(IEnumerable<double> values)
    {
        var ordered = values.Order().ToArray();
        var middle = ordered.Length / 2;
        return ordered.Length % 2 == 1 ? ordered[middle] : (ordered[middle - 1] + ordered[middle]) / 2;
    }

    private static double Median(List<double[]> runs, int column) => Median(runs.Select(run => run[column]));

    private static double[] Child(int rails)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true, ArgumentList = { "cold", rails.ToString(CultureInfo.InvariantCulture) } };
        using var process = Process.Start(start)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0
            ? [.. text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(number => double.Parse(number, CultureInfo.InvariantCulture))]
            : throw new InvalidOperationException(text);
    }
}
