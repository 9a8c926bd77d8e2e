using Microsoft.CodeAnalysis.Diagnostics;
using RailRules.Analyzers.Generation;

namespace RailRules.Analyzers.Tests.Generation;

/// <summary>RAIL0006 and RAIL0003 in parts tables: at file, line and column, and again where C# uses the part.</summary>
public sealed class PartsTableAnalyzerTests
{
    private const string Board = """
        using RailRules;
        namespace Site;
        [Board]
        public static class Shelf
        {
            public static readonly Supply Plant = new() { Voltage = Band.Of(43.Volts(), 57.Volts()), TransientMax = 60.Volts(), SourceResistance = 5.Milliohms() };
            public static readonly Rail Sled = new()
            {
                From = Plant,
                Path = [Parts.Fuses.Reed.As("F1")],
                Return = Return.Mirrored,
                Loads = [new() { Power = 600.Watts() }],
            };
        }
        """;

    [Fact]
    public async Task A_cell_that_cannot_be_read_is_told_in_the_table_and_where_the_part_is_used()
    {
        var findings = await Findings(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A],DcVoltageRating [V]\nReed,\"1,5\",80\nBeck,20,80\n"), ("Shelf.cs", Board));
        Assert.Equal("/x/Fuses.parts.csv(2,6): RAIL0006: 'Fuses' line 2, 'Reed', column 'RatedCurrent [A]': '1,5' is not a current in A: a number is written with a point, 1.5", findings[0]);
        var echo = Assert.Single(findings, finding => finding.StartsWith("Shelf.cs(10,17): RAIL0006", StringComparison.Ordinal));
        Assert.StartsWith("Shelf.cs(10,17): RAIL0006: 'Parts.Fuses.Reed': Fuses.parts.csv(2,6) cannot be read: '1,5' is not a current in A: a number is written with a point, 1.5; ", echo, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_datum_whose_header_is_misspelled_is_unknown_in_every_part()
    {
        var findings = await Findings(("/x/Fuses.parts.csv", "Fuse,RatedCurent [A],DcVoltageRating [V]\nReed,20,80\n"), ("Shelf.cs", Board));
        Assert.Contains("/x/Fuses.parts.csv(1,6): RAIL0006: 'Fuses' line 1: 'RatedCurent' is no datum of Fuse; did you mean RatedCurrent?", findings);
        Assert.Contains(findings, finding => finding.StartsWith("Shelf.cs(10,17): RAIL0006: 'Parts.Fuses.Reed': Fuses.parts.csv(1,6) cannot be read", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Other_lines_are_used_as_if_nothing_were_wrong()
    {
        var findings = await Findings(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A],DcVoltageRating [V]\nReed,20,80\nBeck,x,80\n"), ("Shelf.cs", Board));
        Assert.Single(findings, finding => finding.Contains("RAIL0006", StringComparison.Ordinal));
        Assert.Single(findings, finding => finding.StartsWith("/x/Fuses.parts.csv(3,6)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Fuse,Derating [°C]\nReed,25:1.00 60:0.86 85:0.95\n", 2, 6, "Derating")]
    [InlineData("Fuse,MeltingIntegral [A²s],ClearingIntegrals [A²s@V]\nReed,320,300@80\n", 2, 10, "ClearingIntegrals")]
    [InlineData("Fuse,ColdResistance [mΩ]\nReed,3..2\n", 2, 6, "ColdResistance")]
    [InlineData("Fuse,RatedCurrent [A]\nReed,-20\n", 2, 6, "RatedCurrent")]
    [InlineData("ResettableFuse,HoldCurrent [A],TripCurrent [A]\nReed,2,1\n", 2, 6, "HoldCurrent")]
    [InlineData("TransientSuppressor,StandOffVoltage [V],BreakdownVoltage [V]\nReed,60,54..66\n", 2, 6, "StandOffVoltage")]
    public async Task A_datum_that_contradicts_is_told_at_its_cell(string table, int line, int column, string datum)
    {
        var finding = Assert.Single(await Findings(("/x/Fuses.parts.csv", table)));
        Assert.StartsWith($"/x/Fuses.parts.csv({line},", finding, StringComparison.Ordinal);
        Assert.Contains($"RAIL0003: 'Fuses' line {line}: 'Reed': ", finding, StringComparison.Ordinal);
        Assert.Contains(datum, finding, StringComparison.Ordinal);
        Assert.True(column > 0);
    }

    [Fact]
    public async Task A_contradiction_is_told_again_where_the_part_is_used()
    {
        var findings = await Findings(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A],DcVoltageRating [V],MeltingIntegral [A²s],ClearingIntegrals [A²s@V]\nReed,20,80,320,300@80\n"), ("Shelf.cs", Board));
        Assert.Contains(findings, finding => finding.StartsWith("/x/Fuses.parts.csv(2,", StringComparison.Ordinal) && finding.Contains("RAIL0003", StringComparison.Ordinal));
        Assert.Contains(findings, finding => finding.StartsWith("Shelf.cs(10,17): RAIL0003", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Of_a_part_that_is_there_twice_the_first_is_the_second_place()
    {
        var host = TableHost.Run(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A]\nReed,20\nReed,25\n"));
        var diagnostic = Assert.Single(await host.Diagnostics());
        Assert.Equal((2, 0), (diagnostic.Location.GetLineSpan().StartLinePosition.Line, diagnostic.Location.GetLineSpan().StartLinePosition.Character));
        var other = Assert.Single(diagnostic.AdditionalLocations).GetLineSpan();
        Assert.Equal(("/x/Fuses.parts.csv", 1), (other.Path, other.StartLinePosition.Line));
    }

    [Fact]
    public async Task Two_part_numbers_with_one_member_are_told()
    {
        var findings = await Findings(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A]\nA-1,20\nA.1,25\n"));
        Assert.Equal(["/x/Fuses.parts.csv(3,1): RAIL0006: 'Fuses' line 3: 'A.1' and 'A-1' would both be the member 'A_1'; this one is left out"], findings);
    }

    [Fact]
    public async Task Of_two_tables_with_one_name_the_first_by_path_counts()
    {
        var host = TableHost.Run(("/b/Fuses.parts.csv", "Fuse\nB\n"), ("/a/Fuses.parts.csv", "Fuse\nA\n"), ("/c/fuses.parts.csv", "Fuse\nC\n"));
        Assert.Equal(["/b/Fuses.parts.csv(1,1): RAIL0006: 'Fuses' line 1: two tables give the class 'Parts.Fuses'; the other one is /a/Fuses.parts.csv, and this one is left out; rename one of them"], await host.Findings());
        Assert.Single(host.Compilation.GetTypeByMetadataName("Site.Parts+Fuses")!.GetMembers("A"));
        Assert.Empty(host.Compilation.GetTypeByMetadataName("Site.Parts+Fuses")!.GetMembers("B"));
        Assert.Single(host.Compilation.GetTypeByMetadataName("Site.Parts+fuses")!.GetMembers("C"));
    }

    [Fact]
    public async Task A_quote_that_nothing_closes_ends_at_the_end_of_the_file()
    {
        var host = TableHost.Run(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [A]\nReed,\"20\nBeck,25\n"));
        var span = (await host.Diagnostics())[0].Location.GetLineSpan();
        Assert.Equal((1, 5, 3, 0), (span.StartLinePosition.Line, span.StartLinePosition.Character, span.EndLinePosition.Line, span.EndLinePosition.Character));
    }

    [Fact]
    public async Task Files_that_are_no_tables_and_projects_without_the_library_are_let_alone()
    {
        Assert.Empty(await TableHost.Run(("/x/Fuses.csv", "Nonsense\n"), ("/x/parts.csv.txt", "x")).Findings());
    }

    [Fact]
    public async Task A_finding_in_a_table_comes_from_that_file_s_own_analysis()
    {
        var host = TableHost.Run(("/x/Fuses.parts.csv", "Fuse,RatedCurrent [V]\nReed,20\n"), ("/y/Others.parts.csv", "Fuse\nA\n"));
        var analyzers = host.Compilation.WithAnalyzers(
            [new PartsTableAnalyzer()],
            new CompilationWithAnalyzersOptions(new AnalyzerOptions(host.Tables), null, true, false));
        var first = await analyzers.GetAnalysisResultAsync(host.Tables[0], default);
        Assert.Single(first.AdditionalFileDiagnostics[host.Tables[0]].Values.SelectMany(found => found));
        Assert.Empty(first.CompilationDiagnostics);
    }

    private static async Task<string[]> Findings(params (string Path, string Text)[] files) => await TableHost.Run(files).Findings();
}
