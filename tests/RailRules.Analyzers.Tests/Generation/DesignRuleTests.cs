using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Generation;
using RailRules.Analyzers.Tests.Boards;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>Rules of the team's own: interpreted by the analyzer, run by Review(); both must say the same.</summary>
public sealed class DesignRuleTests
{
    private const string Board = """
        using System.Collections.Immutable; using RailRules;
        [Board]
        static partial class Shelf
        {
            static readonly Supply Plant = new() { Voltage = 54.Volts(), ContinuousCurrent = 100.Amperes() };
            static readonly Fuse Reed = new() { PartNumber = "Reed", RatedCurrent = 20.Amperes(), Citation = "page 3" };
            public static readonly Rail Bus = new() { From = Plant, Path = [Reed.As("F1"), new Fuse { Name = "bare" }] };
            public static readonly Rail Sled = new() { From = Bus, Path = [Reed.As("F2")], Loads = [new() { Current = 18.Amperes() }] };
        }

        """;

    private const string Rules = """
        using RailRules;
        static class HouseRules
        {
            private const double Share = 0.8;

            /// <summary>Every fuse has a citation, see <see cref="RailRules.Fuse.Citation"/>: the &amp; house rule.</summary>
            [DesignRule("LOCK001", "A fuse without a citation", Severity = FindingSeverity.Error)]
            internal static IEnumerable<Check> Cited(Rail rail)
            {
                foreach (var fuse in rail.Path.OfType<Fuse>())
                {
                    yield return Check.That(fuse.Citation is not null, $"'{fuse.Name ?? fuse.PartNumber}' on '{rail.Name}' has no citation");
                }
            }

            [DesignRule("LOCK002", "A fuse used above the house's share of its rating")]
            internal static IEnumerable<Check> Share80(Rail rail) =>
                from load in rail.Loads
                from part in rail.Path.Select((part, index) => (part, index))
                where part.part is Fuse
                let fuse = (Fuse)part.part
                select load.Current is not { } current ? Check.Undecided(load, nameof(Load.Current), "load")
                    : fuse.RatedCurrent is not { } rated ? Check.Undecided(fuse, nameof(Fuse.RatedCurrent), fuse.Name ?? "fuse")
                    : Check.Weigh(new Figure(current.Max.Amperes, "A"), new Figure(rated.Amperes * Share, "A"), $"'{fuse.PartNumber}' carries {new Figure(current.Max.Amperes, "A").Text}", new DatumPlace(rail, nameof(Rail.Path), part.index), new DatumPlace(fuse, nameof(Fuse.RatedCurrent)));

            [DesignRule("LOCK003", "Too many rails", Severity = FindingSeverity.Information)]
            internal static IEnumerable<Check> Rails(BoardModel board)
            {
                yield return Check.That(board.Rails.Length < 2, $"{board.Name} has {board.Rails.Length} rails: {string.Join(", ", board.Rails.Select(rail => board.NameOf(rail)))}; {board.Parts.Length} parts, {board.Sources.Length} source");
            }
        }
        """;

    [Fact]
    public async Task A_rule_finds_at_the_rail_and_its_id_stands_first()
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", Rules));
        TableHost.AssertCompiles(host.Compilation);
        var found = (await AnalyzerHost.Findings(host.Compilation)).Where(finding => finding.Id == "RAIL0910").ToList();
        Assert.Equal(
            [
                "Shelf.cs(3,22): RAIL0910: LOCK003: Shelf has 2 rails: Bus, Sled; 4 parts, 1 source",
                "Shelf.cs(7,39): RAIL0910: LOCK001: 'bare' on 'Bus' has no citation",
                "Shelf.cs(8,68): RAIL0910: LOCK002: 'Reed' carries 18 A",
            ],
            found.Select(AnalyzerHost.Text));
        Assert.Equal([DiagnosticSeverity.Info, DiagnosticSeverity.Error, DiagnosticSeverity.Warning], found.Select(finding => finding.Severity));
        Assert.Equal(["LOCK003", "LOCK001", "LOCK002"], found.Select(finding => finding.Properties["rule"]));
        Assert.Equal("Every fuse has a citation, see Citation: the & house rule.", found[1].Properties["help"]);
        Assert.Equal("Reed", host.Compilation.SyntaxTrees.Single(tree => tree.FilePath == "Shelf.cs").ToString().Substring(found[2].AdditionalLocations[0].SourceSpan.Start - 40, 100).Split('"')[1]);
        Assert.Equal((await AnalyzerHost.Findings(host.Compilation)).Select(AnalyzerHost.Text), (await AnalyzerHost.FindingsByDocument(host.Compilation)).Select(AnalyzerHost.Text));
    }

    /// <summary>The oracle of the interpreted rule is the compiled one.</summary>
    [Fact]
    public void Review_runs_the_rules_and_says_what_the_analyzer_says()
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", Rules));
        var review = BoardHost.Review(host.Load(), "Shelf");
        Assert.Equal(BoardHost.Text(host.Checks("Shelf")), BoardHost.Text(review));
        Assert.Equal(["LOCK001 Fails", "LOCK001 Holds", "LOCK001 Holds", "LOCK002 Fails", "LOCK003 Fails"], review.Where(check => check.Rule[0] == 'L').Select(check => $"{check.Rule} {check.Verdict}").Order(StringComparer.Ordinal));
        var weighed = Assert.Single(review, check => check.Rule == "LOCK002");
        Assert.Equal(16.0 / 18, weighed.Margin!.Value, 1e-12);
        Assert.Equal("rail 'Sled': A fuse used above the house's share of its rating", weighed.Subject);
    }

    [Theory]
    [InlineData("none", null)]
    [InlineData("silent", null)]
    [InlineData("suggestion", DiagnosticSeverity.Info)]
    [InlineData("Warning", DiagnosticSeverity.Warning)]
    [InlineData("error", DiagnosticSeverity.Error)]
    [InlineData("default", DiagnosticSeverity.Error)]
    public async Task Severity_is_set_in_the_editor_s_configuration(string word, DiagnosticSeverity? severity)
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", Rules));
        var findings = await AnalyzerHost.Findings(host.Compilation, ("railrules.lock001.severity", word));
        Assert.Equal(severity, findings.SingleOrDefault(finding => finding.Properties.TryGetValue("rule", out var rule) && rule == "LOCK001")?.Severity);
        Assert.DoesNotContain(findings, finding => finding.Id == "RAIL0012");
    }

    [Fact]
    public async Task A_severity_that_is_none_is_said()
    {
        var findings = await BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", Rules)).Findings(("railrules.LOCK001.severity", "eror"));
        Assert.Contains("Rules.cs(7,6): RAIL0012: railrules.LOCK001.severity is 'eror', which is no severity; write none, suggestion, warning or error", findings);
    }

    [Theory]
    [InlineData("[DesignRule(\"\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => [];", "it has no id")]
    [InlineData("[DesignRule(\"RAIL9999\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => [];", "its id begins with RAIL")]
    [InlineData("[DesignRule(\"rail_x\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => [];", "its id begins with RAIL")]
    [InlineData("[DesignRule(\"LOCK 1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => [];", "cannot be named in .editorconfig")]
    [InlineData("[DesignRule(\"1LOCK\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => [];", "cannot be named in .editorconfig")]
    [InlineData("[DesignRule(\"LOCK1\", \" \")] internal static IEnumerable<Check> R(Rail rail) => [];", "it has no title")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\", Severity = (FindingSeverity)7)] internal static IEnumerable<Check> R(Rail rail) => [];", "its severity is none of FindingSeverity")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal IEnumerable<Check> R(Rail rail) => [];", "it is not static")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R<T>(Rail rail) => [];", "it has type parameters")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R() => [];", "its parameters are not one Rail or one BoardModel")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Rail rail, int more) => [];", "its parameters are not one Rail or one BoardModel")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Source rail) => [];", "its parameters are not one Rail or one BoardModel")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(ref Rail rail) => [];", "its parameters are not one Rail or one BoardModel")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static Check R(Rail rail) => null!;", "it does not return IEnumerable<Check>")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static List<Check> R(Rail rail) => [];", "it does not return IEnumerable<Check>")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] static IEnumerable<Check> R(Rail rail) => [];", "it is private, so that Review() cannot call it")]
    [InlineData("class Inner { [DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => []; }", "'Inner' around it is private")]
    [InlineData("internal static int P { [DesignRule(\"LOCK1\", \"t\")] get => 1; }", "it is no ordinary method")]
    [InlineData("[DesignRule(\"LOCK1\", \"t\")] internal static extern IEnumerable<Check> R(Rail rail);", "it has no body")]
    [InlineData("internal static void M() { [DesignRule(\"LOCK1\", \"t\")] static IEnumerable<Check> R(Rail rail) => []; R(null!); }", "it is a function inside a method")]
    public async Task A_rule_that_cannot_work_is_said(string rule, string message)
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", "using RailRules;\nclass HouseRules\n{\n    " + rule + "\n}"));
        var findings = (await AnalyzerHost.FindingsByDocument(host.Compilation)).Select(AnalyzerHost.Text).ToList();
        var finding = Assert.Single(findings, finding => finding.Contains("RAIL0012", StringComparison.Ordinal));
        Assert.StartsWith("Rules.cs(4,", finding, StringComparison.Ordinal);
        Assert.Contains(message, finding, StringComparison.Ordinal);
        Assert.DoesNotContain(host.Compilation.GetDiagnostics(), diagnostic => diagnostic.Severity == DiagnosticSeverity.Error);
        Assert.DoesNotContain(host.Checks("Shelf"), check => check.Rule[0] == 'L');
    }

    [Fact]
    public void A_private_rule_of_a_partial_class_works()
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", "using RailRules; namespace House { static partial class Rules { public partial struct In { [DesignRule(\"LOCK-1.x\", \"t\")] static IEnumerable<Check> R(Rail rail) { yield return Check.That(false, rail.Name); } } } }"));
        TableHost.AssertCompiles(host.Compilation);
        Assert.Equal(["Bus", "Sled"], BoardHost.Review(host.Load(), "Shelf").Where(check => check.Rule == "LOCK-1.x").Select(check => check.Message));
        Assert.Equal(["Bus", "Sled"], host.Checks("Shelf").Where(check => check.Rule == "LOCK-1.x").Select(check => check.Message));
    }

    [Fact]
    public async Task Clashing_ids_are_said_at_each_and_the_first_counts()
    {
        const string Twice = "using RailRules; static class A { [DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) { yield return Check.That(false, \"A\"); } }\nstatic class B { [DesignRule(\"lock1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) { yield return Check.That(false, \"B\"); } }";
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", Twice));
        var findings = (await host.Findings()).Where(finding => finding.Contains("RAIL0012", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, findings.Count);
        Assert.Contains("its id LOCK1 is that of 'B.R' too", findings[0], StringComparison.Ordinal);
        Assert.Contains("its id lock1 is that of 'A.R' too", findings[1], StringComparison.Ordinal);
        Assert.Equal(BoardHost.Text(host.Checks("Shelf")), BoardHost.Text(BoardHost.Review(host.Load(), "Shelf")));
        Assert.All(host.Checks("Shelf").Where(check => check.Rule.Equals("LOCK1", StringComparison.OrdinalIgnoreCase)), check => Assert.Equal("A", check.Message));
    }

    /// <summary>What cannot be interpreted is said at the expression, and passes nothing; Review() runs it.</summary>
    [Theory]
    [InlineData("yield return Check.That(System.IO.File.Exists(rail.Name), \"x\");", "RAIL0001", "File.Exists")]
    [InlineData("if (rail.Name.Length > 0) throw new System.InvalidOperationException(\"no\"); yield break;", "RAIL0010", "no")]
    [InlineData("yield return rail.Loads.Select(load => Check.That(true, \"\")).First(check => check.Margin > 3);", "RAIL0010", "this throws")]
    [InlineData("while (rail.Name.Length > 0) { } yield break;", "RAIL0002", "steps")]
    [InlineData("yield return Check.That(Helper.Value > 2, \"x\");", "RAIL0001", "Environment")]
    public async Task What_cannot_be_interpreted_is_said_and_left_undecided(string body, string id, string text)
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", "using RailRules;\nstatic class HouseRules { [DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) { " + body + " } }\nstatic class Helper { public static readonly int Value = System.Environment.ProcessId; }"));
        var findings = await AnalyzerHost.Findings(host.Compilation);
        var finding = Assert.Single(findings, finding => finding.Id == id);
        Assert.Equal("Rules.cs", finding.Location.GetLineSpan().Path);
        Assert.Contains(text, finding.GetMessage(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Equal(findings.Select(AnalyzerHost.Text), (await AnalyzerHost.FindingsByDocument(host.Compilation)).Select(AnalyzerHost.Text));
        Assert.All(host.Checks("Shelf").Where(check => check.Rule == "LOCK1"), check => Assert.Equal(Verdict.Undecided, check.Verdict));
        Assert.Equal(2, host.Checks("Shelf").Count(check => check.Rule == "LOCK1"));
    }

    [Fact]
    public async Task A_datum_that_could_not_be_worked_out_leaves_the_rule_undecided()
    {
        var host = BoardHost.Run(
            ("Shelf.cs", Board.Replace("Current = 18.Amperes()", "Current = System.Environment.ProcessId.Amperes()", StringComparison.Ordinal)),
            ("Rules.cs", "using RailRules; static class HouseRules { [DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) => rail.Loads.Select(load => Check.That(load.Current!.Value.Max.Amperes < 1e9, \"x\")); }"));
        Assert.Equal(Verdict.Undecided, Assert.Single(host.Checks("Shelf"), check => check is { Rule: "LOCK1", Rail.Name: "Sled" }).Verdict);
        Assert.DoesNotContain(await host.Findings(), finding => finding.Contains("RAIL0910", StringComparison.Ordinal) || finding.Contains("internal:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_rule_is_waived_by_its_id()
    {
        const string Waiver = "[Waiver(\"LOCK001\", On = \"Bus\", Reason = \"why\", ApprovedBy = \"lead\")] [Waiver(\"LOCK009\", Reason = \"why\", ApprovedBy = \"lead\")] [Board]";
        var host = BoardHost.Run(("Shelf.cs", Board.Replace("[Board]", Waiver, StringComparison.Ordinal)), ("Rules.cs", Rules));
        var findings = await AnalyzerHost.Findings(host.Compilation);
        var waived = Assert.Single(findings, finding => finding.Id == "RAIL0015");
        Assert.StartsWith("LOCK001 is waived: 'bare' on 'Bus' has no citation; reason: why", waived.GetMessage(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Equal(DiagnosticSeverity.Info, waived.Severity);
        Assert.Contains("there is no rule LOCK009", Assert.Single(findings, finding => finding.Id == "RAIL0012").GetMessage(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Equal(BoardHost.Text(host.Checks("Shelf")), BoardHost.Text(BoardHost.Review(host.Load(), "Shelf")));
    }

    /// <summary>A rule may not wave itself through.</summary>
    [Fact]
    public void A_rule_that_says_waived_has_failed()
    {
        var host = BoardHost.Run(("Shelf.cs", Board), ("Rules.cs", "using RailRules; static class HouseRules { [DesignRule(\"LOCK1\", \"t\")] internal static IEnumerable<Check> R(Rail rail) { yield return Check.That(false, \"x\") with { Verdict = Verdict.Waived }; } }"));
        Assert.All(BoardHost.Review(host.Load(), "Shelf").Where(check => check.Rule == "LOCK1"), check => Assert.Equal(Verdict.Fails, check.Verdict));
    }

    /// <summary>Compiled rules of a reference: never run by the analyzer, which says so; run by Review().</summary>
    [Fact]
    public async Task Rules_of_a_reference_run_in_the_review_and_are_said_not_to_run_at_compile_time()
    {
        const string Library = """
            using RailRules; namespace House;
            public static class Rules
            {
                /// <summary>Named "rails" only.</summary>
                [DesignRule("HOUSE1", "A rail called Sled", Severity = FindingSeverity.Error)] public static IEnumerable<Check> Named(Rail rail) { yield return Check.That(rail.Name != "Sled", "called Sled"); }
                [DesignRule("HOUSE2", "Not exported")] internal static IEnumerable<Check> Own(Rail rail) { yield return Check.That(false, "no"); }
            }
            """;
        var library = BoardHost.Run(AnalyzerHost.Compile(("Rules.cs", Library)).WithAssemblyName("House")).Compilation;
        TableHost.AssertCompiles(library);
        using var image = new MemoryStream();
        Assert.True(library.Emit(image).Success);
        var waiver = "[Waiver(\"HOUSE1\", On = \"Sled\", Reason = \"why\", ApprovedBy = \"lead\")] [Board]";
        var host = BoardHost.Run(AnalyzerHost.Compile(("Shelf.cs", Board.Replace("[Board]", waiver, StringComparison.Ordinal))).AddReferences(MetadataReference.CreateFromImage(image.ToArray())));
        var findings = await host.Findings();
        Assert.Contains("Shelf.cs(3,22): RAIL0013: design rule HOUSE1 of 'House': code of another assembly, which is not run at compile time; Review() of 'Shelf' runs it", findings);
        Assert.DoesNotContain(findings, finding => finding.Contains("RAIL0910", StringComparison.Ordinal) || finding.Contains("no longer needed", StringComparison.Ordinal) || finding.Contains("RAIL0012", StringComparison.Ordinal));
        System.Reflection.Assembly.Load(image.ToArray());
        AppDomain.CurrentDomain.AssemblyResolve += Resolve;
        try
        {
            var review = BoardHost.Review(host.Load(), "Shelf");
            Assert.Equal(["Bus Holds", "Sled Waived"], review.Where(check => check.Rule == "HOUSE1").Select(check => $"{check.Rail!.Name} {check.Verdict}"));
            Assert.DoesNotContain(review, check => check.Rule == "HOUSE2");
        }
        finally
        {
            AppDomain.CurrentDomain.AssemblyResolve -= Resolve;
        }

        System.Reflection.Assembly? Resolve(object? sender, ResolveEventArgs asked) => asked.Name.StartsWith("House,", StringComparison.Ordinal) ? System.Reflection.Assembly.Load(image.ToArray()) : null;
    }

    /// <summary>A rule that changes leaves the boards' own parts alone; an edit elsewhere costs nothing.</summary>
    [Fact]
    public void The_steps_are_incremental()
    {
        var compilation = AnalyzerHost.Compile(("Shelf.cs", Board), ("Rules.cs", Rules));
        var driver = BoardHost.Driver().RunGenerators(compilation).RunGenerators(compilation.AddSyntaxTrees(AnalyzerHost.Parse("B.cs", "class B { }")));
        Assert.All(Reasons(driver, BoardGenerator.Steps.Rules), reason => Assert.True(reason is IncrementalStepRunReason.Cached or IncrementalStepRunReason.Unchanged));
        Assert.All(Reasons(driver, BoardGenerator.Steps.Carried), reason => Assert.Equal(IncrementalStepRunReason.Unchanged, reason));
        Assert.All(driver.GetRunResult().Results.Single().TrackedOutputSteps.SelectMany(entry => entry.Value).SelectMany(run => run.Outputs), output => Assert.Equal(IncrementalStepRunReason.Cached, output.Reason));

        var rules = compilation.SyntaxTrees.Single(tree => tree.FilePath == "Rules.cs");
        driver = driver.RunGenerators(compilation.ReplaceSyntaxTree(rules, AnalyzerHost.Parse("Rules.cs", Rules.Replace("has no citation", "lacks one", StringComparison.Ordinal))));
        Assert.All(driver.GetRunResult().Results.Single().TrackedOutputSteps.SelectMany(entry => entry.Value).SelectMany(run => run.Outputs), output => Assert.Equal(IncrementalStepRunReason.Cached, output.Reason));

        driver = driver.RunGenerators(compilation.ReplaceSyntaxTree(rules, AnalyzerHost.Parse("Rules.cs", Rules.Replace("Too many rails", "Rails too many", StringComparison.Ordinal))));
        Assert.All(Reasons(driver, BoardGenerator.Steps.Boards), reason => Assert.True(reason is IncrementalStepRunReason.Cached or IncrementalStepRunReason.Unchanged));
        Assert.Contains(IncrementalStepRunReason.Modified, Reasons(driver, BoardGenerator.Steps.AllRules));
    }

    private static ImmutableArray<IncrementalStepRunReason> Reasons(GeneratorDriver driver, string step) =>
        [.. driver.GetRunResult().Results.Single().TrackedSteps[step].SelectMany(run => run.Outputs).Select(output => output.Reason)];
}
