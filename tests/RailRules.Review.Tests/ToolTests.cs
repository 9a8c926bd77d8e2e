using System.Diagnostics;
using System.Text.Json.Nodes;

namespace RailRules.Review.Tests;

/// <summary>The command as a user runs it, in folders of its own; the exit codes are those that docs/review.md promises.</summary>
public sealed class ToolTests
{
    /// <summary>docs/waivers.md: no clock is read; the end of a waiver is judged against the day that the build or the command names.</summary>
    [Fact]
    public async Task A_dated_waiver_is_judged_on_the_day_that_is_named()
    {
        const string Waiver = """[Waiver("RAIL0201", Reason = "runs at half load", ApprovedBy = "protection engineer", Until = "2027-06-30")]""";
        using var project = new ScratchProject().With(ScratchProject.TooSmall.Replace("[Board]", "[Board]\n" + Waiver, StringComparison.Ordinal));

        var undated = (await project.ReviewAsync("--strict", "--format", "json,markdown,html")).Ends(2);
        Assert.Contains("whether that is past is not judged", Read("LockhouseShelf.json"), StringComparison.Ordinal);
        Assert.Contains("1 undecided", undated.Output, StringComparison.Ordinal);
        foreach (var file in new[] { "LockhouseShelf.md", "LockhouseShelf.html" })
        {
            Assert.Contains("whether a dated waiver is past its end was not judged", Read(file), StringComparison.Ordinal);
        }

        Assert.Null(Json()["board"]!["today"]);

        (await project.ReviewAsync("--no-restore", "--strict", "--format", "json,markdown", "--today", "2027-06-30")).Ends(0);
        Assert.Equal("2027-06-30", (string?)Json()["board"]!["today"]);
        Assert.Contains("Waivers were judged as of 2027-06-30.", Read("LockhouseShelf.md"), StringComparison.Ordinal);
        Assert.Contains("waived", Verdicts());

        // The same from the build: MSBuild's property reaches the command as it reaches the compiler.
        project.Write("Directory.Build.props", "<Project><PropertyGroup><RailRulesToday>2027-07-01</RailRulesToday></PropertyGroup></Project>");
        (await project.ReviewAsync("--no-restore", "--strict", "--format", "json")).Ends(1);
        Assert.Equal("2027-07-01", (string?)Json()["board"]!["today"]);
        Assert.DoesNotContain("waived", Verdicts());
        Assert.Contains(Json()["checks"]!.AsArray(), check => (string?)check!["rule"] == "RAIL0008" && (string?)check["verdict"] == "fails");

        (await project.ReviewAsync("--no-restore", "--strict", "--today", "2027-01-31")).Ends(0);
        Assert.Contains("is no date", (await project.ReviewAsync("--today", "31.1.2027")).Ends(3).Error, StringComparison.Ordinal);

        string Read(string file) => File.ReadAllText(Path.Combine(project.Output, file));
        JsonNode Json() => JsonNode.Parse(Read("LockhouseShelf.json"))!;
        IEnumerable<string?> Verdicts() => Json()["checks"]!.AsArray().Select(check => (string?)check!["verdict"]);
    }

    /// <summary>Both forms of a solution; a project in it without boards; one name for two boards.</summary>
    [Fact]
    public async Task A_solution_is_reviewed_project_by_project()
    {
        using var scratch = new ScratchProject("Front").With(ScratchProject.Lockhouse, "Front");
        scratch.Add("Rear");
        scratch.With(ScratchProject.Lockhouse.Replace("namespace Lockhouse", "namespace Lockhouse.Rear", StringComparison.Ordinal).Replace("600.Watts()", "750.Watts()", StringComparison.Ordinal), "Rear");
        scratch.Add("Tools");
        scratch.Write("Tools/Program.cs", "namespace Tools; public static class Nothing;");
        var slnx = scratch.Write("House.slnx", """<Solution><Project Path="Front/Front.csproj" /><Folder Name="/More/"><Project Path="Rear/Rear.csproj" /><Project Path="Tools/Tools.csproj" /></Folder></Solution>""");
        var sln = scratch.Write("House.sln", "Microsoft Visual Studio Solution File, Format Version 12.00\n" + string.Concat(((string[])["Tools", "Rear", "Front"]).Select((name, i) =>
            $"Project(\"{{FAE04EC0-301F-11D3-BF4B-00C04F79EFBC}}\") = \"{name}\", \"{name}\\{name}.csproj\", \"{{0000000{i}-0000-0000-0000-000000000000}}\"\nEndProject\n")) + "Global\nEndGlobal\n");
        string[] expected = ["Lockhouse.LockhouseShelf.json", "Lockhouse.Rear.LockhouseShelf.json"];
        var written = new List<string[]>();
        foreach (var solution in new[] { slnx, sln })
        {
            var output = Path.Combine(scratch.Folder, Path.GetExtension(solution)[1..]);
            var ran = (await ScratchProject.RunAsync("review", solution, "--format", "json", "--output", output)).Ends(1);
            Assert.Contains("Lockhouse.Rear.LockhouseShelf: 9 fails", ran.Output, StringComparison.Ordinal);
            Assert.Equal(expected, Directory.GetFiles(output).Select(Path.GetFileName).Order(StringComparer.Ordinal));
            written.Add([.. expected.Select(file => File.ReadAllText(Path.Combine(output, file)))]);
        }

        Assert.Equal(written[0], written[1]);
    }

    /// <summary>A board that does not compile is reviewed as far as it goes, and no further verdict is given.</summary>
    [Fact]
    public async Task A_project_that_does_not_compile_is_reviewed_and_said_to_be_undecided()
    {
        using var project = new ScratchProject().With(ScratchProject.Lockhouse.Replace("Parts.Fuses.Reed25", "Parts.Fuses.Reed26", StringComparison.Ordinal));
        var ran = (await project.ReviewAsync("--strict", "--format", "html,json,markdown")).Ends(2);
        Assert.Contains("The source does not compile (1 error, the first CS0117 at Board.cs:", ran.Output, StringComparison.Ordinal);
        var json = JsonNode.Parse(File.ReadAllText(Path.Combine(project.Output, "LockhouseShelf.json")))!;
        Assert.Equal("undecided", (string?)json["verdict"]);
        Assert.Equal("CS0117", (string?)Assert.Single(json["compilerErrors"]!.AsArray())!["rule"]);
        Assert.NotEmpty(json["checks"]!.AsArray());
        Assert.Contains("The source does not compile", File.ReadAllText(Path.Combine(project.Output, "LockhouseShelf.html")), StringComparison.Ordinal);
        Assert.Contains("The source does not compile", File.ReadAllText(Path.Combine(project.Output, "LockhouseShelf.md")), StringComparison.Ordinal);

        // Half a file: no rail can be read, which no setting lets pass.
        project.Write("Shelf/Board.cs", ScratchProject.Lockhouse[..(ScratchProject.Lockhouse.Length / 2)]);
        Assert.Contains("has no rails, so nothing is checked", (await project.ReviewAsync("--no-restore")).Ends(1).Output, StringComparison.Ordinal);
    }

    /// <summary>What the review needs is missing: it says what, why and what to do, and writes nothing.</summary>
    [Fact]
    public async Task What_cannot_be_reviewed_is_said()
    {
        using var scratch = new ScratchProject("Empty");
        scratch.Write("Empty/Class.cs", "namespace Empty; public static class Board;");
        scratch.Write("Broken/Broken.csproj", "<Project Sdk=\"Microsoft.NET.Sdk\"><PropertyGroup>");
        scratch.Write("Two/A.csproj", "<Project />");
        scratch.Write("Two/B.csproj", "<Project />");
        scratch.Write("Two/Board.cs", "");
        scratch.Write("Hollow.slnx", "<Solution></Solution>");
        scratch.Write("Bare/.keep", "");
        await Says("Empty", "has no board", "mark the class");
        await Says("Broken", "MSBuild cannot prepare", "dotnet build");
        await Says("Two", "several candidates", "name one of them");
        await Says("Two/Board.cs", "neither a project nor a solution", "name a project");
        await Says("Hollow.slnx", "gives no C# project", "name a solution");
        await Says("Bare", "has no project", "name a project or solution");
        await Says("Nowhere", "neither a file nor a folder has that name", "name a project");
        await Says("Empty", "--max-loss compares with a baseline", "--help", "--max-loss", "0.05");
        await Says("Empty", "The baseline", "give a JSON file", "--baseline", Path.Combine(scratch.Folder, "Two", "A.csproj"));
        await Says("Empty", "'pdf' is no format", "--help", "--format", "html,pdf");
        await Says("Empty", "There is no folder", "name the folder", "--root", "nowhere");

        // An output folder in which nothing can be written, for the superuser either.
        await Says("Empty", "cannot be written", "--output", "--output", scratch.Write("file", ""));
        if (OperatingSystem.IsLinux())
        {
            await Says("Empty", "cannot be written", "--output", "--output", "/proc/railrules");
        }

        async Task Says(string path, string what, string remedy, params string[] arguments)
        {
            var output = Path.Combine(scratch.Folder, "out");
            var ran = (await ScratchProject.RunAsync(["review", Path.Combine(scratch.Folder, path), .. arguments.Contains("--output") ? [] : (string[])["--output", output], .. arguments])).Ends(3);
            Assert.Contains(what, ran.Error, StringComparison.Ordinal);
            Assert.Contains(remedy, ran.Error, StringComparison.Ordinal);
            Assert.Empty(ran.Output);
            Assert.True(!Directory.Exists(output) || Directory.GetFileSystemEntries(output).Length == 0, "nothing is written");
        }
    }

    /// <summary>
    /// Interrupted in the middle: what was written before stays whole, and nothing half stands beside it. The signal is SIGTERM, which the tool takes as it takes Ctrl+C: a shell that
    /// runs the tests in the background lets them ignore SIGINT.
    /// </summary>
    [Fact]
    public async Task Interrupted_it_leaves_no_half_file()
    {
        using var project = new ScratchProject().With(ScratchProject.Lockhouse);
        var before = project.Write("out/LockhouseShelf.html", "the last review");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [typeof(Tool.Commands).Assembly.Location, "review", project.File, "--output", project.Output, "--format", "json,html"]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();

        // The restore writes into obj long before the first review is ready.
        while (!Directory.Exists(Path.Combine(project.Folder, "Shelf", "obj")))
        {
            Assert.False(process.HasExited, "it ended before it could be interrupted");
            await Task.Delay(20);
        }

        using (var kill = Process.Start("kill", ["-TERM", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]))
        {
            await kill.WaitForExitAsync();
        }

        await process.WaitForExitAsync();
        Assert.Equal((130, ""), (process.ExitCode, await output));
        Assert.Contains("Interrupted", await error, StringComparison.Ordinal);
        Assert.Equal([before], Directory.GetFileSystemEntries(project.Output));
        Assert.Equal("the last review", File.ReadAllText(before));

        // And between two files of one run.
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Tool.Output.WriteAsync(before, "half", new CancellationToken(canceled: true)));
        Assert.Equal([before], Directory.GetFileSystemEntries(project.Output));
        Assert.Equal("the last review", File.ReadAllText(before));
    }

    [Fact]
    public async Task Help_has_usage_examples_exit_codes_and_cautions()
    {
        var help = (await ScratchProject.RunAsync("review", "--help")).Ends(0).Output;
        Assert.All((string[])["railrules review [<PATH>] [options]", "--strict", "Examples:", "Exit codes:", "Cautions:"], text => Assert.Contains(text, help, StringComparison.Ordinal));
        foreach (var shell in new[] { "bash", "zsh", "pwsh" })
        {
            Assert.Contains("railrules", (await ScratchProject.RunAsync("completion", shell)).Ends(0).Output, StringComparison.Ordinal);
        }

        Assert.Contains("--format", (await ScratchProject.RunAsync("[suggest:18]", "railrules review --f")).Ends(0).Output, StringComparison.Ordinal);
    }
}
