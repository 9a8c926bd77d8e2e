using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>What is not evaluated is said, at the innermost expression, with a way out.</summary>
public class RefusalTests
{
    public static TheoryData<string, string> Programs => ConstructsTests.Split(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Evaluation", "Refused.txt")));

    /// <summary>The name of each program is the reason that people read.</summary>
    [Theory]
    [MemberData(nameof(Programs))]
    public void Refuses_with_a_reason(string reason, string program)
    {
        var harness = DifferentialHarness.AssertRefused(ConstructsTests.Whole(program), ProblemKind.NotComputable, reason);
        Assert.All(harness.Problems, problem => Assert.NotEmpty(problem.Remedy));
    }

    [Fact]
    public void The_problem_is_at_the_innermost_expression_and_leads_back_to_the_member()
    {
        var harness = DifferentialHarness.AssertRefused(
            """
            public static class P
            {
                static string Read(string name) => System.IO.File.ReadAllText(name + ".txt");
                static string Twice(string name) => Read(name) + Read(name);
                public static readonly Supply S = new() { Citation = Twice("a"), TransientMax = 5.Volts() };
            }
            """,
            ProblemKind.NotComputable,
            "'File.ReadAllText' is not on the list of members that are evaluated");
        var problem = Assert.Single(harness.Problems); // each expression once
        Assert.Equal("System.IO.File.ReadAllText(name + \".txt\")", problem.Origin.Node.ToString());
        Assert.Equal("Read(name)", problem.Origin.Caller!.Node.ToString());
        Assert.Equal("Twice(\"a\")", problem.Origin.Caller!.Caller!.Node.ToString());
        Assert.Null(problem.Origin.Caller.Caller.Caller);
        Assert.Equal("S", problem.Origin.Member.Name);
        var supply = (Supply)harness.Results["S"].Value!;
        Assert.True(harness.Session.IsUnknown(supply, "Citation"));
        Assert.False(harness.Session.IsUnknown(supply, "TransientMax"));
        Assert.Null(supply.Citation);
        Assert.Equal(5, supply.TransientMax!.Value.Volts);
    }

    [Fact]
    public void Unknown_data_stay_unknown_through_copies_and_reads()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile(
            """
            public static class P
            {
                static int Clock() => DateTime.Now.Second;
                public static readonly Fuse A = new() { RatedCurrent = Clock().Amperes(), DcVoltageRating = 80.Volts() };
                public static readonly Fuse B = A with { DcVoltageRating = 60.Volts() };
                public static readonly Fuse C = A.As("F1");
                public static readonly Fuse D = A with { RatedCurrent = 5.Amperes() };
                public static readonly ElectricCurrent? E = A.RatedCurrent;
                public static readonly double F = A.DcVoltageRating!.Value.Volts;
                public static readonly Rail G = new() { Path = [A, new Fuse { PartNumber = Clock().ToString() }, Clock() > 5 ? A : B] };
                public static readonly string H = Clock() > 5 ? "a" : "b";
                public static readonly int I = Clock() + 1;
                public static readonly Rail[] J = [.. Enumerable.Range(0, 2).Select(i => new Rail { Loads = [new() { Power = (i * 100).Watts(), StartsInLife = Clock() }] })];
                static int Count(bool b) { var list = new List<int>(); if (b) list.Add(1); return list.Count; }
                public static readonly int K = Count(Clock() > 5);
            }
            """));
        bool Unknown(string member, string datum) => harness.Session.IsUnknown(harness.Results[member].Value!, datum);
        Assert.True(Unknown("A", "RatedCurrent"));
        Assert.True(Unknown("B", "RatedCurrent"));
        Assert.True(Unknown("C", "RatedCurrent"));
        Assert.False(Unknown("C", "Designator"));
        Assert.False(Unknown("D", "RatedCurrent"));
        Assert.True(Unknown("G", "Path"));
        Assert.True(harness.Results["E"].IsUnknown);
        Assert.False(harness.Results["F"].IsUnknown);
        Assert.True(harness.Results["H"].IsUnknown);
        Assert.True(harness.Results["I"].IsUnknown);
        Assert.False(harness.Results["J"].IsUnknown);
        Assert.True(harness.Session.IsUnknown(((Rail[])harness.Results["J"].Value!)[1].Loads[0], "StartsInLife"));
        Assert.True(harness.Results["K"].IsUnknown);
        Assert.Empty(harness.Results["B"].Problems); // told once, where it is
    }

    [Fact]
    public void What_an_unknown_condition_could_have_changed_is_unknown()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile(
            """
            public static class P
            {
                static bool Clock() => DateTime.Now.Second > 5;
                static void Fill(List<int> list, bool b) { if (b) list.Add(1); }
                static int Total() { var list = new List<int> { 1 }; Fill(list, Clock()); return list.Count; }
                public static readonly int A = Total();
                static int Local() { int x = 1; Action f = () => x++; if (Clock()) f(); return x; }
                public static readonly int B = Local();
                static int Lambda() { int x = 1; var q = new[] { 1, 2 }.Select(i => { x += i; return Clock(); }).ToArray(); return x; }
                public static readonly int C = Lambda();
                static int Ternary() { int x = 1; var y = Clock() ? x++ : 0; return x; }
                public static readonly int D = Ternary();
                static int Coalesce() { int x = 1; string? s = Clock() ? "a" : null; var y = s ?? (x++).ToString(); return x; }
                public static readonly int E = Coalesce();
                static int Element() { var a = new int[2]; a[0] = Clock() ? 1 : 2; return a[1]; }
                public static readonly int F = Element();
                static int And() { int x = 1; bool b = Clock() && x++ > 0; return x; }
                public static readonly int G = And();
                static int Arm() { int x = 1; var y = Clock() switch { true => x++, _ => 0 }; return x; }
                public static readonly int H = Arm();
                static int Added() { var list = new List<bool>(); list.Add(Clock()); return list.Count; }
                public static readonly int I = Added();
            }
            """));
        Assert.All(harness.Results.Values, result => Assert.True(result.IsUnknown, result.Member.Name));
        Assert.DoesNotContain(harness.Problems, problem => problem.Reason.StartsWith("internal", StringComparison.Ordinal));
    }

    [Fact]
    public void Whether_objects_with_unknown_data_are_equal_is_unknown()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile(
            """
            public static class P
            {
                static double Clock() => DateTime.Now.Second;
                static readonly Fuse F = new() { RatedCurrent = Clock().Amperes() }, G = new() { RatedCurrent = (Clock() + 1).Amperes() }, H = new() { RatedCurrent = 5.Amperes() };
                public static readonly bool A = F == G;
                public static readonly int B = new[] { F, G }.Distinct().Count();
                public static readonly bool C = new[] { F, H }.Contains(H);
                public static readonly bool D = new ParallelGroup { Branches = [[F]] } == new ParallelGroup { Branches = [[G]] };
                public static readonly bool E = H == H with { PartNumber = "x" };
            }
            """));
        Assert.All(new[] { "A", "B", "C", "D" }, name => Assert.True(harness.Results[name].IsUnknown, name));
        Assert.All(new[] { "A", "B", "C", "D" }, name => Assert.Empty(harness.Results[name].Problems));
        Assert.Equal(false, harness.Results["E"].Value);
    }

    [Fact]
    public void Values_of_other_assemblies_are_foreign()
    {
        var library = DifferentialHarness.Compile("public static class Q { public static readonly int X = 5; public static int Y => 6; public static int Z() => 7; public const int K = 8; }");
        var program = DifferentialHarness.Compile("public static class P { public static int A = Q.X, B = Q.Y, C = Q.K; public static int D = Q.Z(); }").AddReferences(library.ToMetadataReference());
        var harness = DifferentialHarness.Interpret(program);
        Assert.Equal(ProblemKind.ForeignValue, Assert.Single(harness.Results["A"].Problems).Kind);
        Assert.Equal(ProblemKind.ForeignValue, Assert.Single(harness.Results["B"].Problems).Kind);
        Assert.Equal(8, harness.Results["C"].Value);
        Assert.Equal(ProblemKind.NotComputable, Assert.Single(harness.Results["D"].Problems).Kind);

        using var image = new MemoryStream();
        Assert.True(library.Emit(image).Success);
        var compiled = DifferentialHarness.Interpret(program.RemoveReferences(program.References.Last()).AddReferences(MetadataReference.CreateFromImage(image.ToArray())));
        Assert.Equal(DifferentialHarness.Describe(harness.Problems), DifferentialHarness.Describe(compiled.Problems));
    }

    [Fact]
    public void Code_with_compiler_errors_is_left_to_the_compiler()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile(
            """
            public static class P
            {
                public static readonly Supply A = new() { TransientMax = Missing(5), Citation = "c" };
                public static readonly int B = "text";
                public static readonly Rail C = new() { Nonsense = 5, Path = [new Fuse { RatedCurrent = "x" }] };
                public static readonly int D = ;
                public static readonly Rail E = new() { From = , Name = "e" };
                public static readonly int F = Undefined.G.H(3)[2];
                public static int G { get { int x = ; return x +; } }
                public static readonly Foo H = new Foo();
                public static readonly int I = new[] { 1 }.Select(x => x.).Count();
                public static readonly ImmutableArray<Rail> J = [new Rail { From = A, }, new( ];
                public static int K => Broken(3);
                static int Broken(int x) { for (int i = 0; i < ; i++) { x += }
            """));
        Assert.True(harness.Problems.All(problem => problem.Kind != ProblemKind.NotComputable), DifferentialHarness.Describe(harness.Problems));
        Assert.Equal("c", ((Supply)harness.Results["A"].Value!).Citation);
    }

    [Fact]
    public void Cancellation_comes_through()
    {
        var compilation = DifferentialHarness.Compile("public static class P { public static int A => Go(); static int Go() { int x = 0; for (int i = 0; i < 100000; i++) x++; return x; } }");
        var session = EvaluationSession.TryCreate(compilation)!;
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => session.Evaluate(compilation.GetTypeByMetadataName("P")!.GetMembers("A")[0], source.Token));
        Assert.False(session.Evaluate(compilation.GetTypeByMetadataName("P")!.GetMembers("A")[0], default).IsUnknown);
    }

    [Fact]
    public void Without_the_library_there_is_no_session() =>
        Assert.Null(EvaluationSession.TryCreate(Microsoft.CodeAnalysis.CSharp.CSharpCompilation.Create("None", references: Basic.Reference.Assemblies.Net100.References.All)));
}
