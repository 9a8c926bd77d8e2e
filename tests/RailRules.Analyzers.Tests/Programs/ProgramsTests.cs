using RailRules.Analyzers.Evaluation;

namespace RailRules.Analyzers.Tests.Programs;

/// <summary>Small programs of ordinary C#, each really run and interpreted: same values bit for bit, same exceptions, or refused with the reason.</summary>
public class ProgramsTests
{
    /// <summary>Programs of which the interpreter refuses a part that it might one day evaluate. The list is held to the truth: what is mended must leave it.</summary>
    private static readonly HashSet<string> RefusedToday =
    [
        "Arithmetic/NativeIntegers", "Collections/ImmutableDictionaries", "Extensions14/Calls", "Functions/MulticastDelegates",
        "Generics/NumericInterfaces", "Generics/StaticAbstract", "Generics/Variance", "Iterators/DuckTyped", "Patterns/GenericTypes", "Strings/Builder", "Tuples/Basics",
        "Tuples/ReferenceTuples", "Tuples/UserDeconstruct",
    ];

    public static TheoryData<string> Ids => [.. ProgramSuite.All.Select(program => program.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Gives_what_it_gives_when_run(string id)
    {
        var program = ProgramSuite.Find(id);
        var members = ProgramSuite.Members(program).ToList();
        Assert.NotEmpty(members);
        if (program.RefusedBecause is null)
            Assert.All(members, member => Assert.Equal(program.Topic == "Throws", ProgramSuite.Run(member).Thrown is not null));
        else
            Assert.Contains(members, member => member.Name == "Refused");
        var differences = ProgramSuite.Differences(program);
        if (RefusedToday.Contains(id))
        {
            Assert.NotEmpty(differences);
            Assert.All(differences, difference => Assert.Contains(": refused; ", difference, StringComparison.Ordinal));
        }
        else
        {
            Assert.True(differences.Count == 0, string.Join("\n", differences));
        }
    }

    [Fact]
    public void There_are_at_least_400_programs_of_them_140_about_boards()
    {
        Assert.True(ProgramSuite.All.Length >= 400, $"{ProgramSuite.All.Length} programs");
        Assert.True(ProgramSuite.All.Count(program => program.Tree.ToString().Contains("using RailRules;", StringComparison.Ordinal)) >= 140);
    }

    public static TheoryData<object?, object?> Unequal => new()
    {
        { 1, 2 }, { 1, 1L }, { 1, null }, { 0.0, -0.0 }, { 0.1 + 0.2, 0.3 }, { 1.10m, 1.1m }, { 1f, 1d }, { "a", "b" }, { 'a', "a" }, { true, false },
        { new[] { 1, 2 }, new[] { 1, 3 } }, { new[] { 1 }, new[] { 1, 1 } }, { new[] { 1 }, new List<int> { 1 } }, { (1, 2.5), (1, 2.6) }, { (1, 2), (1, 2L) },
        { new Dictionary<int, int> { [1] = 2 }, new Dictionary<int, int> { [1] = 3 } },
        { 5.Volts(), 5.Millivolts() }, { 1.Volts(), 1000.Millivolts() }, { 5.Volts(), 5.Amperes() }, { 1.0.Watts(), 1.5.Watts() }, { Band.Of(1.Volts(), 2.Volts()), Band.Of(1.Volts(), 3.Volts()) },
        { new Fuse("x") { RatedCurrent = 1.Amperes() }, new Fuse("x") { RatedCurrent = 2.Amperes() } }, { new Fuse("x"), new Fuse("y") }, { new Fuse("x"), new Trace("x") }, { new Rail("x"), new Rail("y") },
        { new Rail("x") { Path = [new Fuse("f").As("F1")] }, new Rail("x") { Path = [new Fuse("f").As("F2")] } }, { Joint.Bolted, Joint.Clip },
    };

    [Theory]
    [MemberData(nameof(Unequal), DisableDiscoveryEnumeration = true)]
    public void The_comparison_finds_a_difference(object? real, object? interpreted)
    {
        var comparison = new ValueComparison(ProgramSuite.Session);
        comparison.Compare("value", real, interpreted);
        Assert.NotEmpty(comparison.Differences);
        var same = new ValueComparison(ProgramSuite.Session);
        same.Compare("value", real, real);
        Assert.Empty(same.Differences);
    }

    [Fact]
    public void The_comparison_finds_what_is_one_object_and_what_is_two()
    {
        var part = new Fuse("x");
        var comparison = new ValueComparison(ProgramSuite.Session);
        comparison.Compare("value", new[] { part, part }, new[] { new Fuse("x"), new Fuse("x") });
        Assert.Single(comparison.Differences);
        var other = new ValueComparison(ProgramSuite.Session);
        other.Compare("value", new[] { new Fuse("x"), new Fuse("x") }, new[] { part, part });
        Assert.Single(other.Differences);
    }
}
