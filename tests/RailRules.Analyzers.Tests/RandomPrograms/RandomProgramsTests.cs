using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace RailRules.Analyzers.Tests.RandomPrograms;

/// <summary>Random well-typed programs, really run and interpreted: same values bit for bit, same exceptions.</summary>
public class RandomProgramsTests
{
    private const ulong Seed = 20251;
    private const int Batch = 200;

    [Fact]
    public void Two_hundred_programs_give_what_they_give_when_run() => Compare(0, 200);

    [NightlyFact]
    public void A_hundred_thousand_programs_give_what_they_give_when_run() => Compare(200, 100_000);

    [Fact]
    public void A_planted_wrong_value_is_found()
    {
        // The last result of every program is changed in the interpreted copy only: by one, by the last bit, by a letter, ...
        var programs = RandomProgramSuite.Generate(Seed, 0, 10);
        var planted = programs.Select(program => program + "    public static int Planted => 41;\n    public static double Bit => 0.30000000000000004;\n    public static string Text => \"a\";\n    public static decimal Scale => 1.10m;\n    public static Item Inner => new(1, \"x\", 2);\n").ToImmutableArray();
        var wrong = planted.Select((program, number) => (number % 5) switch
        {
            0 => program.Replace("Planted => 41", "Planted => 42", StringComparison.Ordinal),
            1 => program.Replace("0.30000000000000004", "0.3", StringComparison.Ordinal),
            2 => program.Replace("Text => \"a\"", "Text => \"b\"", StringComparison.Ordinal),
            3 => program.Replace("1.10m;", "1.1m;", StringComparison.Ordinal),
            _ => program.Replace("new(1, \"x\", 2)", "new(1, \"x\", 2) { Extra = 8 }", StringComparison.Ordinal),
        }).ToImmutableArray();
        Assert.Empty(RandomProgramSuite.Compare(planted).Different);
        var outcome = RandomProgramSuite.Compare(planted, wrong);
        Assert.Equal(Enumerable.Range(0, 10).Except(outcome.Rejected.Keys), outcome.Different.Keys.Order());
        Assert.All(outcome.Different, pair => Assert.Contains("in the program", Assert.Single(pair.Value), StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_seed_gives_the_same_programs_and_they_use_the_language()
    {
        var programs = RandomProgramSuite.Generate(Seed, 0, 400);
        Assert.True(programs.SequenceEqual(RandomProgramSuite.Generate(Seed, 0, 400)));
        var text = string.Concat(programs);
        foreach (var construct in new[] { "for (", "foreach (", "while (", "switch (", " switch {", "finally", "checked", "?? ", "with {", " is [", "from a in", "Func<int, int>", ">>>", "$\"", ".Amperes()", ".As(", "??=", "return" })
            Assert.True(Regex.Count(text, Regex.Escape(construct)) > 20, construct);
    }

    private static void Compare(int first, int count)
    {
        var (programs, values, exceptions, rejected) = (0, 0, 0, 0);
        for (var at = first; at < first + count; at += Batch)
        {
            var texts = RandomProgramSuite.Generate(Seed, at, Batch);
            var outcome = RandomProgramSuite.Compare(texts);
            foreach (var (number, differences) in outcome.Different)
                Assert.Fail(string.Create(CultureInfo.InvariantCulture, $"Program {at + number} of seed {Seed} (and {outcome.Different.Count - 1} more):\n{string.Join("\n", differences)}\n{texts[number]}"));
            programs += outcome.Programs;
            values += outcome.Values;
            exceptions += outcome.Exceptions;
            rejected += outcome.Rejected.Count;
        }

        // Programs whose constant expressions the compiler refuses are no programs; nearly all are.
        Assert.Equal(count, programs + rejected);
        Assert.True(rejected < 0.08 * count, $"{rejected} programs do not compile");
        Assert.True(values > 2 * exceptions && exceptions > count / 20, $"{values} values, {exceptions} exceptions");
    }
}
