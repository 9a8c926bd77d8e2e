using Xunit.Abstractions;

namespace RailRules.Package.Tests;

/// <summary>The real package in real projects.</summary>
[Collection(PackageCollection.Name)]
public sealed class ConsumerTests(PackageFeed feed, ITestOutputHelper output)
{
    private static readonly string[] Frameworks = ["net10.0", "net8.0", "netstandard2.0"];

    /// <summary>A path with spaces, warnings as errors, three frameworks: the sample builds without a word, the mistake is found in each.</summary>
    [Fact]
    public void Every_framework_builds_the_sample_and_finds_the_mistake()
    {
        var consumer = new Consumer(feed, "Every framework", $"""
            <TargetFrameworks>{string.Join(';', Frameworks)}</TargetFrameworks>
            <LangVersion>14</LangVersion>
            <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
            """);
        foreach (var (name, text) in Sources.OfSample("Lockhouse"))
        {
            consumer.Write(name, text);
        }

        consumer.Build().SucceedsSilently();

        consumer.Write("BladeShelf.cs", Sources.Unsound);
        var build = consumer.Build("--no-restore").Fails();
        AssertMistake(build.Findings);
        foreach (var framework in Frameworks)
        {
            Assert.Contains($"TargetFramework={framework}", build.Output, StringComparison.Ordinal);
            AssertSame(build.Findings, consumer.ReadLog(framework).Findings);
        }

        consumer.Write("BladeShelf.cs", Sources.Sound);
        consumer.Build("--no-restore").SucceedsSilently();
    }

    /// <summary>The oldest compiler that loads the analyzer; without RoslynCompilerType the SDK silently uses its own.</summary>
    [Fact]
    public void The_oldest_compiler_finds_the_mistake()
    {
        var consumer = new Consumer(
            feed,
            "OldestCompiler",
            "<TargetFramework>net8.0</TargetFramework><LangVersion>13</LangVersion><RoslynCompilerType>Custom</RoslynCompilerType>",
            """<PackageReference Include="Microsoft.Net.Compilers.Toolset" Version="4.14.0" PrivateAssets="all" />""");
        consumer.Write("BladeShelf.cs", Sources.Unsound);
        var build = consumer.Build().Fails();
        AssertMistake(build.Findings);
        var (compiler, findings) = consumer.ReadLog("net8.0");
        output.WriteLine("compiler: " + compiler);
        Assert.StartsWith("4.14.0", compiler, StringComparison.Ordinal);
        AssertSame(build.Findings, findings);

        consumer.Write("BladeShelf.cs", Sources.Sound);
        consumer.Build("--no-restore").SucceedsSilently();
    }

    private static void AssertMistake(Finding[] findings)
    {
        var finding = Assert.Single(findings);
        Assert.Equal(("RAIL0101", "BladeShelf.cs", Sources.UnsoundLine, "error"), (finding.Id, finding.File, finding.Line, finding.Severity));
        Assert.Equal("'Sallow25' on rail 'Blade' can meet 60 V (transient); it is rated 32 V DC", finding.Message);
    }

    private static void AssertSame(Finding[] build, Finding[] log) => Assert.Equal(Ordered(build), Ordered(log));

    private static IEnumerable<Finding> Ordered(Finding[] findings) => findings.OrderBy(finding => finding.File).ThenBy(finding => finding.Line).ThenBy(finding => finding.Id);
}
