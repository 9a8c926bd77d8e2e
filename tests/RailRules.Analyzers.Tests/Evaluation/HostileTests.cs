using System.Reflection;
using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>Programs that do not end, or want all memory, end in bounded work with the budget's problem, on a small host stack too.</summary>
public class HostileTests
{
    public static TheoryData<string, string> Programs => ConstructsTests.Split(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Evaluation", "Hostile.txt")));

    [Theory]
    [MemberData(nameof(Programs))]
    public void Ends_in_the_budget(string reason, string program) => OnSmallStack(() =>
        DifferentialHarness.AssertRefused(ConstructsTests.Whole(program), ProblemKind.Budget, reason.Split('(')[0].Trim(), new EvaluationLimits(Steps: 300_000)));

    [Fact]
    public void The_budget_covers_what_is_read_each_once()
    {
        const string Loop = "{ int x = 0; for (int i = 0; i < 1000; i++) x += i; return x; }";
        var source = $"public static class P {{ static int L() {Loop} public static int A = L(), B = L() + A, C = A + B + A + B, D = C + B + A; }}";
        var free = DifferentialHarness.Interpret(DifferentialHarness.Compile(source));
        Assert.Empty(free.Problems);
        var all = free.Results.Values.Sum(result => result.Steps);

        // As many steps as the members take together are enough, though what is read twice counts twice in the quick bound; one fewer is not.
        Assert.Empty(DifferentialHarness.Interpret(DifferentialHarness.Compile(source), new EvaluationLimits(Steps: all)).Problems);
        Assert.Contains(DifferentialHarness.Interpret(DifferentialHarness.Compile(source), new EvaluationLimits(Steps: all - 1)).Results["D"].Problems, problem => problem.Kind == ProblemKind.Budget);
    }

    [Fact]
    public void Recursion_within_the_depth_is_evaluated() => OnSmallStack(() =>
        DifferentialHarness.AssertSame(ConstructsTests.Whole("""
            static int Down(int n) => n == 0 ? 0 : 1 + Down(n - 1);
            public static int A = Down(190);
            static int Linq(int n) => n == 0 ? 0 : Enumerable.Range(0, 1).Select(i => 1 + Linq(n - 1)).Sum();
            public static int B = Linq(90);
            """)));

    [Fact]
    public void A_long_chain_of_statics_is_evaluated_from_either_end() => OnSmallStack(() =>
    {
        var text = "public static class P { public static int M0 = 1; " + string.Concat(Enumerable.Range(1, 1500).Select(i => $"public static int M{i} = M{i - 1} + 1;")) + "}";
        var compilation = DifferentialHarness.Compile(text);
        var session = EvaluationSession.TryCreate(compilation)!;
        var last = session.Evaluate(compilation.GetTypeByMetadataName("P")!.GetMembers("M1500")[0], default);
        Assert.Empty(last.Problems);
        Assert.Equal(1501, last.Value);
    });

    [Fact]
    public void A_long_sum_is_evaluated() => OnSmallStack(() =>
    {
        var harness = DifferentialHarness.Interpret(DifferentialHarness.Compile("public static class P { static int x = 1; public static int A = " + string.Join(" + ", Enumerable.Repeat("x", 2000)) + "; }"));
        Assert.Equal(2000, harness.Results["A"].Value);
    });

    /// <summary>Runs the test on the stack that a worker thread of some hosts has.</summary>
    internal static void OnSmallStack(Action test)
    {
        Exception? failure = null;
        var thread = new Thread(
            () =>
            {
                try
                {
                    test();
                }
                catch (Exception exception)
                {
                    failure = exception;
                }
            },
            1536 * 1024);
        thread.Start();
        thread.Join();
        if (failure is not null)
        {
            throw new TargetInvocationException(failure.Message, failure);
        }
    }
}
