using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0402. Times: check values HS-05 and HS-06, rulebook R-32 (2.64 mF to 60 V at 2 A takes 79.2 ms); a load that takes all: case-051.</summary>
public sealed class StartBeyondTimerTests
{
    private static ElectronicFuse Switch(double start, double? timer) => new()
    {
        Name = "U1",
        StartCurrent = Band.Of(start.Amperes(), (1.2 * start).Amperes()),
        StartTimer = timer is { } seconds ? Band.Of(seconds.Seconds(), (1.3 * seconds).Seconds()) : null,
    };

    private static Rail Starting(ElectronicFuse part, double volts, double farads, params Load[] loads) => new("Rail")
    {
        From = new Supply { Name = "Source", Voltage = volts.Volts() },
        Path = [part],
        Capacitors = [new() { Name = "Bulk", Capacitance = Band.Of((0.8 * farads).Farads(), farads.Farads()) }],
        Loads = [.. loads],
    };

    private static Load On(double amperes, EnablesAt? at = null) => new("Load") { Current = amperes.Amperes(), EnablesAt = at };

    private static Check Of(Rail rail) => Assert.Single(Apply.Rule<StartBeyondTimer>(rail));

    [Theory]
    [InlineData(2, 54, 2.2e-3, 0, 59.4e-3)] // HS-05
    [InlineData(3, 54, 2.2e-3, 1, 59.4e-3)] // HS-06
    [InlineData(2, 60, 2.64e-3, 0, 79.2e-3)]
    public void The_time_is_that_of_the_charge(double start, double volts, double farads, double load, double seconds)
    {
        Load[] loads = load > 0 ? [On(load, EnablesAt.Zero)] : [];
        var fails = Of(Starting(Switch(start, 0.99 * seconds), volts, farads, loads));
        var holds = Of(Starting(Switch(start, seconds), volts, farads, loads));
        Assert.Equal((Verdict.Fails, Verdict.Holds), (fails.Verdict, holds.Verdict));
        Assert.Equal(seconds, fails.Demand!.Value.Value, 1e-9 * seconds);
        Assert.Equal(0.99 * seconds, fails.Capacity!.Value.Value, 1e-12);
    }

    /// <summary>At limited power, then at limited current: C/2 (V²/P + P/I²), closed form of the same integral, any textbook on hot swap.</summary>
    [Fact]
    public void Limited_power_is_slow_at_first()
    {
        const double volts = 54, farads = 1e-3, power = 60, current = 5;
        var check = Of(Starting(Switch(current, 0.1) with { StartPower = Band.Of(power.Watts(), 80.Watts()) }, volts, farads));
        Assert.Equal(farads / 2 * ((volts * volts / power) + (power / current / current)), check.Demand!.Value.Value, 1e-8);
    }

    [Fact]
    public void A_load_that_takes_all_is_never_brought_up()
    {
        var check = Of(Starting(Switch(2.4, 1), 24, 1e-3, On(2.5, EnablesAt.Zero)));
        Assert.Equal((Verdict.Fails, null, 0.0), (check.Verdict, check.Demand, check.Margin));
        Assert.Contains("needs for ever to bring up 1 mF with 2.5 A on", check.Message, StringComparison.Ordinal);

        // Without a timer too, and with equality; a timer is not asked for where the start ends.
        Assert.Equal(Verdict.Fails, Of(Starting(Switch(2.5, null), 24, 1e-3, On(2.5, EnablesAt.Zero))).Verdict);
        Assert.Empty(Apply.Rule<StartBeyondTimer>(Starting(Switch(2.6, null), 24, 1e-3, On(2.5, EnablesAt.Zero))));
    }

    /// <summary>A converter draws most where the voltage is least: 90 W from 36 V on are 2.5 A.</summary>
    [Theory]
    [InlineData(2.4, Verdict.Fails)]
    [InlineData(3, Verdict.Holds)]
    public void Constant_power_draws_most_at_the_voltage_that_enables_it(double start, Verdict expected) =>
        Assert.Equal(expected, Of(Starting(Switch(start, 1), 54, 1e-3, new Load("Load") { Power = 90.Watts(), EnablesAt = EnablesAt.Voltage(36.Volts()) })).Verdict);

    [Theory] // 39.6 ms with the load off, 59.4 ms with it on
    [InlineData(0.030, Verdict.Fails)]
    [InlineData(0.050, Verdict.Undecided)]
    [InlineData(0.070, Verdict.Holds)]
    public void When_the_load_comes_on_is_asked_only_where_it_matters(double timer, Verdict expected)
    {
        var check = Of(Starting(Switch(3, timer), 54, 2.2e-3, On(1)));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(expected == Verdict.Undecided ? [nameof(Load.EnablesAt)] : [], check.Names());
    }

    [Fact]
    public void Without_a_start_current_it_is_undecided()
    {
        var check = Of(Starting(Switch(3, 0.1) with { StartCurrent = null }, 54, 2.2e-3));
        Assert.Equal((Verdict.Undecided, nameof(ElectronicFuse.StartCurrent)), (check.Verdict, Assert.Single(check.Names())));
    }

    [Fact]
    public void Nothing_behind_it_is_no_check() =>
        Assert.Empty(Apply.Rule<StartBeyondTimer>(Starting(Switch(3, 0.1), 54, 0, On(1, EnablesAt.PowerGood)) with { Capacitors = [] }));

    [Fact]
    public void Capacitors_of_rails_below_count()
    {
        var above = Starting(Switch(2, 0.07), 54, 1.1e-3);
        var below = new Rail("Below") { From = above, Loads = [On(1, EnablesAt.PowerGood) with { InputCapacitance = 1.1.Millifarads() }] };
        Assert.Equal(59.4e-3, Assert.Single(Apply.Rule<StartBeyondTimer>(below, above)).Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void A_source_that_gives_less_sets_the_time()
    {
        var supply = new Supply { Name = "Weak", Voltage = 54.Volts(), CurrentLimit = new() { Level = Band.Of(1.Amperes(), 1.5.Amperes()) } };
        Assert.Equal(118.8e-3, Of(Starting(Switch(2, 1), 54, 2.2e-3) with { From = supply }).Demand!.Value.Value, 1e-9);
    }

    /// <summary>A converter behind it: 45 W at 0.9 are 50 W, from its lowest input voltage on.</summary>
    [Theory]
    [InlineData(2, Verdict.Fails)] // 50 W / 20 V are 2.5 A
    [InlineData(2.6, Verdict.Holds)]
    public void A_converter_runs_from_its_lowest_input_voltage_on(double start, Verdict expected)
    {
        var input = Starting(Switch(start, 1), 48, 1e-3) with { Return = Return.OfResistance(0.Ohms()) };
        var converter = new Converter { Name = "Brick", Input = input, Output = 9.Volts(), Efficiency = 90.Percent(), InputMinVoltage = 20.Volts(), EnablesAt = EnablesAt.Voltage(20.Volts()) };
        var output = new Rail("Output") { From = converter, Return = Return.OfResistance(0.Ohms()), Loads = [new("Load") { Current = 5.Amperes() }] };
        Assert.Equal(expected, Apply.Rule<StartBeyondTimer>(output, input).Single().Verdict);

        // Held off by nothing that is stated, it may start at once or later.
        converter = converter with { EnablesAt = null };
        var open = Apply.Rule<StartBeyondTimer>(output with { From = converter }, input).Single();
        Assert.Equal(expected == Verdict.Fails ? [nameof(Converter.EnablesAt)] : [], open.Names());
    }

    [Fact]
    public void What_could_not_be_worked_out_is_not_passed()
    {
        var part = Switch(2, 1);
        var rail = Starting(part, 54, 1e-3, On(1, EnablesAt.PowerGood));
        foreach (var (owner, datum) in new (object, string)[] { (rail, nameof(Rail.Capacitors)), (rail, nameof(Rail.Loads)), (rail, nameof(Rail.Path)), (part, nameof(ElectronicFuse.StartPower)) })
            Assert.Contains(Apply.WithUnknown<StartBeyondTimer>(owner, datum, rail), check => check.Verdict == Verdict.Undecided && check.Names().Contains(datum));

        var untimed = part with { StartTimer = null };
        var check = Assert.Single(Apply.WithUnknown<StartBeyondTimer>(untimed, nameof(ElectronicFuse.StartTimer), rail with { Path = [untimed] }));
        Assert.Equal((Verdict.Undecided, nameof(ElectronicFuse.StartTimer)), (check.Verdict, Assert.Single(check.Names())));
    }

    [Fact]
    public void A_house_margin_shortens_the_timer() =>
        Assert.Equal(0.05, Of(Starting(Switch(2, 0.1), 54, 1e-3) with { Policy = new() { StartTimeFactor = 2 } }).Capacity!.Value.Value, 1e-12);

    /// <summary>More capacitance, more load, a higher voltage or less current never shorten a start.</summary>
    [Fact]
    public void Worse_is_never_better() =>
        Gen.Select(Gen.Double[1, 5], Gen.Double[10, 60], Gen.Double[1e-4, 1e-2], Gen.Double[0, 0.9], Gen.Double[1, 1.5], Gen.Int[0, 3]).Sample((start, volts, farads, share, more, which) =>
        {
            double Time(double amperes, double v, double c, double load) =>
                Of(Starting(Switch(amperes, 10), v, c, On(load, EnablesAt.Zero))).Demand is { } demand ? demand.Value : double.PositiveInfinity;
            var once = Time(start, volts, farads, share * start);
            var worse = which switch
            {
                0 => Time(start / more, volts, farads, share * start),
                1 => Time(start, volts * more, farads, share * start),
                2 => Time(start, volts, farads * more, share * start),
                _ => Time(start, volts, farads, share * start * more),
            };
            return worse >= once * (1 - 1e-9);
        });
}
