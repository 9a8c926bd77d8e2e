namespace RailRules.Analyzers.Tests.Evaluation;

/// <summary>Small programs, one a construct: members of class P, after "---" other types. Interpreted and really run.</summary>
public class ConstructsTests
{
    public static TheoryData<string, string> Programs => Split(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Evaluation", "Constructs.txt")));

    [Theory]
    [MemberData(nameof(Programs))]
    public void Computes_what_the_program_computes(string name, string program)
    {
        if (DifferentialHarness.Understands(name))
        {
            DifferentialHarness.AssertSame(Whole(program));
        }
    }

    /// <summary>A whole source file of a program's text.</summary>
    internal static string Whole(string program)
    {
        var parts = program.Split("---");
        return "public static class P\n{\n" + parts[0] + "\n}\n" + (parts.Length > 1 ? parts[1] : "");
    }

    /// <summary>Programs in one text: each begins with a line "// name".</summary>
    internal static TheoryData<string, string> Split(string text)
    {
        var data = new TheoryData<string, string>();
        foreach (var part in ("\n" + text.ReplaceLineEndings("\n")).Split("\n// ", StringSplitOptions.RemoveEmptyEntries))
        {
            var end = part.IndexOf('\n', StringComparison.Ordinal);
            if (end > 0 && part[end..].Trim().Length > 0)
            {
                data.Add(part[..end], part[end..]);
            }
        }

        return data;
    }
}
