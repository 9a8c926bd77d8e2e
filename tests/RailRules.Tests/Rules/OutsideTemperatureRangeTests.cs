using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0203. Ranges as the rule's definition gives them; conversions between temperature scales are UnitsNet's.</summary>
public sealed class OutsideTemperatureRangeTests
{
    private static Surroundings Air(double low, double high) => new() { Ambient = Band.Of(low.Celsius(), high.Celsius()) };

    private static Fuse Works(double min, double max) => new() { PartNumber = "Reed20", OperatingTemperature = Band.Of(min.Celsius(), max.Celsius()) };

    private static Check? Judge(Element part, Surroundings? air) =>
        Apply.Rule<OutsideTemperatureRange>(new Rail("Rail") { Path = [part], Surroundings = air }).SingleOrDefault(check => ReferenceEquals(check.Part, part));

    [Theory]
    [InlineData(-40, 85, Verdict.Holds)]
    [InlineData(-40, 84.9, Verdict.Fails)]
    [InlineData(-20, 85, Verdict.Fails)]
    public void The_air_lies_within_the_range(double min, double max, Verdict expected)
    {
        var check = Judge(Works(min, max), Air(-40, 85))!;
        Assert.Equal((expected, (double?)null), (check.Verdict, check.Margin));
    }

    [Fact]
    public void The_message_names_air_and_range()
    {
        Assert.Equal("'Reed20' on rail 'Rail' meets 90 °C; it works from -40 °C to 85 °C", Judge(Works(-40, 85), Air(0, 90))!.Message);
        Assert.Equal("'Reed20' on rail 'Rail' meets -50 °C; it works from -40 °C to 85 °C", Judge(Works(-40, 85), Air(-50, 20))!.Message);
        Assert.Equal(15, Judge(Works(-40, 85), Air(-20, 70))!.Working.Single(step => step.Quantity == "to spare").Result.Value, 1e-9);
    }

    [Fact]
    public void Heat_of_neighbours_adds_to_the_hottest_air() =>
        Assert.Equal(Verdict.Fails, Judge(Works(-40, 60), Air(0, 55) with { HeatOfNeighbours = TemperatureDelta.FromKelvins(10) })!.Verdict);

    [Fact]
    public void An_unstated_range_is_no_check_in_usual_air_and_undecided_beyond()
    {
        Assert.Null(Judge(new Fuse(), Air(-5, 55)));
        Assert.Equal([nameof(Fuse.OperatingTemperature)], Judge(new Fuse(), Air(-5, 56))!.Names());
        Assert.Equal([nameof(Fuse.OperatingTemperature)], Judge(new Fuse(), Air(-6, 20))!.Names());
    }

    [Fact]
    public void Unstated_air_is_bounded()
    {
        Assert.Equal(Verdict.Holds, Judge(Works(-40, 85), null)!.Verdict);
        Assert.Equal([nameof(Rail.Surroundings)], Judge(Works(-40, 70), null)!.Names());
        Assert.Equal([nameof(Rail.Surroundings)], Judge(new Fuse(), null)!.Names());
    }

    [Fact]
    public void Parts_across_the_rail_are_judged_too()
    {
        var (clamp, capacitor) = (new TransientSuppressor { OperatingTemperature = Band.Of((-40).Celsius(), 60.Celsius()) }, new Capacitor { OperatingTemperature = Band.Of((-40).Celsius(), 85.Celsius()) });
        var checks = Apply.Rule<OutsideTemperatureRange>(new Rail { Clamps = [clamp], Capacitors = [capacitor], Surroundings = Air(0, 70) });
        Assert.Equal((Verdict.Fails, Verdict.Holds), (checks.Of(clamp).Verdict, checks.Of(capacitor).Verdict));
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var rail = new Rail { Path = [new Fuse()], Surroundings = Air(0, 40) };
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<OutsideTemperatureRange>(rail.Path[0], nameof(Fuse.OperatingTemperature), rail).Of(rail.Path[0]).Verdict);
        foreach (var datum in new[] { nameof(Rail.Path), nameof(Rail.Clamps), nameof(Rail.Capacitors) })
        {
            Assert.Contains(Apply.WithUnknown<OutsideTemperatureRange>(rail, datum, rail), check => check.Verdict == Verdict.Undecided && check.Names().Contains(datum));
        }

        Assert.Equal([nameof(Rail.Surroundings)], Apply.WithUnknown<OutsideTemperatureRange>(rail, nameof(Rail.Surroundings), rail).Of(rail.Path[0]).Names());
    }

    [Fact]
    public void Units_do_not_matter() => Assert.Equal(
        Judge(Works(-40, 85), Air(0, 90))!.Message,
        Judge(
            Works(-40, 85) with { OperatingTemperature = Band.Of(Temperature.FromKelvins(233.15), Temperature.FromKelvins(358.15)) },
            new() { Ambient = Band.Of(Temperature.FromDegreesFahrenheit(32), Temperature.FromDegreesFahrenheit(194)) })!.Message);

    /// <summary>Verdicts by the bounds of unstated air hold for any air inside; wider air never turns failing into holding.</summary>
    [Fact]
    public void Bounds_and_monotonicity() => Gen.Select(Gen.Double[-60, 0], Gen.Double[40, 120], Gen.Double[-40, 20], Gen.Double[20, 85], Gen.Double[0, 20]).Sample((min, max, low, high, wider) =>
    {
        var bounded = Judge(Works(min, max), null)!;
        var exact = Judge(Works(min, max), Air(low, high))!;
        var wide = Judge(Works(min, max), Air(low - wider, high + wider))!;
        return (bounded.Verdict == Verdict.Undecided || bounded.Verdict == exact.Verdict) && (exact.Verdict == Verdict.Holds || wide.Verdict == Verdict.Fails);
    });
}
