using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace RailRules.Benchmarks;

/// <summary>
/// Wall time of <c>dotnet build --no-restore</c> with and without the package, in alternating pairs, and of the compiled program beside it.
/// Without the package a board compiles against the library alone.
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
            Dotnet(root.FullName, "pack", "src/RailRules.Package", "--no-build", "-c", "Release", "-p:PackageVersion=" + Version, "-o", Path.Combine(folder, "feed"));
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
            Compare("board of 100 rails", Project(folder, "BoardWith", package, board), Project(folder, "BoardWithout", library, board), pairs);
            var plain = PlainSource();
            Compare("project without boards", Project(folder, "PlainWith", package, plain), Project(folder, "PlainWithout", "", plain), pairs);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        CompiledProgram();
    }

    private static void Compare(string title, string with, string without, int pairs)
    {
        Build(with);
        Build(without);
        List<double> ratios = [], withs = [], withouts = [];
        for (var pair = 0; pair < pairs; pair++)
        {
            // Whichever goes first has the colder machine: take turns.
            var (first, second) = pair % 2 == 0 ? (with, without) : (without, with);
            var (firstTime, secondTime) = (Build(first), Build(second));
            var (withTime, withoutTime) = pair % 2 == 0 ? (firstTime, secondTime) : (secondTime, firstTime);
            withs.Add(withTime);
            withouts.Add(withoutTime);
            ratios.Add(withTime / withoutTime);
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{title}, {pairs} pairs: with {ColdStarts.Median(withs):0.00} s (least {withs.Min():0.00}), without {ColdStarts.Median(withouts):0.00} s (least {withouts.Min():0.00}); ratio, median of pairs {ColdStarts.Median(ratios):0.000}, least to largest {ratios.Min():0.000} to {ratios.Max():0.000}; ratio of the least {withs.Min() / withouts.Min():0.000}"));
    }

    private static void CompiledProgram()
    {
        var board = ProgramBenchmarks.Load(100);
        var clock = Stopwatch.StartNew();
        var rails = GeneratedBoard.Run(board);
        var made = clock.Elapsed.TotalMilliseconds;
        clock.Restart();
        var checks = Engine.Check(rails).Length;
        var first = clock.Elapsed.TotalMilliseconds;
        List<double> later = [];
        for (var run = 0; run < 50; run++)
        {
            clock.Restart();
            Engine.Check(rails);
            later.Add(clock.Elapsed.TotalMilliseconds);
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"the same board as a program: objects made in {made:0.0} ms, {checks} checks in {first:0.0} ms the first time, {ColdStarts.Median(later):0.00} ms later (median of 50)"));
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

    /// <summary>One build of a changed source, in seconds.</summary>
    private static double Build(string project)
    {
        File.AppendAllText(Path.Combine(project, "Source.cs"), "// changed\n");
        var clock = Stopwatch.StartNew();
        Dotnet(project, "build", "--no-restore", "-v:q");
        return clock.Elapsed.TotalSeconds;
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
