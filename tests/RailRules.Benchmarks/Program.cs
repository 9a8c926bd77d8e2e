using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Environments;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.NoEmit;
using RailRules.Benchmarks;

// build-pairs [PAIRS]  dotnet build with and without the package, in alternating pairs
// shares [MOST RAILS]  the compiler's binding and our own share, cold (each in a process of its own, by 'cold RAILS') and warm
// profile RAILS        what the first analysis of a process compiles to machine code, by part, type and method
// parts PARTS          a parts table, each step once in this process
// choose PARTS        a part chosen in one place of a board of 100 rails, and every part tried, in this process
// anything else        BenchmarkDotNet's own arguments, e.g. --filter *
switch (args)
{
    case ["build-pairs", .. var rest]:
        BuildPairs.Run(rest is [var pairs] ? int.Parse(pairs) : 11);
        return 0;
    case ["shares", .. var rest]:
        Shares.Run(rest is [var most] ? int.Parse(most) : int.MaxValue);
        return 0;
    case ["cold", var rails]:
        Shares.Cold(int.Parse(rails));
        return 0;
    case ["profile", var rails]:
        ColdProfile.Run(int.Parse(rails));
        return 0;
    case ["parts", var parts]:
        PartsTableBenchmarks.Once(int.Parse(parts));
        return 0;
    case ["choose", var parts]:
        ChoosingBenchmarks.Once(int.Parse(parts));
        return 0;
    default:
        // Each iteration is one analysis of a fresh compilation: nothing is left to repeat within it.
        var job = Job.Default
            .WithRuntime(CoreRuntime.Core10_0)
            .WithToolchain(new InProcessNoEmitToolchain(TimeSpan.FromHours(1), logOutput: false))
            .WithStrategy(RunStrategy.Monitoring)
            .WithInvocationCount(1)
            .WithUnrollFactor(1)
            .WithWarmupCount(3)
            .WithIterationCount(9);
        var config = ManualConfig.CreateEmpty()
            .AddJob(job)
            .AddLogger(ConsoleLogger.Default)
            .AddColumnProvider(DefaultColumnProviders.Instance)
            .AddColumn(StatisticColumn.Min, StatisticColumn.Median)
            .AddExporter(MarkdownExporter.GitHub);
        BenchmarkSwitcher.FromAssembly(typeof(BuildPairs).Assembly).Run(args, config);
        return 0;
}
