using System.Text.Json;
using System.Text.RegularExpressions;

namespace RailRules.Package.Tests;

/// <summary>A project that uses the package, written to the feed's folder.</summary>
internal sealed class Consumer
{
    private readonly string projectFile;

    /// <param name="feed">Where the package is.</param>
    /// <param name="name">The project's name and folder.</param>
    /// <param name="properties">Properties of the project, as XML.</param>
    /// <param name="items">Items of the project, as XML.</param>
    /// <param name="targets">Targets of the project, as XML.</param>
    public Consumer(PackageFeed feed, string name, string properties, string items = "", string targets = "")
    {
        Folder = Directory.CreateDirectory(Path.Combine(feed.Folder, name)).FullName;
        projectFile = Path.Combine(Folder, name + ".csproj");
        File.WriteAllText(projectFile, $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <NuGetAudit>false</NuGetAudit>
                {properties}
                <ErrorLog>$(MSBuildProjectDirectory)/$(TargetFramework).sarif,version=2.1</ErrorLog>
              </PropertyGroup>
              <ItemGroup>
                <PackageReference Include="RailRules" Version="{feed.Version}" />
                {items}
              </ItemGroup>
              {targets}
            </Project>
            """);
    }

    public string Folder { get; }

    public string Write(string name, string text)
    {
        var file = Path.Combine(Folder, name);
        File.WriteAllText(file, text);
        return file;
    }

    public BuildResult Build(params string[] arguments) => BuildResult.Of(Folder, projectFile, arguments);

    public BuildResult Restore()
    {
        var (exitCode, output) = Dotnet.Run(Folder, "restore", projectFile, "-v:q");
        return new BuildResult(exitCode, output, []);
    }

    /// <summary>What the compiler wrote into its log of findings, and which compiler it was.</summary>
    public (string Compiler, Finding[] Findings) ReadLog(string targetFramework)
    {
        using var log = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, targetFramework + ".sarif")));
        var run = log.RootElement.GetProperty("runs")[0];
        var findings = run.GetProperty("results").EnumerateArray().Select(result =>
        {
            var place = result.GetProperty("locations")[0].GetProperty("physicalLocation");
            return new Finding(
                result.GetProperty("ruleId").GetString()!,
                Path.GetFileName(new Uri(place.GetProperty("artifactLocation").GetProperty("uri").GetString()!).LocalPath),
                place.GetProperty("region").GetProperty("startLine").GetInt32(),
                result.GetProperty("level").GetString()!,
                result.GetProperty("message").GetProperty("text").GetString()!);
        });
        return (run.GetProperty("tool").GetProperty("driver").GetProperty("version").GetString()!, [.. findings]);
    }
}

/// <summary>A finding as a reader sees it.</summary>
internal sealed record Finding(string Id, string File, int? Line, string Severity, string Message);

/// <summary>What a build said.</summary>
internal sealed partial record BuildResult(int ExitCode, string Output, Finding[] Findings)
{
    /// <summary>Builds a project and reads what it said, each finding once.</summary>
    public static BuildResult Of(string folder, string project, params string[] arguments)
    {
        var (exitCode, output) = Dotnet.Run(folder, ["build", project, "-tl:off", "-v:q", "-clp:NoSummary", .. arguments]);
        var findings = Line().Matches(output)
            .Select(match => new Finding(
                match.Groups["id"].Value,
                Path.GetFileName(match.Groups["file"].Value),
                int.TryParse(match.Groups["line"].Value, out var line) ? line : null,
                match.Groups["severity"].Value,
                match.Groups["message"].Value))
            .Distinct();
        return new BuildResult(exitCode, output, [.. findings]);
    }

    public BuildResult Succeeds()
    {
        Assert.True(ExitCode == 0, Output);
        return this;
    }

    public BuildResult SucceedsSilently()
    {
        Succeeds();
        Assert.True(Findings.Length == 0, Output);
        return this;
    }

    public BuildResult Fails()
    {
        Assert.True(ExitCode != 0, Output);
        return this;
    }

    [GeneratedRegex(@"^\s*(?<file>[^\r\n:(]+?)(\((?<line>\d+),\d+\))?\s*: (?<severity>error|warning) (?<id>\w+): (?<message>.*?)( \(https://[^)\s]*\))?( \[[^\]\r\n]*\])?\r?$", RegexOptions.Multiline)]
    private static partial Regex Line();
}
