using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0105. A device in each conductor that is not earthed: 46 CFR 111.50-3(a); case-063 of the reference cases.</summary>
public sealed class WrongConductorTests
{
    private static Fuse Fuse => new() { PartNumber = "Reed" };

    private static Supply Plant(Earthing? earthing, double volts = 54) => new() { Name = "Plant", Voltage = volts.Volts(), Earthing = earthing };

    private static Rail Board(Source from, Polarity polarity, Element[] path, Element[]? back = null) =>
        new("Rail") { From = from, Polarity = polarity, Path = [.. path], Return = back is null ? Return.Mirrored : Return.Of([.. back]) };

    private static Check? Judge(Rail rail) => Apply.Rule<WrongConductor>(rail).SingleOrDefault();

    [Theory]
    [InlineData(Earthing.Negative, Polarity.Positive, false, Verdict.Holds)]
    [InlineData(Earthing.Negative, Polarity.Positive, true, Verdict.Fails)]
    [InlineData(Earthing.Positive, Polarity.Negative, false, Verdict.Holds)]
    [InlineData(Earthing.Positive, Polarity.Negative, true, Verdict.Fails)]
    [InlineData(Earthing.Positive, Polarity.Positive, false, Verdict.Fails)] // the path is the earthed pole
    [InlineData(Earthing.Negative, Polarity.Negative, false, Verdict.Fails)]
    [InlineData(null, Polarity.Positive, true, Verdict.Undecided)]
    [InlineData(null, Polarity.Positive, false, null)]
    [InlineData(Earthing.None, Polarity.Positive, true, null)] // 54 V: one pole is enough
    [InlineData(Earthing.Middle, Polarity.Positive, false, null)]
    public void The_device_belongs_into_the_pole_that_is_not_earthed(Earthing? earthing, Polarity polarity, bool inReturn, Verdict? expected)
    {
        var rail = inReturn ? Board(Plant(earthing), polarity, [new Wire()], [Fuse]) : Board(Plant(earthing), polarity, [Fuse, new Wire()]);
        Assert.Equal(expected, Judge(rail)?.Verdict);
    }

    [Fact]
    public void It_says_which_conductor_and_why()
    {
        var rail = Board(Plant(Earthing.Positive), Polarity.Negative, [new Wire()], [Fuse.As("F1")]);
        var check = Judge(rail)!;
        Assert.Equal("'Reed' on rail 'Rail' opens the earthed positive conductor; a fault from the live conductor to chassis bypasses it", check.Message);
        Assert.Equal((nameof(Rail.Return), (double?)null), (check.Places[0].Datum, check.Margin));
    }

    [Theory]
    [InlineData(60, null)]
    [InlineData(61, Verdict.Fails)]
    public void Above_the_limit_both_poles_of_a_floating_source_need_a_device(double volts, Verdict? expected)
    {
        Assert.Equal(expected, Judge(Board(Plant(Earthing.None, volts), Polarity.Positive, [Fuse]))?.Verdict);
        var both = Judge(Board(Plant(Earthing.None, volts), Polarity.Positive, [Fuse], [Fuse]));
        Assert.Equal(expected is null ? null : Verdict.Holds, both?.Verdict);
    }

    [Fact]
    public void A_floating_source_is_judged_by_the_policy()
    {
        var rail = new Rail { From = Plant(Earthing.None, 54), Path = [Fuse], Return = Return.Mirrored, Policy = new() { ProtectBothPolesAbove = 48.Volts() } };
        Assert.Equal(Verdict.Fails, Judge(rail)!.Verdict);
    }

    /// <summary>A breaker whose poles open together is written in both conductors, under one designator.</summary>
    [Fact]
    public void Poles_that_open_together_may_stand_in_the_earthed_conductor_too()
    {
        var breaker = new CircuitBreaker { PartNumber = "Gate", Poles = 2 }.As("Q1");
        var rail = Board(Plant(Earthing.Negative), Polarity.Positive, [breaker], [breaker]);
        Assert.All(Apply.Rule<WrongConductor>(rail), check => Assert.Equal(Verdict.Holds, check.Verdict));
        Assert.DoesNotContain(Engine.Check([rail]), check => check.Rule == "RAIL0007" && check.Verdict != Verdict.Holds);
        var two = Board(Plant(Earthing.Negative), Polarity.Positive, [Fuse], [Fuse]);
        Assert.Contains(Apply.Rule<WrongConductor>(two), check => check.Verdict == Verdict.Fails);
    }

    [Fact]
    public void A_converter_without_isolation_has_the_earthing_of_its_input()
    {
        var input = new Rail("Input") { From = Plant(Earthing.Negative) };
        var buck = new Converter { Name = "Buck", Input = input, Output = 12.Volts(), Isolated = false };
        Assert.Equal(Verdict.Fails, Judge(Board(buck, Polarity.Positive, [new Wire()], [Fuse]))!.Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Board(new Converter { Input = input, Output = 12.Volts(), Isolated = true }, Polarity.Positive, [new Wire()], [Fuse]))!.Verdict);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var plant = Plant(null);
        var rail = Board(plant, Polarity.Positive, [new Wire()], [Fuse]);
        Assert.Equal([nameof(Supply.Earthing)], Apply.WithUnknown<WrongConductor>(plant, nameof(Supply.Earthing), rail).Single().Names());
        Assert.All(Apply.WithUnknown<WrongConductor>(rail, nameof(Rail.Path), rail), check => Assert.Equal(Verdict.Undecided, check.Verdict));
        var earthed = Board(Plant(Earthing.Negative), Polarity.Positive, [new Wire()], [Fuse]);
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<WrongConductor>(earthed, nameof(Rail.Polarity), earthed).Single().Verdict);
    }
}
