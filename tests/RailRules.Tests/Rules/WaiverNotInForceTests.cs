using System.Globalization;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0008, and what a waiver does to the checks that it covers.</summary>
public sealed class WaiverNotInForceTests
{
    private static readonly Waiver Approved = new("RAIL0101") { Reason = "the clamp limits the surge", ApprovedBy = "protection engineer" };

    private static readonly Fuse Low = new() { PartNumber = "Low", Designator = "F1", RatedCurrent = 20.Amperes(), DcVoltageRating = 32.Volts(), RatingBasis = RatingBasis.CarriesRating, ReferenceAmbient = 25.Celsius(), ColdResistance = 1.Milliohms(), Flammability = Flammability.V0, InterruptingRatings = [new() { Current = 100.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 1.Seconds() }] };

    private static readonly Rail First = Apply.Carrying(5, Low, volts: 54);

    private static readonly Rail Second = Named("Second", 5, Low with { Designator = "F2" });

    private static Rail Named(string name, double amperes, Element part) => new(name)
    {
        From = First.From,
        Path = [part],
        Return = First.Return,
        Loads = [new(name) { Current = amperes.Amperes(), MaxVoltage = 75.Volts() }],
        Surroundings = First.Surroundings,
    };

    private static readonly CheckOptions WithMembers = new() { Members = [new("Bus", [First]), new("Inner.Branch", [Second])] };

    private static IReadOnlyList<Check> Judged(CheckOptions options, params Waiver[] waivers) => Engine.Check([First, Second], options with { Waivers = [.. waivers] });

    private static Check Of(IEnumerable<Check> checks, Waiver waiver) => Assert.Single(checks, check => ReferenceEquals(check.Part, waiver));

    /// <summary>The designators of the parts whose voltage check is waived.</summary>
    private static string Waived(CheckOptions options, Waiver waiver) =>
        string.Join(" ", Judged(options, waiver).Where(check => check.Verdict == Verdict.Waived && check.Part is Fuse).Select(check => ((Fuse)check.Part!).Designator).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("", null, "F1 F2")]
    [InlineData("Bus", null, "F1")]
    [InlineData("Inner", null, "F2")]
    [InlineData("Inner.Branch", null, "F2")]
    [InlineData("", "Bus", "F1")]
    [InlineData("", "Branch", "F2")]
    [InlineData("", "Inner.Branch", "F2")]
    [InlineData("", "Second", "F2")]
    [InlineData("", "F2", "F2")]
    [InlineData("", "Low", "F1 F2")]
    [InlineData("Bus", "Low", "F1")]
    public void It_covers_what_it_stands_on_and_names(string scope, string? on, string covered) => Assert.Equal(covered, Waived(WithMembers, Approved with { Scope = scope, On = on }));

    [Fact]
    public void A_waived_check_keeps_its_numbers_and_says_what_it_is_without_the_waiver()
    {
        var waiver = Approved with { On = "F1" };
        var check = Assert.Single(Judged(WithMembers, waiver), check => check.Verdict == Verdict.Waived);
        Assert.Same(waiver, check.Waiver);
        Assert.Equal(Verdict.Fails, check.WaivedVerdict);
        Assert.Equal(32.0 / 54, check.Margin!.Value, 1e-9);
        Assert.Equal(Verdict.Holds, Of(Judged(WithMembers, waiver), waiver).Verdict);
    }

    [Fact]
    public void A_part_in_the_return_and_one_in_a_parallel_group_can_be_named()
    {
        var rail = new Rail("Rail")
        {
            From = First.From,
            Path = [new ParallelGroup { Branches = [[Low with { Designator = "F3" }], [Low with { Designator = "F4" }]] }],
            Return = Return.Of(Low with { Designator = "F5" }),
            Loads = [new("Rail") { Current = 5.Amperes(), MaxVoltage = 75.Volts() }],
            Surroundings = First.Surroundings,
        };
        foreach (var designator in (string[])["F3", "F4", "F5"])
        {
            var waiver = Approved with { On = designator };
            var checks = Engine.Check([rail], new CheckOptions { Waivers = [waiver] });
            Assert.Equal(Verdict.Holds, Of(checks, waiver).Verdict);
            Assert.Equal(designator, ((Fuse)Assert.Single(checks, check => check.Verdict == Verdict.Waived).Part!).Designator);
        }
    }

    [Fact]
    public void An_undecided_check_that_is_waived_is_not_missing_data()
    {
        var part = Low with { DcVoltageRating = null };
        var rail = Named("Rail", 5, part);
        Check Summary(params Waiver[] waivers) => Assert.Single(Engine.Check([rail], new CheckOptions { Waivers = [.. waivers] }), check => check.Rule == "RAIL0004");
        Assert.Contains("RAIL0101, RAIL0102", Summary().Message, StringComparison.Ordinal);
        Assert.DoesNotContain(nameof(Fuse.DcVoltageRating), Summary(Approved, Approved with { Rule = "RAIL0102" }).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "lead", null, "has no reason")]
    [InlineData(" ", "lead", null, "has no reason")]
    [InlineData("why", null, null, "has no approver")]
    [InlineData("why", "lead", "2026-06-29", "ended 2026-06-29")]
    public void A_waiver_that_is_empty_or_past_its_date_waives_nothing(string? reason, string? approver, string? until, string words)
    {
        var waiver = Approved with { Reason = reason, ApprovedBy = approver, Until = until };
        var checks = Judged(WithMembers with { Today = new DateTime(2026, 6, 30, 0, 0, 0, DateTimeKind.Unspecified) }, waiver);
        Assert.DoesNotContain(checks, check => check.Verdict == Verdict.Waived);
        var check = Of(checks, waiver);
        Assert.Equal(("RAIL0008", Verdict.Fails), (check.Rule, check.Verdict));
        Assert.Equal($"waiver of RAIL0101 on the whole board {words}; it waives nothing", check.Message);
    }

    [Fact]
    public void Its_last_day_is_its_own()
    {
        var waiver = Approved with { Until = "2026-06-30" };
        Verdict On(int day) => Of(Judged(WithMembers with { Today = new DateTime(2026, 6, day, 0, 0, 0, DateTimeKind.Unspecified) }, waiver), waiver).Verdict;
        Assert.Equal(Verdict.Holds, On(30));
        Assert.Equal(Verdict.Holds, On(1));
    }

    [Fact]
    public void Without_a_date_of_the_build_expiry_is_not_judged_and_it_says_so()
    {
        var waiver = Approved with { Until = "1999-01-01" };
        var checks = Judged(WithMembers, waiver);
        Assert.Contains(checks, check => check.Verdict == Verdict.Waived);
        Assert.Equal(Verdict.Undecided, Of(checks, waiver).Verdict);
        Assert.Contains("RailRulesToday", Of(checks, waiver).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_nothing_needs_names_the_margin()
    {
        var sound = Named("Sound", 5, Low with { DcVoltageRating = 108.Volts() });
        var waiver = Approved;
        var check = Of(Engine.Check([sound], new CheckOptions { Waivers = [waiver] }), waiver);
        Assert.Equal((Verdict.Fails, "waiver of RAIL0101 on the whole board is no longer needed: margin 1.39 ×"), (check.Verdict, check.Message));
        var incomplete = Of(Engine.Check([sound], new CheckOptions { Waivers = [waiver], IsIncomplete = true }), waiver);
        Assert.Equal(Verdict.Undecided, incomplete.Verdict);
    }

    /// <summary>What a waived finding would have silenced comes up: one approval is for one rule.</summary>
    [Fact]
    public void A_waived_finding_silences_nothing()
    {
        var rail = Named("Mains", 5, Low with { DcVoltageRating = null, AcVoltageRating = 250.Volts() });
        IEnumerable<Verdict> Voltage(params Waiver[] waivers) => Engine.Check([rail], new CheckOptions { Waivers = [.. waivers] }).Where(check => check.Rule == "RAIL0101" && check.Part is Fuse).Select(check => check.Verdict);
        Assert.Empty(Voltage());
        Assert.Equal([Verdict.Undecided], Voltage(Approved with { Rule = "RAIL0102" }));
    }

    [Theory]
    [InlineData("RAIL0101", "Nowhere", null, "the board has no member, rail, designator or part 'Nowhere'")]
    [InlineData("RAIL9999", null, null, "there is no rule RAIL9999")]
    [InlineData("", null, null, "it names no rule")]
    [InlineData("RAIL0003", null, null, "RAIL0003 cannot be waived")]
    [InlineData("RAIL0001", null, null, "RAIL0001 is about the code")]
    [InlineData("RAIL0101", null, "30.6.2027", "Until is '30.6.2027', which is no date")]
    public void One_that_cannot_work_is_RAIL0012(string rule, string? on, string? until, string words)
    {
        var waiver = Approved with { Rule = rule, On = on, Until = until };
        var check = Of(Judged(WithMembers, waiver), waiver);
        Assert.Equal(("RAIL0012", Verdict.Fails), (check.Rule, check.Verdict));
        Assert.Contains(words, check.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Judged(WithMembers, waiver), other => other.Verdict == Verdict.Waived);
    }

    [Fact]
    public void A_name_that_is_not_found_on_an_incomplete_board_is_not_wrong() =>
        Assert.Equal(Verdict.Undecided, Of(Judged(WithMembers with { IsIncomplete = true }, NotFound), NotFound).Verdict);

    private static readonly Waiver NotFound = Approved with { On = "Nowhere" };

    [Fact]
    public void Another_boards_waiver_covers_and_is_judged_there()
    {
        var waiver = Approved with { IsOfAnotherBoard = true, Reason = "" };
        Assert.DoesNotContain(Judged(WithMembers, waiver), check => ReferenceEquals(check.Part, waiver));
        Assert.Equal("F1 F2", Waived(WithMembers, Approved with { IsOfAnotherBoard = true }));
    }

    [Fact]
    public void It_makes_no_check_of_its_own() => Assert.Empty(Apply.Rule<WaiverNotInForce>(First));

    [Fact]
    public void The_text_for_people_names_reason_approver_and_end() =>
        Assert.Equal("why (approved by lead, until 2027-06-30)", string.Create(CultureInfo.InvariantCulture, $"{(new Waiver("RAIL0101") { Reason = "why", ApprovedBy = "lead", Until = "2027-06-30" }).Text}"));
}
