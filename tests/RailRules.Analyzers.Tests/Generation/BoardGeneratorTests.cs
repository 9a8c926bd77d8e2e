using System.Collections.Immutable;
using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers.Generation;
using RailRules.Analyzers.Tests.Boards;

namespace RailRules.Analyzers.Tests.Generation;

public sealed class BoardGeneratorTests
{
    private const string Usings = "using System.Collections.Immutable; using RailRules;\n";

    private const string Shelf = Usings + """
        namespace Site;
        public sealed record Pair(Rail Left, Rail Right);
        [Board]
        public static partial class Shelf
        {
            static readonly Supply Plant = new() { Voltage = 54.Volts(), ContinuousCurrent = 100.Amperes() };
            static readonly Trace Copper = new() { Resistance = 1.Milliohms() };
            static readonly Fuse Reed = new() { PartNumber = "Reed", RatedCurrent = 20.Amperes(), DcVoltageRating = 80.Volts() };
            public static readonly Rail Bus = Make("Bus", Plant);
            public static readonly ImmutableArray<Rail> Sleds = [.. Enumerable.Range(1, 2).Select(i => Make($"Sled {i}", Bus))];
            internal static readonly (Rail First, int Number, ImmutableArray<Rail> Others) Mixed = (Make("M1", Bus), 3, [Make("M2", Bus)]);
            static readonly Dictionary<string, Rail> ByName = new() { ["pump"] = Make("Pump", Bus) };
            static readonly Pair Twin = new(Make("T1", Bus), Make("T2", Bus));
            static readonly List<Pair> Twins = [new(Make("T3", Bus), Make("T4", Bus))];
            static Rail Door => Make("Door", new Converter { Input = Bus, Output = 12.Volts(), Efficiency = 0.9.DecimalFractions() });
            public static readonly int Count = 3;
            static readonly Rail? Absent = null;
            static readonly ImmutableArray<Rail> None = default;
            static Rail Make(string name, Source from) => new() { Name = name, From = from, Path = [Reed.As("F_" + name), Copper], Return = Return.Of([Copper, new Wire { Name = "back", Resistance = 1.Milliohms() }]), Loads = [new() { Power = 10.Watts() }] };
            public static class Front { public static readonly Rail Lamp = Make("Lamp", Bus); }
        }
        """;

    [Fact]
    public void Every_rail_source_and_part_has_the_name_that_it_has_in_code()
    {
        var assembly = BoardHost.Run(("Shelf.cs", Shelf)).Load();
        var model = BoardHost.Model(assembly, "Site.Shelf");
        Assert.Equal("Shelf", model.Name);
        Assert.Empty(model.NotReached);
        Assert.Equal(
            ["Bus=Bus", "Sleds[0]=Sled 1", "Sleds[1]=Sled 2", "Mixed.Item1=M1", "Mixed.Item3[0]=M2", "ByName[\"pump\"]=Pump", "Twin.Left=T1", "Twin.Right=T2", "Twins[0].Left=T3", "Twins[0].Right=T4", "Door=Door", "Front.Lamp=Lamp"],
            model.Rails.Select(rail => $"{model.NameOf(rail)}={rail.Name}"));
        Assert.Equal(["Plant", "Door.From"], model.Sources.Select(model.NameOf));
        Assert.Equal(["Copper", "Reed", "Bus.Path[0]", "Bus.Return[1]", "Sleds[0].Path[0]"], model.Parts.Select(model.NameOf).Take(5));
        Assert.Equal("Sleds[1].Loads[0]", model.NameOf(model.Rails[2].Loads[0]));
        Assert.Null(model.NameOf("Bus"));
        Assert.Same(assembly.GetType("Site.Shelf")!.GetField("Bus")!.GetValue(null), model.Rails[0]);
        Assert.Same(model, BoardHost.Model(assembly, "Site.Shelf"));
        Assert.Equal(["Plant", "Copper", "Reed", "Bus", "Sleds", "Mixed", "ByName", "Twin", "Twins", "Door", "Absent", "None", "Front.Lamp"], model.Members.Select(member => member.Name));
    }

    /// <summary>The oracle is the analyzer's own evaluation, which reads the source and not the program.</summary>
    [Fact]
    public void The_review_of_the_program_is_that_of_the_analyzer()
    {
        var host = BoardHost.Run(("Shelf.cs", Shelf));
        var expected = BoardHost.Text(host.Checks("Site.Shelf")).ToList();
        Assert.True(expected.Count > 50);
        Assert.Equal(expected, BoardHost.Text(BoardHost.Review(host.Load(), "Site.Shelf")));
    }

    [Fact]
    public void The_sound_sample_has_its_model()
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "Samples", "Lockhouse");
        var host = BoardHost.Run([.. Directory.EnumerateFiles(folder, "*.cs").Select(file => (Path.GetFileName(file), File.ReadAllText(file)))]);
        var checks = BoardHost.Review(host.Load(), "Lockhouse.LockhouseShelf");
        Assert.Equal(BoardHost.Text(host.Checks("Lockhouse.LockhouseShelf")), BoardHost.Text(checks));
        Assert.DoesNotContain(checks, check => check.Verdict is Verdict.Fails or Verdict.Undecided);
        Assert.Contains(checks, check => check is { Rule: "LOCK002", Verdict: Verdict.Holds });
    }

    /// <summary>Cold code of a user's compiler: the oldest C# in which boards are written, and warnings as errors.</summary>
    [Fact]
    public void What_is_generated_compiles_in_CSharp_12_without_a_warning()
    {
        var compilation = AnalyzerHost.Compile(("Shelf.cs", Shelf));
        compilation = compilation.RemoveAllSyntaxTrees().AddSyntaxTrees(compilation.SyntaxTrees.Select(tree => CSharpSyntaxTree.ParseText(tree.ToString(), new CSharpParseOptions(LanguageVersion.CSharp12), tree.FilePath)));
        BoardHost.Driver(LanguageVersion.CSharp12).RunGeneratorsAndUpdateCompilation(compilation, out var updated, out _);
        Assert.Empty(updated.GetDiagnostics().Where(diagnostic => diagnostic.Severity >= DiagnosticSeverity.Warning && diagnostic.Id != "CS1701"));
    }

    [Theory]
    [InlineData("namespace A.@class.B; public partial struct @struct { internal partial interface I { [Board] internal partial record @record { public static readonly Rail @event = null!; } } }", "A.class.B.struct+I+record")]
    [InlineData("[Board] partial class value { public static Rail at = new(), to = new(), x0 = new(); static readonly List<(Rail, int)> at0 = []; }", "value")]
    [InlineData("[Board] static partial class Été { static readonly Rail Ä = new(); }", "Été")]
    public void Any_name_compiles(string source, string type)
    {
        var host = BoardHost.Run(("Names.cs", Usings + source));
        TableHost.AssertCompiles(host.Compilation);
        Assert.NotNull(host.Compilation.GetTypeByMetadataName(type)!.GetMembers("Model").Single());
    }

    [Fact]
    public void Boards_whose_names_differ_in_case_alone_have_a_model_each()
    {
        var host = BoardHost.Run(("A.cs", Usings + "[Board] static partial class Shelf { public static readonly Rail A = new(); } [Board] static partial class shelf { public static readonly Rail B = new(); }"));
        TableHost.AssertCompiles(host.Compilation);
        Assert.Equal("B", BoardHost.Model(host.Load(), "shelf").Rails.Single().Name);
    }

    [Fact]
    public void A_board_of_several_files_has_one_model()
    {
        var host = BoardHost.Run(("A.cs", Usings + "[Board] static partial class Shelf { public static readonly Rail A = new(); }"), ("B.cs", Usings + "static partial class Shelf { public static readonly Rail B = new(); }"));
        TableHost.AssertCompiles(host.Compilation);
        Assert.Equal(["A", "B"], BoardHost.Model(host.Load(), "Shelf").Rails.Select(rail => rail.Name));
    }

    [Theory]
    [InlineData("[Board] static partial class Shelf { static readonly Rail Bus = Plant.Rail; public static int Model => 1; } ", "'Model' is a name that the generated Model and Review() of board 'Shelf' need")]
    [InlineData("[Board] static partial class Shelf { static readonly Rail Bus = Plant.Rail; static void Review() { } } ", "'Review' is a name")]
    [InlineData("[Board] static partial class Shelf { static readonly Rail Bus = Plant.Rail; class Review { } } ", "'Review' is a name")]
    [InlineData("[Board] static partial class Model { static readonly Rail Bus = Plant.Rail; } ", "'Model' is a name")]
    public async Task A_clash_with_a_member_of_the_user_s_own_is_said(string source, string message)
    {
        var host = BoardHost.Run(("Shelf.cs", Usings + source + Plant));
        Assert.Contains(message, Assert.Single(await host.Findings(), finding => finding.Contains("RAIL0012", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.DoesNotContain(host.Compilation.SyntaxTrees, tree => tree.FilePath.EndsWith(".Board.g.cs", StringComparison.Ordinal));
    }

    private const string Plant = "static class Plant { public static readonly Rail Rail = new() { From = new Supply { Voltage = 5.Volts() } }; }";

    /// <summary>A board that is not partial is as good a board as any: nothing is said of it until somebody asks for its model.</summary>
    [Theory]
    [InlineData("[Board] static class Shelf { static readonly Rail Bus = Plant.Rail; }", "Shelf.Model", "'Shelf' is not partial; write 'partial class Shelf'")]
    [InlineData("[Board] static class Shelf { static readonly Rail Bus = Plant.Rail; }", "Shelf.Review()", "'Shelf' is not partial")]
    [InlineData("static class Hall { [Board] internal static partial class Shelf { static readonly Rail Bus = Plant.Rail; } }", "Hall.Shelf.Model", "'Hall' around it is not partial")]
    public async Task A_board_without_a_model_says_why_where_it_is_asked_for_one(string source, string use, string message)
    {
        var quiet = await BoardHost.Run(("Shelf.cs", Usings + source + Plant)).Findings();
        Assert.DoesNotContain(quiet, finding => finding.Contains("RAIL0012", StringComparison.Ordinal));
        var asked = BoardHost.Run(("Shelf.cs", Usings + source + Plant), ("Use.cs", $"class Use {{ object A = {use}; }}"));
        var findings = (await AnalyzerHost.FindingsByDocument(asked.Compilation)).Select(AnalyzerHost.Text);
        var finding = Assert.Single(findings, finding => finding.Contains("RAIL0012", StringComparison.Ordinal));
        Assert.StartsWith("Use.cs", finding, StringComparison.Ordinal);
        Assert.Contains(message, finding, StringComparison.Ordinal);
    }

    /// <summary>What the generated code cannot look into is not passed in silence.</summary>
    [Theory]
    [InlineData("static readonly object Any = new Box(new Rail());", "Any")]
    [InlineData("static readonly IHold Held = new Box(new Rail());", "Held")]
    [InlineData("static readonly Base Derived = new Box(new Rail());", "Derived")]
    [InlineData("static readonly Hidden Kept = new(new Rail());", "Kept.rail")]
    [InlineData("static readonly Captured Caught = new(new Rail());", "Caught.rail")]
    [InlineData("static class Inner { static readonly Rail Deep = new(); }", "Inner.Deep")]
    public void What_is_not_reached_is_undecided(string member, string name)
    {
        var types = "interface IHold { } class Base { } sealed class Box(Rail rail) : Base, IHold { public Rail Rail { get; } = rail; } class Hidden { private readonly Rail rail; public Hidden(Rail rail) => this.rail = rail; public string Name => rail.Name; } class Captured(Rail rail) { public string Name => rail.Name; }";
        var assembly = BoardHost.Run(("Shelf.cs", Usings + "[Board] static partial class Shelf { static readonly Rail Bus = new(); " + member + " } " + types)).Load();
        Assert.Equal(name, Assert.Single(BoardHost.Model(assembly, "Shelf").NotReached));
        var check = Assert.Single(BoardHost.Review(assembly, "Shelf"), check => check.Rule == "RAIL0012");
        Assert.Equal(Verdict.Undecided, check.Verdict);
        Assert.Contains($"'{name}' may hold rails", check.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("static readonly Box A = new(new Rail());")]
    [InlineData("static readonly Helper A = new(); static readonly string B = \"x\"; static readonly Func<int> C = () => 1; static readonly List<string> D = []; static readonly DateTime E = default;")]
    [InlineData("static readonly object A = 3; static readonly object[] B = [1, \"x\", 'c', 2.5m, Unit.One];")]
    [InlineData("static readonly Node A = new();")]
    public void What_holds_no_rails_is_not_said_to_be_out_of_reach(string member)
    {
        var types = "sealed record Box(Rail Rail); class Helper { public int Number = 3; private readonly string name = \"\"; public string Name => name; } enum Unit { One } sealed class Node { public Node? Next; public Rail Rail = new(); public Node() => Next = this; }";
        var assembly = BoardHost.Run(("Shelf.cs", Usings + "[Board] static partial class Shelf { static readonly Rail Bus = new(); " + member + " } " + types)).Load();
        Assert.Empty(BoardHost.Model(assembly, "Shelf").NotReached);
    }

    [Fact]
    public void Waivers_count_in_the_review_as_in_the_build()
    {
        var source = Usings + """
            [Board]
            [Waiver("RAIL0101", On = nameof(Bus), Reason = "a \"quoted\" reason\n", ApprovedBy = "lead", Until = "2027-06-30")]
            static partial class Shelf
            {
                static readonly Supply Plant = new() { Voltage = 54.Volts(), TransientMax = 60.Volts() };
                static readonly Rail Bus = new() { From = Plant, Path = [new Fuse { DcVoltageRating = 58.Volts() }] };
                [Waiver("RAIL0101", Reason = "r", ApprovedBy = "a")] static class Front { public static readonly Rail Lamp = new() { From = Plant, Path = [new Fuse { DcVoltageRating = 58.Volts() }] }; }
            }
            """;
        var host = BoardHost.Run(("Shelf.cs", source));
        var assembly = host.Load();
        Assert.Equal(BoardHost.Text(host.Checks("Shelf")), BoardHost.Text(BoardHost.Review(assembly, "Shelf")));
        Assert.Equal(2, BoardHost.Review(assembly, "Shelf").Count(check => check is { Rule: "RAIL0101", Verdict: Verdict.Waived }));
        Assert.Equal(1, BoardHost.Review(assembly, "Shelf", new DateTime(2027, 7, 1)).Count(check => check is { Rule: "RAIL0101", Verdict: Verdict.Waived }));
    }

    /// <summary>The generated members are no rails of the board, and add no initialiser whose order would not be settled.</summary>
    [Fact]
    public async Task The_analyzer_finds_the_same_with_and_without_the_generated_part()
    {
        var plain = await AnalyzerHost.Findings(AnalyzerHost.Compile(("Shelf.cs", Shelf)));
        Assert.Equal(plain.Select(AnalyzerHost.Text), await BoardHost.Run(("Shelf.cs", Shelf)).Findings());
    }

    [Fact]
    public void An_edit_elsewhere_costs_no_output_and_an_edit_of_a_value_neither()
    {
        var compilation = AnalyzerHost.Compile(("Shelf.cs", Shelf), ("Other.cs", Usings + "[Board] static partial class Other { static readonly Rail Bus = new(); }"));
        var driver = BoardHost.Driver().RunGenerators(compilation);
        driver = driver.RunGenerators(compilation.AddSyntaxTrees(AnalyzerHost.Parse("B.cs", "class B { }")));
        AssertReasons(driver, BoardGenerator.Steps.Boards, IncrementalStepRunReason.Cached, IncrementalStepRunReason.Unchanged);
        AssertReasons(driver, BoardGenerator.Steps.AllRules, IncrementalStepRunReason.Cached, IncrementalStepRunReason.Unchanged);
        Assert.All(Outputs(driver), reason => Assert.Equal(IncrementalStepRunReason.Cached, reason));

        var shelf = compilation.SyntaxTrees.Single(tree => tree.FilePath == "Shelf.cs");
        driver = driver.RunGenerators(compilation.ReplaceSyntaxTree(shelf, AnalyzerHost.Parse("Shelf.cs", Shelf.Replace("20.Amperes()", "25.Amperes()", StringComparison.Ordinal))));
        AssertReasons(driver, BoardGenerator.Steps.Boards, IncrementalStepRunReason.Cached, IncrementalStepRunReason.Unchanged);
        Assert.All(Outputs(driver), reason => Assert.Equal(IncrementalStepRunReason.Cached, reason));

        driver = driver.RunGenerators(compilation.ReplaceSyntaxTree(shelf, AnalyzerHost.Parse("Shelf.cs", Shelf.Replace("public static readonly int Count = 3;", "static readonly Rail More = new();", StringComparison.Ordinal))));
        Assert.Equal(1, Outputs(driver).Count(reason => reason == IncrementalStepRunReason.Modified));
        Assert.Equal(1, Reasons(driver, BoardGenerator.Steps.Boards).Count(reason => reason == IncrementalStepRunReason.Modified));
    }

    private static void AssertReasons(GeneratorDriver driver, string step, params IncrementalStepRunReason[] allowed) => Assert.All(Reasons(driver, step), reason => Assert.Contains(reason, allowed));

    private static ImmutableArray<IncrementalStepRunReason> Reasons(GeneratorDriver driver, string step) =>
        [.. driver.GetRunResult().Results.Single().TrackedSteps[step].SelectMany(run => run.Outputs).Select(output => output.Reason)];

    private static ImmutableArray<IncrementalStepRunReason> Outputs(GeneratorDriver driver) =>
        [.. driver.GetRunResult().Results.Single().TrackedOutputSteps.SelectMany(entry => entry.Value).SelectMany(run => run.Outputs).Select(output => output.Reason)];
}
