using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace RailRules.Benchmarks;

/// <summary>
/// Wall time of <c>dotnet build --no-restore</c> with and without the package, in alternating pairs, and of the compiled program beside it.
/// Without the package a board compiles against the library alone. "Fresh" starts a compiler for every build, as a build machine does; "server" leaves the compiler
/// running between builds, as <c>dotnet build</c> does by default (its processor time is not a child's, so only wall time is told).
/// </summary>
internal static class BuildPairs
{
    private const string Version = "0.1.0-benchmark";

    public static void Run(int pairs)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "RailRules.sln")))
        {
            root = root.Parent!;
        }

        var folder = Directory.CreateTempSubdirectory("railrules-benchmark").FullName;
        try
        {
            Dotnet(root.FullName, "pack", "src/RailRules.Package", "-c", "Release", "-p:PackageVersion=" + Version, "-o", Path.Combine(folder, "feed"));
            File.WriteAllText(Path.Combine(folder, "Directory.Build.props"), "<Project />");
            File.WriteAllText(Path.Combine(folder, "NuGet.config"), """
                <configuration>
                  <packageSources><add key="railrules-benchmark" value="feed" /></packageSources>
                  <config><add key="globalPackagesFolder" value="packages" /></config>
                </configuration>
                """);
            var package = $"""<PackageReference Include="RailRules" Version="{Version}" />""";
            var library = $"""<Reference Include="{typeof(Rail).Assembly.Location}" /><PackageReference Include="UnitsNet" Version="5.75.1" />""";
            var board = GeneratedBoard.Source(100);
            Console.WriteLine($"| {pairs} pairs | with the package | without | ratio, median of pairs | least to largest | ratio of the least |");
            Console.WriteLine("|---|---|---|---|---|---|");
            var (boardWith, boardWithout) = (Project(folder, "BoardWith", package, board), Project(folder, "BoardWithout", library, board));
            var plain = PlainSource();
            var (plainWith, plainWithout) = (Project(folder, "PlainWith", package, plain), Project(folder, "PlainWithout", "", plain));
            foreach (var server in (bool[])[false, true])
            {
                Compare("board of 100 rails", boardWith, boardWithout, pairs, server);
                Compare("project without boards", plainWith, plainWithout, pairs, server);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        CompiledProgram();
    }

    private static void Compare(string title, string with, string without, int pairs, bool server)
    {
        // A server has seen a few builds before it counts.
        for (var warming = 0; warming < (server ? 5 : 1); warming++)
        {
            Build(with, server);
            Build(without, server);
        }

        var withs = new List<Measure>();
        var withouts = new List<Measure>();
        for (var pair = 0; pair < pairs; pair++)
        {
            // Whichever goes first has the colder machine: take turns.
            if (pair % 2 == 0)
            {
                withs.Add(Build(with, server));
            }

            withouts.Add(Build(without, server));
            if (pair % 2 != 0)
            {
                withs.Add(Build(with, server));
            }
        }

        Report($"{title}, {(server ? "server" : "fresh")}, wall", measure => measure.Wall);
        if (!server)
        {
            Report(title + ", fresh, processor", measure => measure.Processor);
        }

        void Report(string what, Func<Measure, double> value)
        {
            var ratios = withs.Zip(withouts, (one, other) => value(one) / value(other)).ToList();
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {what} | {Measure.Median(withs.Select(value)) / 1000:0.00} s | {Measure.Median(withouts.Select(value)) / 1000:0.00} s | {Measure.Median(ratios):0.000} | {ratios.Min():0.000} to {ratios.Max():0.000} | {withs.Min(value) / withouts.Min(value):0.000} |"));
        }
    }

    private static void CompiledProgram()
    {
        var board = ProgramBenchmarks.Load(100);
        ImmutableArray<Rail> rails = [];
        var checks = 0;
        var made = Measure.Of(() => rails = GeneratedBoard.Run(board));
        var first = Measure.Of(() => checks = Engine.Check(rails).Length);
        var later = Enumerable.Range(0, 50).Select(_ => Measure.Of(() => Engine.Check(rails)).Wall).ToList();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"The same board of 100 rails as a program: objects made in {made.Wall:0.0} ms, {checks} checks in {first.Wall:0.0} ms the first time, {Measure.Median(later):0.00} ms later (median of 50)."));
    }

    private static string Project(string folder, string name, string references, string source)
    {
        var project = Directory.CreateDirectory(Path.Combine(folder, name)).FullName;
        File.WriteAllText(Path.Combine(project, name + ".csproj"), $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <NuGetAudit>false</NuGetAudit>
              </PropertyGroup>
              <ItemGroup>{references}</ItemGroup>
            </Project>
            """);
        File.WriteAllText(Path.Combine(project, "Source.cs"), source);
        Dotnet(project, "restore");
        return project;
    }

    /// <summary>One build of a changed source.</summary>
    private static Measure Build(string project, bool server)
    {
        File.AppendAllText(Path.Combine(project, "Source.cs"), "// changed\n");
        return Measure.OfChildren(() => Dotnet(project, "build", "--no-restore", "-v:q", "-p:UseSharedCompilation=" + (server ? "true" : "false")));
    }

    private static void Dotnet(string folder, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = folder, RedirectStandardOutput = true })!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"dotnet {string.Join(' ', arguments)}: {text}");
        }
    }

    /// <summary>Two hundred ordinary classes.</summary>
    private static string PlainSource()
    {
        var text = new StringBuilder("namespace Plain;\n");
        for (var index = 0; index < 200; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $$"""

                public sealed class Class{{index}}(int start)
                {
                    private readonly List<int> numbers = [start];

                    public int Sum => numbers.Where(number => number % 2 == 0).Select(number => number * {{index + 1}}).Sum();

                    public void Add(int number)
                    {
                        if (number > start)
                        {
                            numbers.Add(number);
                        }
                    }
                }

                """);
        }

        return text.ToString();
    }
}
