using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>Statics in order, origins of data, makers of objects.</summary>
public class SemanticsTests
{
    [Theory]
    [InlineData("public static int A = B; public static int B = 5;", "A", "'B' has no value yet")]
    [InlineData("public static int A = A + 1;", "A", "'A' is read while its own value is being worked out")]
    [InlineData("static int M() => B; public static int A = M(); public static int B = 5;", "A", "'B' has no value yet")]
    [InlineData("static int G => B; public static int A = G; public static int B = 5;", "A", "'B' has no value yet")]
    [InlineData("static Func<int> F = () => B; public static int A = F(); public static int B = 5;", "A", "'B' has no value yet")]
    [InlineData("public static int A = Q.X; public static int B = 5; --- static class Q { public static int X = P.B; }", "A", "'Q.X' may have no value yet: the initialisers of 'Q' and 'P' use each other")]
    [InlineData("public static int A = Q.X; public static int B = 5; --- static class Q { public static int X = R.Y; } static class R { public static int Y = P.B; }", "A", "'Q.X' may have no value yet: the initialisers of 'Q' and 'P' use each other")]
    [InlineData("public static int A { get; } = B; public static int B { get; } = 5;", "A", "'B' has no value yet")]
    public void A_static_read_too_early_is_told_at_the_reading(string program, string member, string reason)
    {
        var compilation = DifferentialHarness.Compile(ConstructsTests.Whole(program));
        var names = compilation.GetTypeByMetadataName("P")!.GetMembers().Where(symbol => symbol is IFieldSymbol { IsImplicitlyDeclared: false } or IPropertySymbol).ToList();

        // Whichever is asked for first.
        foreach (var order in new[] { names, Enumerable.Reverse(names) })
        {
            var session = EvaluationSession.TryCreate(compilation)!;
            var results = order.ToDictionary(symbol => symbol.Name, symbol => session.Evaluate(symbol, default));
            var problem = Assert.Single(results[member].Problems);
            Assert.Equal(ProblemKind.NotInitialised, problem.Kind);
            Assert.StartsWith(reason, problem.Reason, StringComparison.Ordinal);
            Assert.True(results[member].IsUnknown);
        }
    }

    [Fact]
    public void A_cycle_through_two_types_is_told_in_both_whichever_is_first()
    {
        foreach (var first in new[] { "P", "Q" })
        {
            var compilation = DifferentialHarness.Compile("public static class P { public static int A = Q.X; } public static class Q { public static int X = P.A; }");
            var session = EvaluationSession.TryCreate(compilation)!;
            var members = new[] { ("P", "A"), ("Q", "X") }.OrderBy(pair => pair.Item1 != first).Select(pair => session.Evaluate(compilation.GetTypeByMetadataName(pair.Item1)!.GetMembers(pair.Item2)[0], default)).ToList();
            Assert.All(members, member => Assert.Equal(ProblemKind.NotInitialised, Assert.Single(member.Problems).Kind));
        }
    }

    [Fact]
    public void Another_file_of_the_partial_type_has_no_order()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile("public static partial class P { public static int A = B + K + N; }", "public static partial class P { public static int B = 5; public const int K = 3; public static int N; public static int M() => 5; public static int C = M(); }"));
        Assert.Contains("another file", Assert.Single(harness.Results["A"].Problems).Reason, StringComparison.Ordinal);
        Assert.Equal(5, harness.Results["C"].Value);
    }

    [Fact]
    public void Constants_and_fields_without_an_initialiser_may_be_read_early()
    {
        var harness = DifferentialHarness.AssertSame("public static class P { public static int A = K + N; public const int K = 3; public static int N; public static int B => C; public static int C = 4; }");
        Assert.Equal(3, harness.Results["A"].Value);
    }

    [Fact]
    public void Each_datum_leads_to_the_expression_that_wrote_it()
    {
        var harness = DifferentialHarness.AssertSame(
            """
            public static class P
            {
                static Fuse Make(double amperes, string part) => new() { RatedCurrent = amperes.Amperes(), PartNumber = part };
                public static readonly Fuse Base = new() { RatedCurrent = 5.Amperes(), DcVoltageRating = 80.Volts() };
                public static readonly Fuse Copy = Base with { RatedCurrent = 6.Amperes() };
                public static readonly Fuse Placed = Copy.As("F" + 1);
                public static readonly Fuse Made = Make(7.5, "M");
                public static readonly Rail Rail = new("named") { From = null, Path = [Base, Placed, .. Enumerable.Range(0, 2).Select(i => Make(i + 1, "L"))] };
                public static readonly DeratingPoint Point = new(25.Celsius(), 0.9);
            }
            """);
        string? At(object owner, string? datum, int? index = null) => harness.Session.OriginOf(owner, datum, index)?.Node.ToString();
        var value = harness.Results.ToDictionary(pair => pair.Key, pair => pair.Value.Value!);
        Assert.Equal("5.Amperes()", At(value["Base"], "RatedCurrent"));
        Assert.Equal("6.Amperes()", At(value["Copy"], "RatedCurrent"));
        Assert.Equal("80.Volts()", At(value["Copy"], "DcVoltageRating"));
        Assert.Equal("\"F\" + 1", At(value["Placed"], "Designator"));
        Assert.Equal("6.Amperes()", At(value["Placed"], "RatedCurrent"));
        Assert.Equal("Copy.As(\"F\" + 1)", At(value["Placed"], null));
        Assert.Equal("amperes.Amperes()", At(value["Made"], "RatedCurrent"));
        Assert.Equal("Make(7.5, \"M\")", harness.Session.OriginOf(value["Made"], "RatedCurrent")!.Caller!.Node.ToString());
        Assert.Equal("Base", At(value["Rail"], "Path", 0));
        Assert.Equal("Placed", At(value["Rail"], "Path", 1));
        Assert.Equal("new() { RatedCurrent = amperes.Amperes(), PartNumber = part }", At(value["Rail"], "Path", 3));
        var lambda = harness.Session.OriginOf(value["Rail"], "Path", 3)!;
        Assert.Equal("Make(i + 1, \"L\")", lambda.Caller!.Node.ToString());
        Assert.Equal("Enumerable.Range(0, 2).Select(i => Make(i + 1, \"L\"))", lambda.Caller.Caller!.Node.ToString());
        Assert.Null(lambda.Caller.Caller.Caller);
        Assert.StartsWith("[Base, Placed", At(value["Rail"], "Path", 17), StringComparison.Ordinal);
        Assert.Equal("0.9", At(value["Point"], "Factor"));
        Assert.StartsWith("new(\"named\")", At(value["Rail"], "Return"), StringComparison.Ordinal);
        Assert.Null(harness.Session.OriginOf(new Fuse(), "RatedCurrent"));
        Assert.Equal("Rail", harness.Session.MadeBy(((Rail)value["Rail"]).Path[3])!.Name);
        Assert.Equal("Base", harness.Session.MadeBy(((Rail)value["Rail"]).Path[0])!.Name);
    }

    [Fact]
    public void Results_are_kept_and_tell_what_they_read()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile("public static class P { public static Fuse A = new(); public static Rail B = new() { Path = [A, Q.X] }; public static Rail C => new() { From = B }; } static class Q { public static Trace X { get; } = new(); public const int K = 1; }"));
        Assert.Same(((Rail)harness.Results["B"].Value!).Path[0], harness.Results["A"].Value);
        Assert.Equal(["A", "X"], harness.Results["B"].Reads.Select(symbol => symbol.Name));
        Assert.Equal(["B"], harness.Results["C"].Reads.Select(symbol => symbol.Name));
        Assert.True(harness.Results["B"].Steps > 0);
    }

    [Fact]
    public void A_property_with_a_body_makes_a_new_object_each_time()
    {
        var harness = DifferentialHarness.AssertSame("public static class P { static Fuse Fresh => new(); static Fuse Kept { get; } = new(); public static bool A = ReferenceEquals(Fresh, Fresh), B = ReferenceEquals(Kept, Kept); }");
        Assert.Equal(false, harness.Results["A"].Value);
    }

    [Fact]
    public void A_lazy_sequence_is_given_out_as_its_elements()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile("public static class P { public static IEnumerable<Rail> Rails = Enumerable.Range(0, 3).Select(i => new Rail { Name = $\"R{i}\" }); public static int N = Rails.Count(); }"));
        var rails = Assert.IsAssignableFrom<IEnumerable<Rail>>(harness.Results["Rails"].Value).ToList();
        Assert.Equal(["R0", "R1", "R2"], rails.Select(rail => rail.Name));
        Assert.Equal("Rails", harness.Session.MadeBy(rails[1])!.Name);
    }

    [Fact]
    public void Many_threads_may_ask_at_once()
    {
        var compilation = DifferentialHarness.Compile("public static class P { " + string.Concat(Enumerable.Range(0, 50).Select(i => $"public static Rail R{i} = new() {{ Loads = [new() {{ Power = {i}.Watts() }}] }};")) + "}");
        var session = EvaluationSession.TryCreate(compilation)!;
        var members = compilation.GetTypeByMetadataName("P")!.GetMembers().OfType<IFieldSymbol>().ToList();
        Parallel.ForEach(members.Concat(members), member => Assert.Empty(session.Evaluate(member, default).Problems));
    }

    [Fact]
    public void Work_on_the_deep_stack_may_call_back_and_throws_through()
    {
        var compilation = DifferentialHarness.Compile("public static class P { public static int A = 5; }");
        var session = EvaluationSession.TryCreate(compilation)!;
        var member = compilation.GetTypeByMetadataName("P")!.GetMembers("A")[0];
        Assert.Equal(5, session.OnDeepStack(() => session.Evaluate(member, default).Value));
        Assert.Throws<InvalidTimeZoneException>(() => session.OnDeepStack<int>(() => throw new InvalidTimeZoneException()));
    }

    [Fact]
    public void A_throw_is_told_with_its_message_at_its_place()
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile("public static class P { static int Need(int? x) => x ?? throw new ArgumentException(\"needs a value\"); public static int A = Need(null); public static ElectricCurrent B = ElectricCurrent.FromAmperes(double.NaN); public static int C = A + 1; }"));
        var thrown = Assert.Single(harness.Results["A"].Problems);
        Assert.Equal(ProblemKind.Throws, thrown.Kind);
        Assert.Equal("this throws ArgumentException: needs a value", thrown.Reason);
        Assert.StartsWith("throw new", thrown.Origin.Node.ToString(), StringComparison.Ordinal);
        Assert.Equal("Need(null)", thrown.Origin.Caller!.Node.ToString());
        Assert.Equal(ProblemKind.Throws, Assert.Single(harness.Results["B"].Problems).Kind);
        Assert.True(harness.Results["C"].IsUnknown);
        Assert.Empty(harness.Results["C"].Problems);
    }

    [Fact]
    public void A_planted_wrong_value_fails()
    {
        // The running program and the interpreted one differ on purpose: the harness must see it.
        var real = DifferentialHarness.Compile("public static class P { public static Fuse A = new() { RatedCurrent = 5.Amperes() }; public static int B = 1; public static ImmutableArray<Fuse> C = [new() { RatedCurrent = 2.Amperes() }]; public static string D = \"x\"; }");
        var other = DifferentialHarness.Compile("public static class P { public static Fuse A = new() { RatedCurrent = 5.000001.Amperes() }; public static int B = 1; public static ImmutableArray<Fuse> C = [new() { RatedCurrent = 2.Kiloamperes() }]; public static string D = \"y\"; }");
        var differences = DifferentialHarness.Compare(real, other);
        Assert.Contains(differences, difference => difference.StartsWith("A.RatedCurrent", StringComparison.Ordinal));
        Assert.Contains(differences, difference => difference.StartsWith("C[0].RatedCurrent", StringComparison.Ordinal));
        Assert.Contains(differences, difference => difference.StartsWith("D:", StringComparison.Ordinal));
        Assert.DoesNotContain(differences, difference => difference.StartsWith("B:", StringComparison.Ordinal));
    }
}
