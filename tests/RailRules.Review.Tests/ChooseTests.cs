using System.Text;
using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers;
using RailRules.Analyzers.Choosing;
using RailRules.Tool;

namespace RailRules.Review.Tests;

/// <summary>'railrules choose' on real projects: the samples, and copies of one that it may change.</summary>
public sealed class ChooseTests : IDisposable
{
    private readonly string folder = Path.Combine(Path.GetTempPath(), "railrules-choose-" + Guid.NewGuid().ToString("N"));

    public void Dispose()
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Every fuse of the table written into the source in turn, and the board judged as the compiler judges it.</summary>
    [Fact]
    public async Task What_passes_is_what_passes_when_it_is_written_into_the_source()
    {
        var project = await new ProjectLoader(new BuildOptions(Repository.Configuration, null, Restore: true)).LoadAsync(Repository.Sample("PartsLibrary"), CancellationToken.None);
        var tree = project.Compilation.SyntaxTrees.Single(tree => Path.GetFileName(tree.FilePath) == "PumpHouse.cs");
        var choices = BoardChoices.Of(project.Compilation)!;
        var fuses = choices.Tables.All.Where(part => part.File == "InventedFuses.parts.csv").ToList();
        Assert.Equal(File.ReadAllLines(Path.Combine(Repository.Root, "samples", "PartsLibrary", "InventedFuses.parts.csv")).Count(line => line.Length > 0) - 1, fuses.Count);
        var holding = new List<string>();
        foreach (var fuse in fuses)
        {
            var text = tree.GetText().ToString().Replace("Parts.InventedFuses.Beck_30", "Parts.InventedFuses." + fuse.Member, StringComparison.Ordinal);
            var compilation = project.Compilation.ReplaceSyntaxTree(tree, CSharpSyntaxTree.ParseText(text, (CSharpParseOptions)tree.Options, tree.FilePath));
            var board = new CompilationBoards(compilation, KnownTypes.TryCreate(compilation)!).AllBoards(CancellationToken.None).Single();
            Assert.Contains(board.Rails, rail => rail.Path.Any(part => part.PartNumber == fuse.PartNumber));
            if (!board.Checks.Any(check => check.Verdict == Verdict.Fails))
            {
                holding.Add(fuse.PartNumber);
            }
        }

        Assert.NotEmpty(holding);
        var (code, json) = await Json(Repository.Sample("PartsLibrary"), "F1");
        Assert.Equal(ExitCode.Holds, code);
        Assert.Equal(holding.Order(StringComparer.Ordinal), json["passing"]!.AsArray().Select(one => (string)one!["part"]!).Order(StringComparer.Ordinal));
    }

    /// <summary>500 W at 44 V less the drop is 11.5 A: a 16 A fuse for ever at 50 °C × 0.885 carries it, a 12 A one, 10.6 A, does not; the contacts bear 35.7 A.</summary>
    [Fact]
    public async Task The_best_part_the_near_misses_and_the_window_are_told()
    {
        var (_, json) = await Json(Repository.Sample("PartsLibrary"), "PumpHouse.Controller.Path[0]");
        Assert.Equal(("PumpHouse.Controller.Path[0]", "F1", "Beck-30"), ((string)json["place"]!["name"]!, (string)json["place"]!["designator"]!, (string)json["place"]!["part"]!));
        var best = json["passing"]![0]!;
        Assert.Equal(("Ghyll-16", 16), ((string)best["part"]!, (double)best["rating"]!));
        var margin = best["margins"]!.AsArray().Single(one => (string)one!["rule"]! == "RAIL0201" && (bool)one["ofThePart"]!)!;
        Assert.Equal((double)margin["capacity"]!["value"]! / (double)margin["demand"]!["value"]!, (double)margin["margin"]!, 6);
        var misses = json["nearMisses"]!.AsArray().ToDictionary(one => (string)one!["part"]!, one => ((string)one!["rule"]!, (string)one["because"]!));
        Assert.Equal("RAIL0201", misses["Ghyll-12"].Item1);
        Assert.Contains("11.5 A", misses["Ghyll-12"].Item2, StringComparison.Ordinal);
        Assert.Equal("RAIL0204", misses["Beck-40"].Item1);
        Assert.Equal((16, "RAIL0201"), ((double)json["window"]!["least"]!, (string)json["window"]!["below"]!["rule"]!));
        Assert.InRange((double)json["window"]!["most"]!, 16, 35.7);
        Assert.NotEmpty(json["cautions"]!.AsArray());

        var (code, text, _) = await Run(Repository.Sample("PartsLibrary"), "f1");
        Assert.Equal(ExitCode.Holds, code);
        Assert.Contains($"{json["passing"]!.AsArray().Count} of 56 fuses pass", text, StringComparison.Ordinal);
        Assert.True(text.IndexOf("Ghyll-16", StringComparison.Ordinal) < text.IndexOf("Beck-20", StringComparison.Ordinal));
        Assert.Contains("Rating window among the parts tried: 16 A to ", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PartsLibrary", "F7", "There is no place 'F7'", "F1 (PumpHouse.Controller.Path[0])")]
    [InlineData("PartsLibrary", "PumpHouse.Contoller.Path[0]", "There is no place", "PumpHouse.Controller.Path[0]")]
    [InlineData("PartsLibrary", "PumpHouse.Controller.Path[9]", "There is no place", "PumpHouse.Controller.Path[2]")]
    [InlineData("PartsLibrary", "Controller.Path[1]", "No wire can be chosen for PumpHouse.Controller.Path[1]", "InventedFuses.parts.csv")]
    [InlineData("Lockhouse.Unsafe", "F11", "'F11' names several places", "LockhouseShelf.SledTwice.Path[0]")]
    [InlineData("Lockhouse.Unsafe", "F13", "There is nothing to choose from", "has no parts table")]
    public async Task What_cannot_be_chosen_ends_in_3_and_a_sentence(string sample, string at, string what, string why)
    {
        var (code, text, error) = await Run(Repository.Sample(sample), at);
        Assert.Equal(ExitCode.CannotRun, code);
        Assert.Empty(text);
        Assert.Contains(what, error, StringComparison.Ordinal);
        Assert.Contains(why, error, StringComparison.Ordinal);
        Assert.Contains("What to do: ", error, StringComparison.Ordinal);
    }

    /// <summary>Where the source does not compile rails and parts may be missing for that reason; it is said, not left to be guessed.</summary>
    [Fact]
    public async Task A_source_that_does_not_compile_is_said()
    {
        var (project, source) = Copy();
        File.WriteAllText(source, File.ReadAllText(source).Replace("Parts.InventedFuses.Beck_30", "Parts.InventedFuses.Absent", StringComparison.Ordinal));
        var (code, _, error) = await Run(project, "F7");
        Assert.Equal(ExitCode.CannotRun, code);
        Assert.Contains("the source does not compile: CS0117", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Applying_changes_the_one_expression_and_leaves_encoding_and_line_ends()
    {
        var (project, source) = Copy();
        var before = File.ReadAllText(source).ReplaceLineEndings("\r\n").Replace("Beck_30.As", "Beck_15 /* too small */ .As", StringComparison.Ordinal);
        File.WriteAllText(source, before, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        var (code, text, _) = await Run(project, "F1", apply: true);
        Assert.Equal(ExitCode.Holds, code);
        Assert.Contains("PumpHouse.cs, line", text, StringComparison.Ordinal);
        Assert.Equal([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(before.Replace("Beck_15", "Ghyll_16", StringComparison.Ordinal))], File.ReadAllBytes(source));
        var review = Assert.Single(await SampleReviews.RunOf(project).ReviewAsync((_, _, _) => { }, CancellationToken.None)).Review;
        Assert.DoesNotContain(review.Checks, check => check.Outcome == Outcome.Fails);
        Assert.Empty(Directory.GetFiles(folder, "*.part"));
    }

    [Fact]
    public async Task Another_part_is_applied_if_it_passes_and_refused_if_not()
    {
        var (project, source) = Copy();
        var before = File.ReadAllText(source);
        var (refused, _, error) = await Run(project, "F1", apply: true, part: "Beck-40");
        Assert.Equal(ExitCode.CannotRun, refused);
        Assert.Contains("not among the parts that pass", error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(source));
        var (code, json) = await Json(project, "F1", apply: true, part: "Ghyll-25");
        Assert.Equal((ExitCode.Holds, "Parts.InventedFuses.Ghyll_25", "PumpHouse.cs"), (code, (string)json["applied"]!["after"]!, (string)json["applied"]!["file"]!));
        Assert.Equal(before.Replace("Beck_30", "Ghyll_25", StringComparison.Ordinal), File.ReadAllText(source));
    }

    [Fact]
    public async Task A_file_that_changed_since_it_was_read_is_left_alone()
    {
        var (project, source) = Copy();
        var (code, _, error) = await Run(project, "F1", apply: true, between: path => File.AppendAllText(path, "// a line that someone else saved\n"));
        Assert.Equal(ExitCode.CannotRun, code);
        Assert.Contains("has changed since it was read", error, StringComparison.Ordinal);
        Assert.EndsWith("someone else saved\n", File.ReadAllText(source), StringComparison.Ordinal);
        Assert.Contains("Beck_30", File.ReadAllText(source), StringComparison.Ordinal);
    }

    /// <summary>No fuse of the table interrupts 700 kA.</summary>
    [Fact]
    public async Task Where_nothing_passes_the_rules_that_leave_no_room_are_named_and_nothing_is_written()
    {
        var (project, source) = Copy();
        var before = File.ReadAllText(source).Replace("3.1.Kiloamperes(), 7.Kiloamperes()", "3.1.Kiloamperes(), 700.Kiloamperes()", StringComparison.Ordinal);
        File.WriteAllText(source, before);
        var (code, json) = await Json(project, "F1", apply: true);
        Assert.Equal(ExitCode.Fails, code);
        Assert.Empty(json["passing"]!.AsArray());
        Assert.Equal("RAIL0301", (string)json["noRoom"]!["first"]!);
        Assert.Null((string?)json["noRoom"]!["second"]);
        Assert.Null(json["applied"]);
        Assert.Equal(before, File.ReadAllText(source));
        var (_, text, _) = await Run(project, "F1");
        Assert.Contains("Nothing passes: RAIL0301 rules out every part tried", text, StringComparison.Ordinal);
    }

    /// <summary>Two rails with one part.</summary>
    [Fact]
    public async Task A_second_source_is_judged_in_every_place_of_the_part()
    {
        var (project, source) = Copy();
        var text = File.ReadAllText(source).Replace("Beck_30", "Beck_25", StringComparison.Ordinal);
        var rail = text[text.IndexOf("    public static readonly Rail Controller", StringComparison.Ordinal)..text.LastIndexOf('}')];
        File.WriteAllText(source, text[..text.LastIndexOf('}')] + rail.Replace("Controller", "Gate", StringComparison.Ordinal).Replace("\"F1\"", "\"F2\"", StringComparison.Ordinal).Replace("\"X1\"", "\"X2\"", StringComparison.Ordinal).Replace("500.Watts()", "900.Watts()", StringComparison.Ordinal) + "}\n");
        var run = new StringWriter();
        var code = await new ChooseRun(new ChooseOptions(project, new BuildOptions(null, null, Restore: true), null, "Beck-25", null, false, "json", 10), run, new StringWriter()).RunAsync(CancellationToken.None);
        var json = JsonNode.Parse(run.ToString())!;
        Assert.Equal(["F1", "F2"], json["uses"]!.AsArray().Select(use => (string)use!["designator"]!));
        var alternates = json["alternates"]!.AsArray();
        Assert.NotEmpty(alternates);
        Assert.Equal(code == ExitCode.Holds, alternates.Any(one => (bool)one!["holdsEverywhere"]!));
        foreach (var alternate in alternates)
        {
            var (holds, fails) = (Names(alternate!["holds"]!), Names(alternate["fails"]!));
            Assert.Equal(["PumpHouse.Controller.Path[0]", "PumpHouse.Gate.Path[0]"], holds.Concat(fails).Order(StringComparer.Ordinal));
            Assert.Equal((bool)alternate["holdsEverywhere"]!, fails.Count == 0);
        }

        var ghyll = alternates.Single(one => (string)one!["part"]! == "Ghyll-25")!;
        Assert.True((bool)ghyll["named"]!);
        var (unknown, _, error) = await Second(project, "Beck-99");
        Assert.Equal(ExitCode.CannotRun, unknown);
        Assert.Contains("they use", error, StringComparison.Ordinal);
        Assert.Contains("Beck-25", error, StringComparison.Ordinal);

        static List<string> Names(JsonNode list) => [.. list.AsArray().Select(one => (string)one!["place"]!)];
    }

    /// <summary>The sample with the parts tables, in a folder of its own, as a project that refers to the library's file.</summary>
    private (string Project, string Source) Copy()
    {
        Directory.CreateDirectory(folder);
        foreach (var file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", "PartsLibrary")).Where(file => Path.GetExtension(file) is ".cs" or ".csv"))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        var project = Path.Combine(folder, "PartsLibrary.csproj");
        File.WriteAllText(project, $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <TargetFramework>net10.0</TargetFramework>
                <Nullable>enable</Nullable>
                <ImplicitUsings>enable</ImplicitUsings>
              </PropertyGroup>
              <Import Project="{Path.Combine(Repository.Root, "src", "RailRules.Package", "build", "RailRules.props")}" />
              <ItemGroup>
                <Reference Include="{Path.Combine(AppContext.BaseDirectory, "RailRules.dll")}" />
                <Reference Include="{Path.Combine(AppContext.BaseDirectory, "UnitsNet.dll")}" />
              </ItemGroup>
            </Project>
            """);
        return (project, Path.Combine(folder, "PumpHouse.cs"));
    }

    private static async Task<(int Code, JsonNode Json)> Json(string project, string at, bool apply = false, string? part = null)
    {
        var (code, text, error) = await Run(project, at, "json", apply, part);
        Assert.True(text.Length > 0, error);
        return (code, JsonNode.Parse(text)!);
    }

    private static async Task<(int Code, string Output, string Error)> Run(string project, string at, string format = "text", bool apply = false, string? part = null, Action<string>? between = null)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var configuration = project.StartsWith(Repository.Root, StringComparison.Ordinal) ? Repository.Configuration : null;
        var run = new ChooseRun(new ChooseOptions(project, new BuildOptions(configuration, null, Restore: true), at, null, part, apply, format, 10), output, error) { BeforeWrite = between };
        return (await run.RunAsync(CancellationToken.None), output.ToString(), error.ToString());
    }

    private static async Task<(int Code, string Output, string Error)> Second(string project, string part)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        return (await new ChooseRun(new ChooseOptions(project, new BuildOptions(null, null, Restore: true), null, part, null, false, "text", 10), output, error).RunAsync(CancellationToken.None), output.ToString(), error.ToString());
    }
}
