using CsCheck;
using RailRules.Rules;
using RailRules.Tests.Checks;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0502. Heat by the drop at rated current: FD-01, FD-04 of the reference tables; drop: WR-26, and AC 43.13-1B, table 11-6 (WR-30); case-065 is a board of its own.</summary>
public sealed class DropOrHeatAboveBudgetTests
{
    private static readonly Fuse Reed20 = new() { Name = "F1", RatedCurrent = 20.Amperes(), VoltageDrop = 85.Millivolts(), TemperatureRise = 80.Kelvins(), BodyTemperatureLimit = 105.Celsius() };

    private static Rail Loop(Budgets? budgets, Element path, double amperes, double volts = 28) => new("Loop")
    {
        From = new Supply { Name = "Plant", Voltage = Band.Of(volts.Volts(), (1.2 * volts).Volts()) },
        Path = [path],
        Return = Return.Mirrored,
        Surroundings = Apply.Bench,
        Loads = [new("Loop") { Current = amperes.Amperes() }],
        Budgets = budgets,
    };

    private static Check Judge(Rail rail) => Assert.Single(Apply.Rule<DropOrHeatAboveBudget>(rail));

    /// <summary>WR-26: 35 mm² class 5, 5 m, 100 A drops 0.662861 V at 70 °C, two ways.</summary>
    private static readonly Wire Lead = new() { Name = "Lead", Resistance = (0.554e-3 * 5).Ohms(), TemperatureLimit = 70.Celsius() };

    [Theory]
    [InlineData(1, Verdict.Holds)] // WR-30: 1 V on a 28 V system
    [InlineData(0.662, Verdict.Fails)]
    public void The_drop_counts_path_and_return_hot(double budget, Verdict expected)
    {
        var check = Judge(Loop(new() { Drop = budget.Volts() }, Lead, 100));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(0.662861, check.Demand!.Value.Value, 0.0005 * 0.662861);
        Assert.Equal(budget / 0.662861, check.Margin!.Value, 0.001);
    }

    [Fact]
    public void A_share_is_one_of_the_lowest_source_voltage()
    {
        var check = Judge(Loop(new() { DropShare = Ratio.FromPercent(2) }, Lead, 100));
        Assert.Equal(66.2861 / 28, check.Demand!.Value.Value, 0.002);
        Assert.Equal("rail 'Loop' drops 2.37 %; its budget is 2 %", check.Message);
        Assert.Equal("rail 'Loop' drops 663 mV; its budget is 500 mV", Judge(Loop(new() { Drop = 500.Millivolts() }, Lead, 100)).Message);
    }

    [Fact]
    public void The_drop_counts_from_the_source_on_through_the_rails_above()
    {
        var bus = Loop(null, new SenseResistor { Resistance = 10.Milliohms() }, 0) with { Name = "Bus", Loads = [] };
        var sled = Loop(new() { Drop = 1.Volts() }, new SenseResistor { Resistance = 20.Milliohms() }, 10) with { From = bus };
        Assert.Equal(0.3, Assert.Single(Apply.Rule<DropOrHeatAboveBudget>(bus, sled)).Demand!.Value.Value, 1e-9);
    }

    /// <summary>Of two feeds the one with the longer way counts, though its source is higher.</summary>
    [Fact]
    public void Every_feed_state_counts()
    {
        static Feed From(double volts, double ohms) => new() { From = new Supply { Name = $"{volts} V", Voltage = volts.Volts() }, Path = [new BlockingDiode { ForwardDrop = 0.Volts() }, new SenseResistor { Resistance = ohms.Ohms() }], Return = Apply.NoReturn };
        var rail = Loop(new() { Drop = 3.Volts(), Dissipation = 30.Watts() }, new SenseResistor { Resistance = 0.1.Ohms() }, 10) with { From = null, Feeds = [From(54, 0.3), From(44, 0)] };
        var checks = Apply.Rule<DropOrHeatAboveBudget>(rail);
        Assert.Equal([4.0, 40.0], checks.Select(check => Math.Round(check.Demand!.Value.Value, 9)));
    }

    /// <summary>FD-01: 90 mV at 200 A is 18 W; FD-04: 0.49 of it at 70 % of the current.</summary>
    [Theory]
    [InlineData(200, 18)]
    [InlineData(140, 0.49 * 18)]
    public void A_path_turns_drop_times_current_into_heat(double amperes, double watts)
    {
        var rail = Loop(new() { Dissipation = 10.Watts() }, new Fuse { RatedCurrent = 200.Amperes(), VoltageDrop = 90.Millivolts() }, amperes) with { Return = Apply.NoReturn };
        var check = Judge(rail);
        Assert.Equal(watts, check.Demand!.Value.Value, 0.0005 * watts);
        Assert.Equal(watts > 10 ? Verdict.Fails : Verdict.Holds, check.Verdict);
        Assert.StartsWith("rail 'Loop' turns ", check.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fuse_body_is_compared_by_rises()
    {
        var check = Apply.Rule<DropOrHeatAboveBudget>(Apply.Carrying(20, Reed20, Apply.At(50))).Of(Reed20);
        Assert.Equal((Verdict.Fails, 80.0, 55.0), (check.Verdict, check.Demand!.Value.Value, check.Capacity!.Value.Value));
        Assert.Equal(55.0 / 80, check.Margin!.Value, 1e-9);
        Assert.Equal("'F1' on rail 'Rail' reaches 130 °C; its limit is 105 °C", check.Message);
        var half = Apply.Rule<DropOrHeatAboveBudget>(Apply.Carrying(10, Reed20, Apply.At(50) with { HeatOfNeighbours = 10.Kelvins() })).Of(Reed20);
        Assert.Equal((Verdict.Holds, 20.0, 45.0), (half.Verdict, half.Demand!.Value.Value, half.Capacity!.Value.Value));
    }

    [Fact]
    public void Air_above_the_limit_fails_without_any_rise()
    {
        var check = Apply.Rule<DropOrHeatAboveBudget>(Apply.Carrying(0, Reed20, Apply.At(110))).Of(Reed20);
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("'F1' on rail 'Rail' stands in 110 °C; its limit is 105 °C", check.Message);
    }

    [Fact]
    public void A_holder_accepts_the_power_of_the_fuse_beside_it_in_its_air()
    {
        var holder = new FuseHolder { Name = "H1", ContactResistance = 1.Milliohms(), AcceptedPower = 1.6.Watts(), Derating = [new(25.Celsius(), 1), new(75.Celsius(), 0.5)], TemperatureLimit = 125.Celsius() };
        var rail = Apply.Carrying(20, Reed20 with { BodyTemperatureLimit = null }, Apply.At(50)) with { Path = [holder, Reed20 with { BodyTemperatureLimit = null }, new Fuse { Name = "F9", RatedCurrent = 20.Amperes(), VoltageDrop = 1.Volts(), TemperatureRise = 1.Kelvins() }] };
        var checks = Apply.Rule<DropOrHeatAboveBudget>(rail);
        var power = checks.Single(check => check.Subject.EndsWith(nameof(FuseHolder.AcceptedPower), StringComparison.Ordinal));
        Assert.Equal((1.7, 1.2), (power.Demand!.Value.Value, Math.Round(power.Capacity!.Value.Value, 9)));
        Assert.Equal("'H1' on rail 'Rail' takes 1.7 W of 'F1'; it accepts 1.2 W at 50 °C", power.Message);
        var heat = checks.Single(check => check.Subject.EndsWith(nameof(FuseHolder.TemperatureLimit), StringComparison.Ordinal));
        Assert.Equal("'H1' on rail 'Rail' reaches 130 °C by 'F1'; its limit is 125 °C", heat.Message);
        Assert.Equal(2, checks.Length);
    }

    [Fact]
    public void Each_holder_has_its_own_fuse()
    {
        static FuseHolder Holder(string name) => new() { Name = name, ContactResistance = 1.Milliohms(), AcceptedPower = 1.Watts() };
        static Fuse Fuse(string name, double volts) => new() { Name = name, RatedCurrent = 10.Amperes(), VoltageDrop = volts.Volts() };
        double[] Heats(params Element[] path) => [.. Apply.Rule<DropOrHeatAboveBudget>(Apply.Carrying(10, path[0], Apply.At(20)) with { Path = [.. path] }).Select(check => Math.Round(check.Demand!.Value.Value, 9))];
        Assert.Equal([0.5, 0.7], Heats(Holder("H1"), Fuse("F1", 0.05), Holder("H2"), Fuse("F2", 0.07)));
        Assert.Equal([0.5, 0.7], Heats(Fuse("F1", 0.05), Holder("H1"), Fuse("F2", 0.07), Holder("H2")));
        Assert.Equal([0.7], Heats(Fuse("F1", 0.05), Holder("H1"), Fuse("F2", 0.07))); // either may stand in it; it bears both
        Assert.Equal([], Heats(Holder("H1"), new Wire { Resistance = 1.Milliohms() }));

        // One of them it would not bear: which one it is must be said.
        var open = Judge(Apply.Carrying(10, Reed20, Apply.At(20)) with { Path = [Fuse("F1", 0.05), Holder("H1"), Fuse("F2", 0.2)] });
        Assert.Equal([nameof(Rail.Path)], open.Names());

        // In each branch of a parallel group.
        var pair = new ParallelGroup { Branches = [[Holder("H1"), Fuse("F1", 0.05)], [Fuse("F2", 0.05), Holder("H2")]] };
        Assert.Equal([0.125, 0.125], Heats(pair));
    }

    [Fact]
    public void A_sense_resistor_has_a_rated_power()
    {
        var shunt = new SenseResistor { Name = "RS1", Resistance = Band.Of(0.9.Milliohms(), 1.1.Milliohms()), RatedPower = 2.Watts(), Derating = [new(25.Celsius(), 1), new(125.Celsius(), 0)] };
        var check = Apply.Rule<DropOrHeatAboveBudget>(Apply.Carrying(40, shunt, Apply.At(50))).Of(shunt);
        Assert.Equal((Verdict.Fails, 1.76, 1.5), (check.Verdict, Math.Round(check.Demand!.Value.Value, 9), Math.Round(check.Capacity!.Value.Value, 9)));
        Assert.Equal("'RS1' on rail 'Rail' turns 1.76 W into heat; it may take 1.5 W at 50 °C", check.Message);
    }

    [Fact]
    public void Without_budget_and_limit_there_is_no_check() => Assert.Empty(Apply.Rule<DropOrHeatAboveBudget>(Loop(new(), Reed20 with { BodyTemperatureLimit = null }, 10)));

    [Fact]
    public void A_limit_without_the_datum_that_it_needs_is_undecided_unless_bounds_decide()
    {
        Assert.Equal([nameof(Fuse.TemperatureRise)], Judge(Apply.Carrying(5, Reed20 with { TemperatureRise = null })).Names());
        Assert.Equal([nameof(Rail.Return)], Judge(Loop(new() { Drop = 1.Volts() }, Lead, 100) with { Return = null }).Names());
        Assert.Equal(Verdict.Fails, Judge(Loop(new() { Drop = 0.3.Volts() }, Lead, 100) with { Return = null }).Verdict);
        Assert.Equal([nameof(SenseResistor.Resistance)], Judge(Apply.Carrying(5, new SenseResistor { RatedPower = 1.Watts() })).Names());

        // A cold resistance is the least that a hot fuse has; 0.5 V at rated current the most of a compact one.
        var holder = new FuseHolder { Name = "H1", ContactResistance = 1.Milliohms(), AcceptedPower = 1.Watts() };
        Check With(double amperes) => Judge(Apply.Carrying(amperes, holder, Apply.At(20)) with { Path = [holder, new Fuse { Name = "F1", RatedCurrent = 10.Amperes(), ColdResistance = 8.Milliohms() }] });
        Assert.Equal(Verdict.Holds, With(4).Verdict); // 0.8 W at most
        Assert.Equal([nameof(Fuse.VoltageDrop)], With(8).Names()); // 0.51 to 3.2 W
        Assert.Equal(Verdict.Fails, With(12).Verdict); // 1.15 W at least
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var rail = Loop(new() { Drop = 1.Volts() }, Lead, 10);
        Assert.Equal([nameof(Budgets.Dissipation)], Apply.WithUnknown<DropOrHeatAboveBudget>(rail.Budgets!, nameof(Budgets.Dissipation), rail).Single(check => check.Verdict == Verdict.Undecided).Names());
        var hidden = rail with { Budgets = null };
        Assert.Equal([nameof(Rail.Budgets)], Assert.Single(Apply.WithUnknown<DropOrHeatAboveBudget>(hidden, nameof(Rail.Budgets), hidden)).Names());
        var body = Apply.Carrying(15, Reed20, new Surroundings());
        Assert.Equal([nameof(Surroundings.Ambient)], Assert.Single(Apply.WithUnknown<DropOrHeatAboveBudget>(body.Surroundings!, nameof(Surroundings.Ambient), body)).Names());
        var bare = Reed20 with { BodyTemperatureLimit = null };
        Assert.Equal([nameof(Fuse.BodyTemperatureLimit)], Assert.Single(Apply.WithUnknown<DropOrHeatAboveBudget>(bare, nameof(Fuse.BodyTemperatureLimit), body with { Path = [bare] })).Names());
    }

    /// <summary>Whenever bounds give a verdict, each completion gives the same.</summary>
    [Fact]
    public void Verdicts_by_bounds_are_those_of_every_completion() => Gen.Select(Boards.Incomplete, Gen.Double[0.01, 3], Gen.Double[0.1, 30]).Sample(
        (board, volts, watts) =>
        {
            Rail[] With(double[]? completion) => [.. board.Rails(completion).Select(rail => rail with { Budgets = new() { Drop = volts.Volts(), DropShare = Ratio.FromPercent(volts), Dissipation = watts.Watts() } })];
            var bounded = Apply.Rule<DropOrHeatAboveBudget>(With(null));
            var complete = Apply.Rule<DropOrHeatAboveBudget>(With(board.Completion));
            Assert.Equal(3 * board.Size, bounded.Length);
            foreach (var check in bounded)
            {
                var other = complete.Single(one => one.Subject == check.Subject);
                Assert.True(check.Verdict is Verdict.Undecided || other.Verdict is Verdict.Undecided || check.Verdict == other.Verdict, $"{check.Message} | {other.Message}");
            }
        },
        iter: 200);

    /// <summary>More current, resistance or hot air never gives more margin; and what the sources give is what loads and paths take.</summary>
    [Fact]
    public void More_is_never_better() => Gen.Select(Gen.Double[1, 60], Gen.Double[0.1, 20], Gen.Double[20, 90], Gen.Double[1, 2]).Sample((amperes, milliohms, celsius, more) =>
    {
        double[] Margins(double current, double ohms, double hottest) =>
        [
            .. Apply.Rule<DropOrHeatAboveBudget>(Apply.Carrying(current, Reed20, Apply.At(hottest)) with
            {
                Path = [Reed20, new SenseResistor { Resistance = ohms.Milliohms(), RatedPower = 5.Watts(), Derating = [new(25.Celsius(), 1), new(125.Celsius(), 0.1)] }],
                Budgets = new() { Drop = 1.Volts(), DropShare = Ratio.FromPercent(2), Dissipation = 10.Watts() },
            }).Select(check => check.Margin!.Value),
        ];
        var (before, after) = (Margins(amperes, milliohms, celsius), Margins(amperes * more, milliohms * more, celsius + more));
        return before.Length == 5 && before.Zip(after, (a, b) => b <= a * (1 + 1e-9)).All(holds => holds);
    });
}
