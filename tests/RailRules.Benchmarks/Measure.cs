using System.Diagnostics;
using System.Globalization;

namespace RailRules.Benchmarks;

/// <summary>Wall time and processor time of a piece of work, in milliseconds. On a machine that does other work beside it, processor time says more.</summary>
internal readonly record struct Measure(double Wall, double Processor)
{
    /// <summary>Work in this process, all its threads counted.</summary>
    public static Measure Of(Action work)
    {
        var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var clock = Stopwatch.StartNew();
        work();
        var wall = clock.Elapsed.TotalMilliseconds;
        process.Refresh();
        return new(wall, (process.TotalProcessorTime - before).TotalMilliseconds);
    }

    /// <summary>Work in child processes that have ended when it returns; their processor time is known on Linux only, and NaN elsewhere.</summary>
    public static Measure OfChildren(Action work)
    {
        var before = ChildrenMilliseconds();
        var clock = Stopwatch.StartNew();
        work();
        return new(clock.Elapsed.TotalMilliseconds, ChildrenMilliseconds() - before);
    }

    public static double Median(IEnumerable<double> values)
    {
        var ordered = values.Order().ToArray();
        var middle = ordered.Length / 2;
        return ordered.Length % 2 == 1 ? ordered[middle] : (ordered[middle - 1] + ordered[middle]) / 2;
    }

    // proc(5): cutime and cstime, the 16th and 17th field, in ticks of 10 ms; the second field is in brackets and may hold spaces.
    private static double ChildrenMilliseconds()
    {
        if (!OperatingSystem.IsLinux())
        {
            return double.NaN;
        }

        var stat = File.ReadAllText("/proc/self/stat");
        var fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
        return 10 * (double.Parse(fields[13], CultureInfo.InvariantCulture) + double.Parse(fields[14], CultureInfo.InvariantCulture));
    }
}
