using System.Collections.Immutable;
using CsCheck;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using RailRules.Analyzers.Evaluation;
using RailRules.Analyzers.Generation;
using RailRules.Analyzers.Tests.Boards;
using RailRules.Analyzers.Tests.Evaluation;
using RailRules.Tables;

namespace RailRules.Analyzers.Tests.Generation;

public sealed class PartsTableGeneratorTests
{
    private const string Fuses = "Fuse,RatedCurrent [A],MeltingIntegral [A²s],Derating [°C],Alternates,Citation\nReed-20,20,320,25:1.00 60:0.86,5A,\"invented <&> \"\"not\"\"\"\n5A,5,20,,,\nclass,1,1,,,\n";

    [Fact]
    public void A_part_number_is_a_member()
    {
        var host = TableHost.Run(("/x/Fuses.parts.csv", Fuses), ("Use.cs", "class Use { RailRules.Fuse A = Site.Parts.Fuses.Reed_20, B = Site.Parts.Fuses._5A, C = Site.Parts.Fuses._class, D = Site.Parts.Fuses.Find(\"5A\"), E = Site.Parts.Fuses.All[0]; }"));
        Assert.Empty(host.GeneratorDiagnostics);
        TableHost.AssertCompiles(host.Compilation);
        var property = Assert.IsAssignableFrom<IPropertySymbol>(Assert.Single(host.Compilation.GetTypeByMetadataName("Site.Parts+Fuses")!.GetMembers("Reed_20")));
        var documentation = System.Xml.Linq.XElement.Parse(property.GetDocumentationCommentXml()!);
        Assert.Equal("Reed-20: rated current 20 A, melting integral 320 A²s", documentation.Element("summary")!.Value);
        Assert.Equal("invented <&> \"not\"", documentation.Element("remarks")!.Value);
    }

    [Fact]
    public void The_program_has_the_part_that_the_table_says()
    {
        var parts = TableHost.Run(("/x/Fuses.parts.csv", Fuses)).Load().GetType("Site.Parts+Fuses")!;
        var table = PartsTableText.Read(Fuses);
        foreach (var (row, name) in table.Rows.Zip(["Reed_20", "_5A", "_class"]))
        {
            var expected = Said.By(table.Make(row));
            Assert.Equal(expected, Said.By(parts.GetProperty(name)!.GetValue(null)));
            Assert.Equal(expected, Said.By(parts.GetMethod("Find")!.Invoke(null, [row.PartNumber])));
            Assert.Equal(expected, Said.By(((ImmutableArray<Fuse>)parts.GetProperty("All")!.GetValue(null)!)[row.Index]));
        }

        var missing = Assert.Throws<System.Reflection.TargetInvocationException>(() => parts.GetMethod("Find")!.Invoke(null, ["nobody"]));
        Assert.IsType<KeyNotFoundException>(missing.InnerException);
    }

    /// <summary>Program and evaluator, compared object by object: members, Find, All, copies, and equality of parts.</summary>
    [Fact]
    public void The_evaluator_has_the_part_that_the_program_has() => DifferentialHarness.AssertSame(
        """
        static class P
        {
            public static readonly Fuse Reed = Parts.Fuses.Reed_20;
            public static readonly Fuse Placed = Parts.Fuses.Reed_20.As("F1");
            public static readonly Fuse Found = Parts.Fuses.Find("5" + "A");
            public static readonly ImmutableArray<Fuse> All = Parts.Fuses.All;
            public static readonly string Names = string.Join(";", Parts.Fuses.All.Where(fuse => fuse.RatedCurrent!.Value.Amperes > 2).Select(fuse => fuse.PartNumber));
            public static readonly double Amperes = Parts.Fuses._5A.RatedCurrent!.Value.Amperes;
            public static readonly bool IsSame = Parts.Fuses._5A == Parts.Fuses._5A;
            public static readonly bool IsSameObject = ReferenceEquals(Parts.Fuses._5A, Parts.Fuses._5A);
            public static readonly ImmutableArray<Element> Path = [.. Enumerable.Range(1, 3).Select(i => Parts.Fuses.Reed_20.As($"F{i}"))];
            public static readonly Fuse Other = Parts.Fuses._class with { RatedCurrent = 3.Amperes() };
        }
        """,
        PartsTableSource.Of(PartsTableModel.Of("Fuses.parts.csv", PartsTableText.Read(Fuses))!, ""));

    [Fact]
    public void A_part_that_is_not_there_throws_in_the_evaluator_as_in_the_program() => DifferentialHarness.AssertRefused(
        "static class P { public static readonly Fuse No = Parts.Fuses.Find(\"nobody\"); }" + PartsTableSource.Of(PartsTableModel.Of("Fuses.parts.csv", PartsTableText.Read(Fuses))!, ""),
        ProblemKind.Throws, "The table has no part 'nobody'.");

    /// <summary>Constants are in the metadata, so that a board sees the tables of a compiled part library.</summary>
    [Fact]
    public void Tables_of_a_compiled_assembly_are_known()
    {
        var library = TableHost.Run(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A]\nReed-20,20\nBad,x\n")).Compilation.WithAssemblyName("Library");
        using var image = new MemoryStream();
        Assert.True(library.Emit(image).Success);
        var use = AnalyzerHost.Compile(("Use.cs", "static class Use { static RailRules.Fuse A = Site.Parts.Fuses.Reed_20, B = Site.Parts.Fuses.Bad; }")).AddReferences(MetadataReference.CreateFromImage(image.ToArray()));
        var session = EvaluationSession.TryCreate(use)!;
        var fields = use.GetTypeByMetadataName("Use")!.GetMembers().OfType<IFieldSymbol>().ToList();
        var good = session.Evaluate(fields[0], default);
        Assert.Empty(good.Problems);
        Assert.Equal(20, Assert.IsType<Fuse>(good.Value).RatedCurrent!.Value.Amperes);
        var bad = session.Evaluate(fields[1], default);
        Assert.Equal(ProblemKind.UnreadTable, Assert.Single(bad.Problems).Kind);
        Assert.True(session.IsUnknown(bad.Value!, nameof(Fuse.RatedCurrent)));
    }

    [Theory]
    [InlineData("Reed-20", "Reed_20")]
    [InlineData("20A", "_20A")]
    [InlineData("class", "_class")]
    [InlineData("a.b/c d", "a_b_c_d")]
    [InlineData("µ5", "µ5")]
    [InlineData("Fuses", "_Fuses")]
    [InlineData("All", "_All")]
    [InlineData("Equals", "_Equals")]
    [InlineData("get_All", "_get_All")]
    [InlineData("x\u200Dy", "x_y")]
    [InlineData("𝄞", "__")]
    [InlineData("-", "_")]
    public void Identifiers(string partNumber, string member) => Assert.Equal(member, TableIdentifiers.OfPart(partNumber, "Fuses"));

    [Theory]
    [InlineData("/x/Fuses.parts.csv", "Fuses")]
    [InlineData("C:\\x\\My fuses.PARTS.csv", "My_fuses")]
    [InlineData("Parts.parts.csv", "_Parts")]
    [InlineData(".parts.csv", "_")]
    public void Classes(string path, string name) => Assert.Equal(name, TableIdentifiers.OfTable(path));

    /// <summary>Whatever stands in a table, the class compiles without a warning and its constant is the settled form.</summary>
    [Fact]
    public void Any_table_compiles() =>
        (from numbers in Gen.OneOf(Gen.String[Gen.Char["aB1-_.\"\r\n&<>\\{}@µ"], 1, 6], Gen.String[0, 6], Draw.From("class", "All", "At", "Fuses", "GetType", "value", "get_All", "record")).Array[0, 8]
         from citation in Gen.OneOf(Gen.String[0, 20], Gen.String[Gen.Char["\"\\{}\r\n&<>*/ "], 0, 20])
         select (numbers, citation)).Sample(
            drawn =>
            {
                var text = "Fuse,RatedCurrent [A],Citation\n" + string.Concat(drawn.numbers.Select(number => CsvCell.Write(number) + ",20," + CsvCell.Write(drawn.citation) + "\n"));
                var host = TableHost.Run(("/x/Fuses.parts.csv", text));
                TableHost.AssertCompiles(host.Compilation);
                var constant = (IFieldSymbol)host.Compilation.GetTypeByMetadataName("Site.Parts+Fuses")!.GetMembers("TableText").Single();
                Assert.Equal(PartsTableText.Read(text).ToCanonical(), constant.ConstantValue);
            },
            iter: 150);

    [Theory]
    [InlineData("Water.Works", "Water.Works.Parts")]
    [InlineData("Water.class", "Water.class.Parts")]
    [InlineData("Water-Works", "Parts")]
    [InlineData("", "Parts")]
    [InlineData(null, "Parts")]
    public void The_namespace_is_the_project_s(string? root, string type)
    {
        var tables = ImmutableArray.Create<AdditionalText>(new TableHost.Table("/x/Fuses.parts.csv", Fuses));
        TableHost.Driver(tables, root).RunGeneratorsAndUpdateCompilation(AnalyzerHost.Compile(), out var updated, out _);
        Assert.NotNull(updated.GetTypeByMetadataName(type + "+Fuses"));
        TableHost.AssertCompiles(updated);
    }

    [Fact]
    public void Nothing_is_generated_where_the_library_is_not_referenced()
    {
        var compilation = CSharpCompilation.Create("Bare", [], Basic.Reference.Assemblies.Net100.References.All, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        TableHost.Driver([new TableHost.Table("/x/Fuses.parts.csv", Fuses)]).RunGeneratorsAndUpdateCompilation(compilation, out var updated, out var diagnostics);
        Assert.Empty(updated.SyntaxTrees);
        Assert.Empty(diagnostics);
    }

    [Fact]
    public void An_edit_elsewhere_and_the_same_text_in_a_new_object_cost_nothing()
    {
        var tables = ImmutableArray.Create<AdditionalText>(new TableHost.Table("/x/Fuses.parts.csv", Fuses), new TableHost.Table("/x/Others.parts.csv", "Fuse\nA\n"), new TableHost.Table("/x/notes.txt", "x"));
        var compilation = AnalyzerHost.Compile(("A.cs", "class A { }"));
        var driver = TableHost.Driver(tables).RunGenerators(compilation);

        driver = driver.RunGenerators(compilation.AddSyntaxTrees(AnalyzerHost.Parse("B.cs", "class B { }")));
        AssertReasons(driver, PartsTableGenerator.Steps.Text, IncrementalStepRunReason.Cached);
        AssertReasons(driver, PartsTableGenerator.Steps.Model, IncrementalStepRunReason.Cached);
        AssertReasons(driver, PartsTableGenerator.Steps.Owners, IncrementalStepRunReason.Cached);
        AssertReasons(driver, PartsTableGenerator.Steps.Place, IncrementalStepRunReason.Cached, IncrementalStepRunReason.Unchanged);
        Assert.All(Outputs(driver), reason => Assert.Equal(IncrementalStepRunReason.Cached, reason));

        driver = driver.ReplaceAdditionalText(tables[0], new TableHost.Table("/x/Fuses.parts.csv", Fuses)).RunGenerators(compilation);
        AssertReasons(driver, PartsTableGenerator.Steps.Text, IncrementalStepRunReason.Cached, IncrementalStepRunReason.Unchanged);
        AssertReasons(driver, PartsTableGenerator.Steps.Model, IncrementalStepRunReason.Cached);
        Assert.All(Outputs(driver), reason => Assert.Equal(IncrementalStepRunReason.Cached, reason));
    }

    [Fact]
    public void A_table_that_changes_leaves_the_others_alone()
    {
        var tables = ImmutableArray.Create<AdditionalText>(new TableHost.Table("/x/Fuses.parts.csv", Fuses), new TableHost.Table("/x/Others.parts.csv", "Fuse\nA\n"));
        var compilation = AnalyzerHost.Compile();
        var driver = TableHost.Driver(tables).RunGenerators(compilation);
        driver = driver.ReplaceAdditionalText(tables[1], new TableHost.Table("/x/Others.parts.csv", "Fuse\nA\nB\n")).RunGenerators(compilation);
        Assert.Equal([IncrementalStepRunReason.Modified, IncrementalStepRunReason.Cached], Outputs(driver).Order());
        Assert.Equal([IncrementalStepRunReason.Modified, IncrementalStepRunReason.Cached], Reasons(driver, PartsTableGenerator.Steps.Model).Order());
    }

    [Fact]
    public void Models_are_values()
    {
        var left = PartsTableModel.Of("a/Fuses.parts.csv", PartsTableText.Read(Fuses))!;
        var right = PartsTableModel.Of("a/Fuses.parts.csv", PartsTableText.Read(Fuses))!;
        Assert.Equal(left, right);
        Assert.Equal(left.GetHashCode(), right.GetHashCode());
        Assert.NotEqual(left, PartsTableModel.Of("a/Fuses.parts.csv", PartsTableText.Read(Fuses.Replace("320", "321", StringComparison.Ordinal))));
    }

    /// <summary>Ten thousand parts are one property each and one constant; the driver's own count shows that an edit reads none of them again.</summary>
    [Fact]
    public void Ten_thousand_parts_cost_nothing_on_an_edit_elsewhere()
    {
        var text = "Fuse,RatedCurrent [A],DcVoltageRating [V],Citation\n" + string.Concat(Enumerable.Range(0, 10_000).Select(i => $"F{i},{i % 63 + 1},80,invented\n"));
        var compilation = AnalyzerHost.Compile(("A.cs", "class A { }"));
        var driver = TableHost.Driver([new TableHost.Table("/x/Fuses.parts.csv", text)]).RunGenerators(compilation);
        Assert.Equal(10_000, driver.GetRunResult().GeneratedTrees.Single().ToString().Split(" => At(").Length - 1);
        driver = driver.RunGenerators(compilation.AddSyntaxTrees(AnalyzerHost.Parse("B.cs", "class B { }")));
        AssertReasons(driver, PartsTableGenerator.Steps.Model, IncrementalStepRunReason.Cached);
        Assert.All(Outputs(driver), reason => Assert.Equal(IncrementalStepRunReason.Cached, reason));
    }

    private static void AssertReasons(GeneratorDriver driver, string step, params IncrementalStepRunReason[] allowed) => Assert.All(Reasons(driver, step), reason => Assert.Contains(reason, allowed));

    private static ImmutableArray<IncrementalStepRunReason> Reasons(GeneratorDriver driver, string step) =>
        [.. driver.GetRunResult().Results.Single().TrackedSteps[step].SelectMany(run => run.Outputs).Select(output => output.Reason)];

    private static ImmutableArray<IncrementalStepRunReason> Outputs(GeneratorDriver driver) =>
        [.. driver.GetRunResult().Results.Single().TrackedOutputSteps.SelectMany(entry => entry.Value).SelectMany(run => run.Outputs).Select(output => output.Reason)];
}
