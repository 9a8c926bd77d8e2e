using CsCheck;
using RailRules.Rules;
using RailRules.Tests.Checks;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0501. Closed forms of a single loop; WR-25 and WR-26 of the reference tables; case-030 and case-066 are boards of their own.</summary>
public sealed class LoadVoltageTooLowTests
{
    private static Rail Loop(double volts, double ohms, Load load, Return? back = null) => new("Loop")
    {
        From = new Supply { Name = "Plant", Voltage = Band.Of(volts.Volts(), (volts * 1.2).Volts()) },
        Path = [new SenseResistor { Name = "Path", Resistance = ohms.Ohms() }],
        Return = back ?? Apply.NoReturn,
        Surroundings = Apply.Bench,
        Loads = [load],
    };

    private static Check Judge(Rail rail) => Apply.Rule<LoadVoltageTooLow>(rail).Of(rail.Loads[0]);

    /// <summary>Constant power: v = (V + √(V² − 4 R P))/2, the upper solution.</summary>
    [Theory]
    [InlineData(43, 0.2, 600)]
    [InlineData(12, 0.05, 100)]
    public void Constant_power_takes_the_upper_solution(double volts, double ohms, double watts)
    {
        var expected = (volts + Math.Sqrt((volts * volts) - (4 * ohms * watts))) / 2;
        var check = Judge(Loop(volts, ohms, new() { Name = "Sled", Power = watts.Watts(), MinVoltage = 10.Volts() }));
        Assert.Equal(expected, check.Capacity!.Value.Value, 1e-9 * expected);
        Assert.Equal(expected / 10, check.Margin!.Value, 1e-9);
    }

    [Fact]
    public void The_message_names_what_it_gets_and_needs()
    {
        var check = Judge(Loop(43, 0.2, new() { Name = "Sled", Power = 600.Watts(), MinVoltage = 40.Volts() }));
        Assert.Equal("'Sled' on rail 'Loop' gets 40 V at the end of its path; it needs 40 V", check.Message);
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal("'Sled' on rail 'Loop' gets 37.9 V at the end of its path; it needs 40 V", Judge(Loop(43, 0.34, new() { Name = "Sled", Current = 15.Amperes(), MinVoltage = 40.Volts() })).Message);
    }

    /// <summary>WR-26: 35 mm² class 5, 5 m, 100 A drops 0.663 V at 70 °C, two ways.</summary>
    [Fact]
    public void The_return_counts_and_conductors_are_hot()
    {
        var wire = new Wire { Name = "Lead", Resistance = (0.554e-3 / 100 * 1000 / 2).Ohms(), TemperatureLimit = 70.Celsius() };
        var rail = Loop(28, 0, new() { Name = "Load", Current = 100.Amperes(), MinVoltage = 20.Volts() }, Return.Mirrored) with { Path = [wire] };
        Assert.Equal(28 - 0.663, Judge(rail).Capacity!.Value.Value, 0.001);
    }

    [Fact]
    public void Diode_and_fuse_drops_count()
    {
        var rail = Loop(12, 0, new() { Name = "Load", Current = 4.Amperes(), MinVoltage = 11.Volts() }) with
        {
            Path = [new BlockingDiode { ForwardDrop = 0.5.Volts() }, new Fuse { RatedCurrent = 8.Amperes(), VoltageDrop = 0.2.Volts() }],
        };
        Assert.Equal(12 - 0.5 - 0.1, Judge(rail).Capacity!.Value.Value, 1e-9);
    }

    [Fact]
    public void The_worst_feed_state_counts()
    {
        var feed = new Feed { From = new Supply { Name = "A", Voltage = 48.Volts() }, Path = [new SenseResistor { Resistance = 0.1.Ohms() }], Return = Apply.NoReturn };
        var rail = new Rail("Shelf")
        {
            Feeds = [feed, feed with { From = new Supply { Name = "B", Voltage = 44.Volts() }, Path = [new SenseResistor { Resistance = 0.3.Ohms() }] }],
            Return = Apply.NoReturn,
            Loads = [new() { Name = "Load", Current = 10.Amperes(), MinVoltage = 40.Volts() }],
        };
        Assert.Equal(44 - 3, Judge(rail).Capacity!.Value.Value, 1e-9);
    }

    [Fact]
    public void Converters_are_loads()
    {
        var input = new Rail("Bus") { From = new Supply { Name = "Plant", Voltage = 48.Volts() }, Path = [new SenseResistor { Resistance = 1.Ohms() }], Return = Apply.NoReturn };
        var brick = new Converter { Name = "Brick", Input = input, Output = 12.Volts(), Efficiency = Ratio.FromPercent(90), InputMinVoltage = 44.Volts() };
        var output = new Rail("Out") { From = brick, Return = Apply.NoReturn, Loads = [new() { Name = "Board", Current = 15.Amperes() }] };
        var check = Apply.Rule<LoadVoltageTooLow>(input, output).Of(brick);

        // 180 W at 90 %: 200 W would settle at 43.4 V; a converter never runs below its lowest input, so it draws 200 W / 44 V.
        Assert.Equal(48 - (200.0 / 44), check.Capacity!.Value.Value, 1e-6);
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal([nameof(Converter.InputMinVoltage)], Apply.Rule<LoadVoltageTooLow>(input, output with { From = brick with { InputMinVoltage = null } }).Single().Names());
    }

    [Fact]
    public void What_is_not_known_is_undecided_unless_bounds_decide()
    {
        var load = new Load { Name = "Sled", Power = 100.Watts(), MinVoltage = 40.Volts() };
        Assert.Equal([nameof(Load.MinVoltage)], Judge(Loop(43, 0.1, load with { MinVoltage = null })).Names());
        Assert.Equal([nameof(Rail.Return)], Judge(Loop(43, 0.1, load) with { Return = null }).Names());
        Assert.Equal(Verdict.Fails, Judge(Loop(39, 0.1, load) with { Return = null }).Verdict);
        var fuse = Loop(43, 0, load) with { Path = [new Fuse { Name = "F1", RatedCurrent = 10.Amperes() }] };
        Assert.Equal(Verdict.Holds, Judge(fuse).Verdict);
        Assert.Equal([nameof(Fuse.ColdResistance)], Judge(Loop(40.05, 0, load) with { Path = fuse.Path }).Names());
    }

    [Fact]
    public void Nothing_asked_is_no_check() => Assert.Empty(Apply.Rule<LoadVoltageTooLow>(Loop(43, 0.1, new() { Current = 1.Amperes() })));

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var rail = Loop(43, 0.1, new() { Name = "Load", Current = 1.Amperes() });
        Assert.Equal([nameof(Rail.Loads)], Assert.Single(Apply.WithUnknown<LoadVoltageTooLow>(rail, nameof(Rail.Loads), rail)).Names());
        Assert.Equal([nameof(Load.MinVoltage)], Apply.WithUnknown<LoadVoltageTooLow>(rail.Loads[0], nameof(Load.MinVoltage), rail).Of(rail.Loads[0]).Names());
    }

    /// <summary>Whenever bounds give a verdict, each completion gives the same.</summary>
    [Fact]
    public void Verdicts_by_bounds_are_those_of_every_completion() => Boards.Incomplete.Sample(
        board =>
        {
            var bounded = Apply.Rule<LoadVoltageTooLow>([.. board.Rails(null)]);
            var complete = Apply.Rule<LoadVoltageTooLow>([.. board.Rails(board.Completion)]);
            foreach (var check in bounded)
            {
                var other = complete.Single(one => one.Rail!.Name == check.Rail!.Name);
                Assert.True(check.Verdict is Verdict.Undecided || other.Verdict is Verdict.Undecided || check.Verdict == other.Verdict, $"{check.Message} | {other.Message}");
            }
        },
        iter: 300);

    [Fact]
    public void More_load_or_resistance_never_raises_the_voltage() => Gen.Select(Gen.Double[20, 60], Gen.Double[0, 0.5], Gen.Double[1, 100], Gen.Double[1, 2]).Sample((volts, ohms, watts, more) =>
    {
        double At(double r, double p) => Judge(Loop(volts, r, new() { Name = "Load", Power = p.Watts(), MinVoltage = 5.Volts() })).Capacity!.Value.Value;
        var base0 = At(ohms, watts);
        return At(ohms * more, watts) <= base0 + 1e-9 && At(ohms, watts * more) <= base0 + 1e-9;
    });
}
