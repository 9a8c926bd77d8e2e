using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis;

namespace RailRules.Analyzers.Tests.Boards;

/// <summary>Waivers as the analyzer reads them from attributes; what they do to checks is tested in the library.</summary>
public sealed class WaiverTests
{
    private const string Approved = "Reason = \"the clamp limits the surge\", ApprovedBy = \"protection engineer\"";

    private static string Board(string onClass, string onMember = "", string more = "") => $$"""
        using RailRules; using System.Linq; using System.Collections.Immutable;
        {{onClass}}
        [Board] public static class B
        {
            static readonly Fuse Low = new() { PartNumber = "Low", RatedCurrent = 20.Amperes(), DcVoltageRating = 32.Volts(), RatingBasis = RatingBasis.CarriesRating, ReferenceAmbient = 25.Celsius(), ColdResistance = 1.Milliohms() };
            public static readonly Supply Plant = new() { Voltage = 54.Volts(), TransientMax = 60.Volts(), ContinuousCurrent = 100.Amperes() };
            public static readonly Surroundings Air = new() { Ambient = 25.Celsius(), Altitude = 0.Meters() };
            {{onMember}}
            public static readonly Rail Bus = new() { From = Plant, Path = [Low.As("F1")], Return = Return.OfResistance(0.Ohms()), Surroundings = Air };
            {{more}}
        }
        """;

    private static async Task<IReadOnlyList<string>> Said(string source, params (string, string)[] options)
    {
        var compilation = AnalyzerHost.Compile(("B.cs", source));
        Assert.DoesNotContain(compilation.GetDiagnostics(), diagnostic => diagnostic.Severity == DiagnosticSeverity.Error);
        var findings = await AnalyzerHost.Findings(compilation, options);
        Assert.Equal(findings.Select(AnalyzerHost.Text), (await AnalyzerHost.FindingsByDocument(compilation, options)).Select(AnalyzerHost.Text));
        return [.. findings.Where(finding => finding.Id != "RAIL0004").Select(finding => $"{finding.Id} {finding.Severity} {finding.Location.SourceTree!.GetText().ToString(finding.Location.SourceSpan)}: {finding.GetMessage(CultureInfo.InvariantCulture)}")];
    }

    [Fact]
    public async Task A_waived_finding_is_information_with_the_reason()
    {
        var said = Assert.Single(await Said(Board($"[Waiver(\"RAIL0101\", On = nameof(B.Bus), {Approved})]")));
        Assert.Equal("RAIL0015 Info Low.As(\"F1\"): RAIL0101 is waived: 'Low' on rail 'Bus' can meet 60 V (transient); it is rated 32 V DC; reason: the clamp limits the surge (approved by protection engineer)", said);
    }

    [Fact]
    public async Task The_waiver_is_the_second_location_and_the_rule_a_property()
    {
        var finding = Assert.Single(await AnalyzerHost.Findings(AnalyzerHost.Compile(("B.cs", Board("", $"[Waiver(\"RAIL0101\", {Approved})]")))), finding => finding.Id != "RAIL0004");
        Assert.Equal("RAIL0101", finding.Properties["rule"]);
        Assert.StartsWith("Waiver(", finding.AdditionalLocations[0].SourceTree!.GetText().ToString(finding.AdditionalLocations[0].SourceSpan), StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_a_member_it_covers_that_member_alone()
    {
        var said = await Said(Board("", $"[Waiver(\"RAIL0101\", {Approved})]", "public static readonly Rail Other = new() { From = Plant, Path = [Low.As(\"F2\")], Return = Return.OfResistance(0.Ohms()), Surroundings = Air };"));
        Assert.Equal(["RAIL0015", "RAIL0101"], said.Select(text => text[..8]));
    }

    [Fact]
    public async Task Rails_of_a_collection_are_waived_together_or_by_name()
    {
        const string Many = "public static readonly ImmutableArray<Rail> Sleds = [.. Enumerable.Range(1, 3).Select(slot => new Rail { Name = $\"Sled {slot}\", From = Bus, Path = [Low.As($\"F1{slot}\")], Return = Return.OfResistance(0.Ohms()) })];";
        var together = await Said(Board($"[Waiver(\"RAIL0101\", On = \"Bus\", {Approved})] [Waiver(\"RAIL0101\", On = nameof(B.Sleds), {Approved})]", "", Many));
        Assert.Equal(["RAIL0015", "RAIL0015"], together.Select(text => text[..8]));
        Assert.EndsWith("(and so on 2 more rails)", together[1], StringComparison.Ordinal);
        var one = await Said(Board($"[Waiver(\"RAIL0101\", On = \"Bus\", {Approved})] [Waiver(\"RAIL0101\", On = \"Sled 2\", {Approved})]", "", Many));
        Assert.Equal(["RAIL0015", "RAIL0015", "RAIL0101"], one.Select(text => text[..8]).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("ApprovedBy = \"lead\"", "has no reason; it waives nothing")]
    [InlineData("Reason = \"why\"", "has no approver; it waives nothing")]
    public async Task An_empty_waiver_waives_nothing(string arguments, string words)
    {
        var said = await Said(Board($"[Waiver(\"RAIL0101\", On = \"F1\", {arguments})]"));
        Assert.Equal(["RAIL0008", "RAIL0101"], said.Select(text => text[..8]));
        Assert.Equal($"RAIL0008 Warning Waiver(\"RAIL0101\", On = \"F1\", {arguments}): waiver of RAIL0101 on 'F1' {words}", said[0]);
    }

    [Fact]
    public async Task The_date_comes_from_the_build()
    {
        var board = Board($"[Waiver(\"RAIL0101\", Until = \"2026-06-30\", {Approved})]");
        async Task<string> On(string? today) => string.Join(" ", (await Said(board, today is null ? [] : [("build_property.RailRulesToday", today)])).Select(text => text[..8]));
        Assert.Equal("RAIL0015", await On(null));
        Assert.Equal("RAIL0015", await On(""));
        Assert.Equal("RAIL0015", await On("2026-06-30"));
        Assert.Equal("RAIL0008 RAIL0101", await On("2026-07-01"));
        Assert.Equal("RAIL0012 RAIL0015", await On("1.7.2026"));
    }

    [Fact]
    public async Task One_that_nothing_needs_is_said()
    {
        var said = await Said(Board($"[Waiver(\"RAIL0101\", {Approved})]").Replace("32.Volts()", "80.Volts()", StringComparison.Ordinal));
        Assert.EndsWith("waiver of RAIL0101 on the whole board is no longer needed: margin 1.33 ×", Assert.Single(said), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[Waiver(\"RAIL0101\", On = \"Nowhere\", Reason = \"r\", ApprovedBy = \"a\")]", "no member, rail, designator or part 'Nowhere'")]
    [InlineData("[Waiver(\"RAIL0001\", Reason = \"r\", ApprovedBy = \"a\")]", "cannot be waived")]
    [InlineData("[Waiver(\"RAIL101\", Reason = \"r\", ApprovedBy = \"a\")]", "there is no rule RAIL101")]
    [InlineData("[Waiver(null!, Reason = \"r\", ApprovedBy = \"a\")]", "names no rule")]
    public async Task One_that_cannot_work_is_an_error_at_the_attribute(string attribute, string words)
    {
        var said = await Said(Board(attribute));
        Assert.Equal(["RAIL0012", "RAIL0101"], said.Select(text => text[..8]));
        Assert.StartsWith("RAIL0012 Error Waiver(", said[0], StringComparison.Ordinal);
        Assert.Contains(words, said[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_a_class_that_is_no_board_it_cannot_work()
    {
        var said = await Said($$"""
            using RailRules;
            [Waiver("RAIL0101", {{Approved}})] public static class Parts { [Waiver("RAIL0101", {{Approved}})] public static readonly Trace T = new() { Resistance = 1.Milliohms() }; }
            """);
        Assert.Equal(["RAIL0012", "RAIL0012"], said.Select(text => text[..8]));
        Assert.Contains("'Parts' is no board", said[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_finding_that_its_board_has_waived_is_waived_where_another_board_takes_from_it()
    {
        var said = await Said(Board($"[Waiver(\"RAIL0101\", On = nameof(B.Bus), {Approved})]") + """

            [Board] public static class C { public static readonly Rail Sub = new() { From = B.Bus, Return = Return.OfResistance(0.Ohms()) }; }
            """);
        Assert.Equal(["RAIL0015", "RAIL0015"], said.Select(text => text[..8]));
        Assert.StartsWith("RAIL0015 Info B.Bus:", said[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_something_cannot_be_worked_out_no_waiver_is_called_unneeded()
    {
        var said = await Said(Board($"[Waiver(\"RAIL0101\", {Approved})]", "", "public static readonly Rail Lost = new() { From = Plant, Path = [Low with { DcVoltageRating = double.Parse(System.IO.File.ReadAllText(\"x\")).Volts() }], Return = Return.OfResistance(0.Ohms()), Surroundings = Air };").Replace("DcVoltageRating = 32", "DcVoltageRating = 80", StringComparison.Ordinal));
        Assert.DoesNotContain(said, text => text.StartsWith("RAIL0008", StringComparison.Ordinal));
    }
}
