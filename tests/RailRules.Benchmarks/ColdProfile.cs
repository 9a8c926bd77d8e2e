using System.Collections.Concurrent;
using System.Diagnostics.Tracing;
using System.Globalization;

namespace RailRules.Benchmarks;

/// <summary>
/// What the first analysis of a process spends on making machine code: the methods that the runtime's just-in-time compiler takes up between start and end, with the
/// time each took (from "jitting started" to "loaded", on its thread), summed by assembly and by type.
/// </summary>
internal sealed class ColdProfile : EventListener
{
    private const EventKeywords JustInTime = (EventKeywords)0x10;
    private readonly ConcurrentDictionary<long, DateTime> started = new();
    private readonly ConcurrentQueue<(string Type, string Method, double Milliseconds)> methods = new();

    public static void Run(int rails)
    {
        var compilation = AnalysisBenchmarks.Fresh(GeneratedBoard.Compile(GeneratedBoard.Source(rails)));
        GeneratedBoard.BindInitializers(compilation);
        using var profile = new ColdProfile();
        var own = Measure.Of(() => AnalysisBenchmarks.Analyze(compilation));
        profile.Report(own);
    }

    protected override void OnEventSourceCreated(EventSource source)
    {
        if (source.Name == "Microsoft-Windows-DotNETRuntime")
        {
            EnableEvents(source, EventLevel.Verbose, JustInTime);
        }
    }

    protected override void OnEventWritten(EventWrittenEventArgs written)
    {
        switch (written.EventName)
        {
            case "MethodJittingStarted_V1" or "MethodJittingStarted":
                started[Convert.ToInt64(written.Payload![0], CultureInfo.InvariantCulture)] = written.TimeStamp;
                break;
            case "MethodLoadVerbose_V2" or "MethodLoadVerbose_V1" or "MethodLoadVerbose":
                if (started.TryRemove(Convert.ToInt64(written.Payload![0], CultureInfo.InvariantCulture), out var at))
                {
                    methods.Enqueue(((string)written.Payload![6]!, (string)written.Payload![7]!, (written.TimeStamp - at).TotalMilliseconds));
                }

                break;
        }
    }

    private void Report(Measure own)
    {
        var all = methods.ToList();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"own share {own.Wall:0} ms wall, {own.Processor:0} ms processor; {all.Count} methods compiled in {all.Sum(method => method.Milliseconds):0} ms"));
        Table("part", all.GroupBy(method => Part(method.Type)));
        Table("type", all.GroupBy(method => method.Type).OrderByDescending(group => group.Sum(method => method.Milliseconds)).Take(40));
        Table("method", all.GroupBy(method => method.Type + "." + method.Method).OrderByDescending(group => group.Sum(method => method.Milliseconds)).Take(40));
    }

    private static string Part(string type) => type switch
    {
        _ when type.StartsWith("RailRules.Analyzers.Evaluation", StringComparison.Ordinal) => "evaluation",
        _ when type.StartsWith("RailRules.Analyzers", StringComparison.Ordinal) => "analyzer",
        _ when type.StartsWith("RailRules.Rules", StringComparison.Ordinal) => "rules",
        _ when type.StartsWith("RailRules.Physics", StringComparison.Ordinal) => "physics",
        _ when type.StartsWith("RailRules", StringComparison.Ordinal) => "model and checks",
        _ when type.StartsWith("UnitsNet", StringComparison.Ordinal) => "units library",
        _ when type.StartsWith("Microsoft.CodeAnalysis", StringComparison.Ordinal) => "compiler",
        _ when type.StartsWith("System", StringComparison.Ordinal) => "framework, generic code included",
        _ => "other",
    };

    private static void Table(string head, IEnumerable<IGrouping<string, (string Type, string Method, double Milliseconds)>> groups)
    {
        Console.WriteLine();
        Console.WriteLine($"| {head} | methods | ms |");
        Console.WriteLine("|---|---|---|");
        foreach (var group in groups.OrderByDescending(group => group.Sum(method => method.Milliseconds)))
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {group.Key} | {group.Count()} | {group.Sum(method => method.Milliseconds):0.0} |"));
        }
    }
}
