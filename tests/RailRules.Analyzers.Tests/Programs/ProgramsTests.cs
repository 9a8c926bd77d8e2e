namespace RailRules.Analyzers.Tests.Programs;

/// <summary>Small programs of ordinary C#, each compiled and really run.</summary>
public class ProgramsTests
{
    public static TheoryData<string> Ids => [.. ProgramSuite.All.Select(program => program.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Really_runs(string id)
    {
        var program = ProgramSuite.Find(id);
        var members = ProgramSuite.Members(program).ToList();
        Assert.NotEmpty(members);
        if (program.RefusedBecause is { } because)
        {
            Assert.NotEmpty(because);
            Assert.Contains(members, member => member.Name == "Refused");
            return;
        }

        foreach (var member in members)
        {
            var (_, thrown) = ProgramSuite.Run(member);
            Assert.True(program.Topic == "Throws" == thrown is not null, $"{member.Name}: {thrown}");
        }
    }
}
