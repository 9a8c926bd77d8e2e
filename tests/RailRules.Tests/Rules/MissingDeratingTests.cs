using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0202. Reference conditions and the lowest plausible factor as the rule's definition gives them (common practice).</summary>
public sealed class MissingDeratingTests
{
    private static Fuse Fuse => new() { PartNumber = "Reed20", RatedCurrent = 20.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ReferenceAmbient = 25.Celsius(), ColdResistance = 1.Milliohms() };

    private static Check? Judge(double amperes, Element part, Surroundings surroundings, DesignPolicy? policy = null) =>
        Apply.Rule<MissingDerating>(Apply.Carrying(amperes, part, surroundings, policy)).SingleOrDefault(check => ReferenceEquals(check.Part, part));

    [Fact]
    public void A_hot_fuse_without_a_curve_fails_where_its_margin_depends_on_it()
    {
        var check = Judge(10, Fuse, Apply.At(55))!;
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("'Reed20' on rail 'Rail' sits at 55 °C, rated at 25 °C, without a derating curve; it needs 0.667 to carry 10 A", check.Message);
        Assert.Equal(7.5, check.Capacity!.Value.Value, 1e-9); // 20 A × 0.75 × 0.5
    }

    [Fact]
    public void A_small_load_holds_at_the_lowest_plausible_factor() => Assert.Equal(Verdict.Holds, Judge(7.5, Fuse, Apply.At(55))!.Verdict);

    [Theory]
    [InlineData(30)] // within 5 K
    [InlineData(0)] // colder
    public void Within_reference_conditions_there_is_no_check(double celsius) => Assert.Null(Judge(14, Fuse, new() { Ambient = Band.Of((-10).Celsius(), celsius.Celsius()) }));

    [Fact]
    public void With_a_curve_there_is_no_check() => Assert.Null(Judge(10, Fuse with { Derating = [new(25.Celsius(), 1), new(85.Celsius(), 0.7)] }, Apply.At(55)));

    [Fact]
    public void What_fails_even_without_derating_is_RAIL0201s_alone() => Assert.Null(Judge(16, Fuse, Apply.At(55)));

    [Fact]
    public void A_high_site_counts_where_neither_curve_nor_rule_covers_it()
    {
        Assert.Null(Judge(10, Fuse, Apply.At(25, 3000)));
        var check = Judge(10, Fuse, Apply.At(25, 3000), new() { AltitudeRule = false })!;
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Contains("3000 m without an altitude derating", check.Message);
        Assert.Null(Judge(10, Fuse with { AltitudeDerating = [new(2000.Meters(), 1), new(4000.Meters(), 0.8)] }, Apply.At(25, 3000), new() { AltitudeRule = false }));
    }

    [Fact]
    public void An_unstated_ambient_or_reference_leaves_it_undecided()
    {
        var air = Judge(10, Fuse, new Surroundings())!;
        Assert.Equal(Verdict.Undecided, air.Verdict);
        Assert.Contains(nameof(Rail.Surroundings), air.Names());
        var reference = Judge(10, Fuse with { ReferenceAmbient = null }, Apply.At(28))!;
        Assert.Equal(Verdict.Undecided, reference.Verdict);
        Assert.Contains(nameof(RailRules.Fuse.ReferenceAmbient), reference.Names());
        Assert.Equal(Verdict.Fails, Judge(10, Fuse with { ReferenceAmbient = null }, Apply.At(31))!.Verdict);
        Assert.Null(Judge(10, Fuse with { ReferenceAmbient = null }, Apply.At(25)));
    }

    [Fact]
    public void A_curve_that_cannot_be_worked_out_is_not_a_missing_one()
    {
        var rail = Apply.Carrying(10, Fuse, Apply.At(55));
        var check = Apply.WithUnknown<MissingDerating>(rail.Path[0], nameof(RailRules.Fuse.Derating), rail).Of(rail.Path[0]);
        Assert.Equal(Verdict.Undecided, check.Verdict);
        Assert.Equal([nameof(RailRules.Fuse.Derating)], check.Names());
    }

    [Fact]
    public void The_floor_is_a_margin_of_the_policy() => Assert.Equal(Verdict.Holds, Judge(10, Fuse, Apply.At(55), new() { UnknownDeratingFloor = 0.7 })!.Verdict);

    [Fact]
    public void The_engine_reports_it_once()
    {
        var checks = Engine.Check([Apply.Carrying(10, Fuse with { DcVoltageRating = 80.Volts() }, Apply.At(55))]);
        Assert.Equal(Verdict.Fails, Assert.Single(checks, check => check.Rule == "RAIL0202").Verdict);
        Assert.Equal(Verdict.Undecided, Assert.Single(checks, check => check.Rule == "RAIL0201" && check.Part is Fuse).Verdict);
        Assert.DoesNotContain(checks, check => check.Rule == "RAIL0004" && check.Message.Contains("Derating"));
    }
}
