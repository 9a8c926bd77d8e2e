using System.Globalization;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Tests.Boards;

/// <summary>Where a finding is shown: at the datum's expression inside the member's type, else at the outermost expression that led there.</summary>
public sealed class PlaceTests
{
    private const string Parts = """
        using RailRules;
        public static class Parts
        {
            public static readonly Fuse Small = new() { PartNumber = "Small", RatedCurrent = 20.Amperes(), DcVoltageRating = 32.Volts(), RatingBasis = RatingBasis.CarriesRating };
            public static readonly Supply Plant = new() { Voltage = 54.Volts(), TransientMax = 60.Volts(), ContinuousCurrent = 100.Amperes() };
        }
        """;

    [Fact]
    public async Task An_element_of_a_path_is_the_place() => Assert.Equal("Parts.Small", await Place("RAIL0101", """
        using RailRules;
        [Board] public static class B { public static readonly Rail R = new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; }
        """));

    [Fact]
    public async Task The_parts_own_datum_is_the_second_location()
    {
        var finding = await Finding("RAIL0101", """
            using RailRules;
            [Board] public static class B { public static readonly Rail R = new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; }
            """);
        Assert.Contains(finding.AdditionalLocations, location => TextAt(location) == "32.Volts()");
    }

    [Fact]
    public async Task An_element_made_in_a_lambda_is_the_place() => Assert.Equal("Parts.Small.As($\"F{slot}\")", await Place("RAIL0101", """
        using RailRules; using System.Linq; using System.Collections.Immutable;
        [Board] public static class B
        {
            public static readonly ImmutableArray<Rail> R = [.. Enumerable.Range(1, 3).Select(slot => new Rail { Name = $"R{slot}", From = Parts.Plant, Path = [Parts.Small.As($"F{slot}")], Return = Return.Mirrored })];
        }
        """));

    [Fact]
    public async Task The_same_finding_on_several_rails_is_shown_once_and_counted() => Assert.Contains("2 more rails", (await Finding("RAIL0101", """
        using RailRules; using System.Linq; using System.Collections.Immutable;
        [Board] public static class B
        {
            public static readonly ImmutableArray<Rail> R = [.. Enumerable.Range(1, 3).Select(slot => new Rail { Name = $"R{slot}", From = Parts.Plant, Path = [Parts.Small.As($"F{slot}")], Return = Return.Mirrored })];
        }
        """)).GetMessage(CultureInfo.InvariantCulture), StringComparison.Ordinal);

    [Fact]
    public async Task A_helper_of_the_board_is_the_place() => Assert.Equal("Parts.Small", await Place("RAIL0101", """
        using RailRules;
        [Board] public static class B
        {
            public static readonly Rail R = Make();
            static Rail Make() => new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored };
        }
        """));

    [Fact]
    public async Task A_helper_of_another_class_is_shown_at_the_call() => Assert.Equal("Other.Make()", await Place("RAIL0101", """
        using RailRules;
        [Board] public static class B { public static readonly Rail R = Other.Make(); }
        public static class Other { public static Rail Make() => new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; }
        """));

    [Fact]
    public async Task A_rail_of_another_board_is_shown_where_this_board_takes_from_it()
    {
        var findings = await AnalyzerHost.Findings(("Parts.cs", Parts), ("B.cs", """
            using RailRules;
            [Board] public static class A { public static readonly Rail Main = new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; }
            [Board] public static class B { public static readonly Rail Sub = new() { From = A.Main, Return = Return.Mirrored }; }
            """));
        Assert.Equal(["A.Main", "Parts.Small"], findings.Where(finding => finding.Id == "RAIL0101").Select(finding => TextAt(finding.Location)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_rail_of_a_nested_type_belongs_to_its_board() => Assert.Equal("Parts.Small", await Place("RAIL0101", """
        using RailRules;
        [Board] public static class B { public static class Inner { public static readonly Rail R = new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; } }
        """));

    [Fact]
    public async Task A_partial_board_over_files_shows_each_finding_in_its_file()
    {
        var compilation = AnalyzerHost.Compile(("Parts.cs", Parts), ("B1.cs", """
            using RailRules;
            [Board] public static partial class B { public static readonly Rail R1 = new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; }
            """), ("B2.cs", """
            using RailRules;
            public static partial class B { public static readonly Rail R2 = new() { From = Parts.Plant, Path = [Parts.Small], Return = Return.Mirrored }; }
            """));
        var byDocument = await AnalyzerHost.FindingsByDocument(compilation);
        Assert.Equal(["B1.cs", "B2.cs"], byDocument.Where(finding => finding.Id == "RAIL0101").Select(finding => finding.Location.GetLineSpan().Path));
        Assert.Equal((await AnalyzerHost.Findings(compilation)).Select(AnalyzerHost.Text), byDocument.Select(AnalyzerHost.Text));
    }

    [Fact]
    public async Task A_contradiction_is_shown_where_the_part_is_declared_even_when_no_board_uses_it()
    {
        var findings = await AnalyzerHost.Findings(("P.cs", """
            using RailRules;
            public static class P { public static readonly Trace Swapped = new() { Resistance = Band.Of(2.Milliohms(), 1.Milliohms()) }; }
            """));
        var finding = Assert.Single(findings);
        Assert.Equal("RAIL0003", finding.Id);
        Assert.Equal("Band.Of(2.Milliohms(), 1.Milliohms())", TextAt(finding.Location));
    }

    [Fact]
    public async Task A_project_without_boards_hears_nothing() => Assert.Empty(await AnalyzerHost.Findings(("C.cs", "public static class C { public static readonly int X = int.Parse(System.Console.ReadLine()!); }")));

    private static async Task<string> Place(string id, string board) => TextAt((await Finding(id, board)).Location);

    private static async Task<Diagnostic> Finding(string id, string board) =>
        Assert.Single(await AnalyzerHost.Findings(("Parts.cs", Parts), ("B.cs", board)), finding => finding.Id == id);

    private static string TextAt(Location location) => location.SourceTree!.GetText().ToString(location.SourceSpan);
}
