using System.Text.Json;
using CsCheck;
using RailRules.Physics;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>
/// RAIL0403. Start, short circuit and turn-off: check values HS-01 to HS-08, HS-11 and TV-07; energies of simulated starts and turn-offs: tests/Reference/spice/starting.json;
/// factors for heat, typical data and thermal instability: rulebook R-33.
/// </summary>
public sealed class OutsideSafeOperatingAreaTests
{
    private static readonly JsonDocument Spice = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Reference", "spice", "starting.json")));

    private static SafeOperatingPoint Point(double volts, double amperes, double seconds, double? celsius = null) =>
        new(volts.Volts(), amperes.Amperes(), seconds.Seconds(), celsius?.Celsius());

    private static SafeOperatingArea Area(params SafeOperatingPoint[] points) => new() { Guaranteed = true, Points = [.. points] };

    private static ElectronicFuse Switch(double start, double timer, SafeOperatingArea? area) => new()
    {
        Name = "U1",
        TripLevel = 20.Amperes(),
        StartCurrent = start.Amperes(),
        StartTimer = timer.Seconds(),
        ShortCircuitLevel = 50.Amperes(),
        ShortCircuitResponse = 1.Microseconds(),
        SafeOperatingArea = area,
        JunctionTemperatureLimit = 150.Celsius(),
        Retry = Retry.LatchOff,
        MaxVoltage = 100.Volts(),
    };

    private static Rail Behind(ElectronicFuse part, double volts, double farads = 0, double celsius = 25, Load? load = null) => new("Rail")
    {
        From = new Supply { Name = "Source", Voltage = volts.Volts(), SourceResistance = 1.Microohms(), SourceInductance = 1.Microhenries() },
        Path = [part],
        Return = Apply.NoReturn,
        Capacitors = farads > 0 ? [new() { Name = "Bulk", Capacitance = farads.Farads(), Esr = 0.Ohms() }] : [],
        Loads = load is null ? [] : [load],
        Surroundings = Apply.At(celsius),
    };

    private static Check Of(string datum, Rail rail) => Apply.Rule<OutsideSafeOperatingArea>(rail).Single(check => check.Subject.EndsWith(": " + datum, StringComparison.Ordinal));

    private static double Step(Check check, string quantity) => check.Working.Single(step => step.Quantity == quantity).Result.Value;

    /// <summary>HS-08: 60 V, 5 A for 2 ms are 0.6 J; HS-02: 8 A at 25 °C are 4.16 A at 85 °C, HS-01 factor 0.52.</summary>
    [Theory]
    [InlineData(25, 8, Verdict.Holds)]
    [InlineData(85, 4.16, Verdict.Fails)]
    public void A_start_into_a_short_lasts_until_the_timer_ends(double celsius, double amperes, Verdict expected)
    {
        var check = Of(nameof(ElectronicFuse.StartTimer), Behind(Switch(5, 2e-3, Area(Point(60, 8, 2e-3))), 60, celsius: celsius));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal((300, 0.6), (check.Demand!.Value.Value, Math.Round(check.Demand.Value.Value * Step(check, "for a time of"), 9)));
        Assert.Equal(60 * amperes, check.Capacity!.Value.Value, 1e-9);
    }

    /// <summary>HS-11: 50 A, and 60 V on 1 µH for 1 µs more, are 110 A.</summary>
    [Fact]
    public void A_short_circuit_while_running_rises_on_for_the_response()
    {
        var check = Of(nameof(ElectronicFuse.ShortCircuitResponse), Behind(Switch(5, 2e-3, Area(Point(60, 120, 1e-6), Point(60, 8, 2e-3))), 60));
        Assert.Equal(60 * 110, check.Demand!.Value.Value, 60 * 110 * 1e-4);
        Assert.Equal((Verdict.Holds, 60 * 120.0), (check.Verdict, Math.Round(check.Capacity!.Value.Value, 6)));
    }

    /// <summary>The peak for half the time carries the energy of the simulated start: equal without loads or with a constant one; with a resistor, whose current rises with the voltage, it errs high.</summary>
    [Fact]
    public void The_energy_of_a_start_is_that_of_the_simulator()
    {
        var seen = 0;
        foreach (var one in Spice.RootElement.GetProperty("cases").EnumerateArray().Where(one => one.GetProperty("kind").GetString() is "inrush.constant_current" or "inrush.power_limited"))
        {
            double? In(string name) => one.GetProperty("inputs").TryGetProperty(name, out var value) ? value.GetDouble() : null;
            var part = Switch(In("current_limit")!.Value, 10, Area(Point(500, 100, 10))) with { StartPower = In("power_limit") is { } watts ? watts.Watts() : null };
            var load = new Load("Load") { Current = In("load_current")?.Amperes(), Resistance = In("load_resistance")?.Ohms(), EnablesAt = EnablesAt.Zero };
            var isOn = load.Current is not null || load.Resistance is not null;
            var check = Of(nameof(ElectronicFuse.StartCurrent), Behind(part, In("source_voltage")!.Value, In("capacitance")!.Value, load: isOn ? load : null));
            var energy = one.GetProperty("outputs").EnumerateArray().Single(output => output.GetProperty("quantity").GetString() == "dissipated_energy").GetProperty("ngspice").GetDouble();
            var ratio = Step(check, "for a time of") * Step(check, "power in the switch") / energy;
            Assert.InRange(ratio, 1 - 1e-4, load.Resistance is null ? 1 + 1e-3 : 1.2);
            seen++;
        }

        Assert.Equal(8, seen);
    }

    /// <summary>TV-07: 5 µH at 200 A into 90 V beside 54 V leave 0.25 J, not 0.1 J.</summary>
    [Theory]
    [InlineData(0.25, Verdict.Holds)]
    [InlineData(0.24, Verdict.Fails)]
    public void The_source_feeds_the_avalanche_too(double joules, Verdict expected)
    {
        var part = Switch(5, 2e-3, null) with { ShortCircuitLevel = 200.Amperes(), ShortCircuitResponse = 0.Seconds(), MaxVoltage = 90.Volts(), AvalancheEnergy = joules.Joules() };
        var check = Of(nameof(ElectronicFuse.AvalancheEnergy), Behind(part, 54) with { From = new Supply { Name = "Source", Voltage = 54.Volts(), SourceResistance = 1.Microohms(), SourceInductance = 5.Microhenries() } });
        Assert.Equal((expected, 0.25), (check.Verdict, Math.Round(check.Demand!.Value.Value, 9)));
    }

    /// <summary>Resistance only takes energy away: the simulated turn-offs, with theirs, never leave more in the clamp.</summary>
    [Fact]
    public void A_simulated_turn_off_never_takes_more()
    {
        foreach (var one in Spice.RootElement.GetProperty("cases").EnumerateArray().Where(one => one.GetProperty("kind").GetString() == "turnoff.clamp"))
        {
            double In(string name) => one.GetProperty("inputs").GetProperty(name).GetDouble();
            if (In("source_voltage") <= 0)
                continue;

            var part = Switch(5, 2e-3, null) with { ShortCircuitLevel = In("initial_current").Amperes(), ShortCircuitResponse = 0.Seconds(), MaxVoltage = In("clamp_voltage").Volts(), AvalancheEnergy = 0.001.Millijoules() };
            var supply = new Supply { Name = "Source", Voltage = In("source_voltage").Volts(), SourceResistance = 1.Microohms(), SourceInductance = In("inductance").Henries() };
            var energy = one.GetProperty("outputs").EnumerateArray().Single(output => output.GetProperty("quantity").GetString() == "dissipated_energy").GetProperty("ngspice").GetDouble();
            var demand = Of(nameof(ElectronicFuse.AvalancheEnergy), Behind(part, In("source_voltage")) with { From = supply }).Demand!.Value.Value;
            Assert.InRange(demand / energy, 1, 1.7);
        }
    }

    [Fact]
    public void Below_its_rating_nothing_breaks_down()
    {
        var part = Switch(5, 2e-3, null) with { AvalancheEnergy = 0.001.Millijoules() };
        var supply = new Supply { Name = "Source", Voltage = 54.Volts(), SourceResistance = 1.Microohms(), SourceInductance = 5.Microhenries(), OutputCapacitance = 10.Millifarads(), OutputCapacitorEsr = 1.Milliohms() };
        Assert.DoesNotContain(Apply.Rule<OutsideSafeOperatingArea>(Behind(part, 54) with { From = supply }), check => check.Subject.EndsWith(nameof(ElectronicFuse.AvalancheEnergy), StringComparison.Ordinal));
    }

    [Theory] // 12 A for 1 ms, 6 A for 10 ms: on logarithms sqrt(72) A half-way; twice the longest time by equal energy; for less than the shortest no less
    [InlineData(3.16227766016838e-3, 8.48528137423857)]
    [InlineData(20e-3, 3)]
    [InlineData(0.1e-3, 12)]
    public void Between_widths_it_is_read_on_logarithms(double seconds, double amperes)
    {
        var area = SafeArea.Of([new(60, 12, 1e-3, 25), new(60, 6, 10e-3, 25)])!.Current(60, seconds, 25, 150);
        Assert.Equal(amperes, area.Low, 1e-9);
        Assert.Equal(seconds is > 1e-3 and < 10e-3, area.High == area.Low);
    }

    [Fact]
    public void Between_voltages_too_and_beyond_them_it_is_bounded()
    {
        var area = SafeArea.Of([new(10, 16, 1e-3, 25), new(40, 4, 1e-3, 25)])!;
        Assert.Equal((8, 8), (Math.Round(area.Current(20, 1e-3, 25, 150).Low, 9), Math.Round(area.Current(20, 1e-3, 25, 150).High, 9)));
        Assert.Equal((16, double.PositiveInfinity), (area.Current(5, 1e-3, 25, 150).Low, area.Current(5, 1e-3, 25, 150).High));
        Assert.Equal((0, 4), (area.Current(41, 1e-3, 25, 150).Low, area.Current(41, 1e-3, 25, 150).High));
    }

    /// <summary>Stated at 25 °C and 100 °C, the case between: a straight line, no further factor. Beyond: less, to nothing at the limit.</summary>
    [Fact]
    public void Points_stated_at_temperature_need_no_factor()
    {
        var area = SafeArea.Of([new(48, 8, 1e-3, 25), new(48, 5, 1e-3, 100)])!;
        Assert.Equal([8, 6.5, 5, 2.5, 0], new[] { 20, 62.5, 100, 125, 150 }.Select(celsius => Math.Round(area.Current(48, 1e-3, celsius, 150).Low, 9)));
        Assert.False(area.Current(48, 1e-3, 125, 150).IsUnstable);
    }

    [Theory] // 90 W at 12 V but 64 W at 16 V
    [InlineData(25, 4)]
    [InlineData(85, 4 * 0.52 / 1.5)]
    public void Beyond_the_knee_heat_costs_more(double celsius, double amperes)
    {
        var check = Of(nameof(ElectronicFuse.StartTimer), Behind(Switch(1, 1e-3, Area(Point(12, 7.5, 1e-3), Point(16, 4, 1e-3))), 16, celsius: celsius));
        Assert.Equal(16 * amperes, check.Capacity!.Value.Value, 1e-9);
    }

    [Theory]
    [InlineData(true, 8.0, Verdict.Holds)]
    [InlineData(false, 8 / 1.3, Verdict.Fails)]
    [InlineData(null, null, Verdict.Undecided)]
    public void Typical_data_count_for_less(bool? guaranteed, double? amperes, Verdict expected)
    {
        var check = Of(nameof(ElectronicFuse.StartTimer), Behind(Switch(7, 2e-3, Area(Point(60, 8, 2e-3)) with { Guaranteed = guaranteed }), 60));
        Assert.Equal(expected, check.Verdict);
        if (amperes is { } allowed)
            Assert.Equal(60 * allowed, check.Capacity!.Value.Value, 1e-9);
        else
            Assert.Equal([nameof(SafeOperatingArea.Guaranteed)], check.Names());
    }

    /// <summary>60 V, 5 A for 2 ms in every 200 ms are 3 W on average; 6 W at 25 °C are 3.12 W at 85 °C.</summary>
    [Theory]
    [InlineData(85, 198e-3, Verdict.Holds)]
    [InlineData(95, 198e-3, Verdict.Fails)]
    [InlineData(85, null, Verdict.Undecided)]
    public void Retries_add_up_to_an_average(double celsius, double? interval, Verdict expected)
    {
        var part = Switch(5, 2e-3, Area(Point(60, 100, 10e-3))) with { Retry = Retry.Forever, MaxDissipation = 6.Watts(), RetryInterval = interval?.Seconds() };
        var check = Of(nameof(ElectronicFuse.RetryInterval), Behind(part, 60, celsius: celsius));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(expected == Verdict.Undecided ? [nameof(ElectronicFuse.RetryInterval)] : [], check.Names());
        if (interval is not null)
            Assert.Equal((3.0, Math.Round(6 * (150 - celsius) / 125, 9)), (Math.Round(check.Demand!.Value.Value, 9), Math.Round(check.Capacity!.Value.Value, 9)));
    }

    /// <summary>Without a dissipation the diagram bounds it: a line for 10 s or more holds for ever.</summary>
    [Theory]
    [InlineData(10, 0.06, Verdict.Holds)]
    [InlineData(0.1, 0.06, Verdict.Undecided)]
    [InlineData(0.1, 0.04, Verdict.Fails)]
    public void Without_a_dissipation_the_longest_line_bounds_it(double width, double amperes, Verdict expected)
    {
        var part = Switch(5, 2e-3, Area(Point(60, 100, 1e-3), Point(60, amperes, width))) with { Retry = Retry.Forever, RetryInterval = 198.Milliseconds() };
        Assert.Equal(expected, Of(nameof(ElectronicFuse.RetryInterval), Behind(part, 60)).Verdict);
    }

    [Fact]
    public void One_that_stays_off_has_no_average() =>
        Assert.DoesNotContain(Apply.Rule<OutsideSafeOperatingArea>(Behind(Switch(5, 2e-3, Area(Point(60, 8, 2e-3))), 60)), check => check.Subject.EndsWith(nameof(ElectronicFuse.RetryInterval), StringComparison.Ordinal));

    [Fact]
    public void Without_a_diagram_it_is_undecided()
    {
        var checks = Apply.Rule<OutsideSafeOperatingArea>(Behind(Switch(5, 2e-3, null), 60, 1e-3));
        Assert.Equal(3, checks.Length);
        Assert.All(checks, check => Assert.Equal((Verdict.Undecided, nameof(ElectronicFuse.SafeOperatingArea)), (check.Verdict, Assert.Single(check.Names()))));
    }

    /// <summary>A source that gives less than the start current leaves the switch fully on; one that gives less than it carries makes no short circuit of it.</summary>
    [Fact]
    public void A_source_within_its_ratings_is_no_check()
    {
        var weak = new Supply { Name = "Weak", Voltage = 24.Volts(), CurrentLimit = new() { Level = 2.Amperes(), Style = CurrentLimitStyle.ConstantCurrent } };
        Assert.Empty(Apply.Rule<OutsideSafeOperatingArea>(Behind(Switch(5, 2e-3, null), 24, 1e-3) with { From = weak }));
    }

    [Theory]
    [InlineData(110.0, 25.0, Verdict.Holds, Verdict.Holds)]
    [InlineData(90.0, 25.0, Verdict.Fails, Verdict.Holds)]
    [InlineData(110.0, 15.0, Verdict.Holds, Verdict.Fails)]
    [InlineData(null, null, Verdict.Undecided, Verdict.Undecided)]
    public void A_contact_makes_the_inrush_and_breaks_the_load(double? making, double? breaking, Verdict makes, Verdict breaks)
    {
        // 48 V behind 0.48 Ω: 100 A of inrush; then 20 A.
        var contact = new Switch { Name = "K1", RatedCurrent = 40.Amperes(), OnResistance = 0.Ohms(), MakingCurrent = making?.Amperes(), BreakingCurrent = breaking?.Amperes() };
        var rail = new Rail("Rail")
        {
            From = new Supply { Name = "Source", Voltage = 48.Volts(), SourceResistance = 0.48.Ohms(), SourceInductance = 0.Henries(), TransientMax = 48.Volts() },
            Path = [contact],
            Return = Apply.NoReturn,
            Capacitors = [new() { Name = "Bulk", Capacitance = 1.Millifarads(), Esr = 0.Ohms(), Esl = 0.Henries() }],
            Loads = [new("Load") { Current = 20.Amperes(), EnablesAt = EnablesAt.PowerGood }],
            Surroundings = Apply.Bench,
        };
        var (closing, opening) = (Of(nameof(RailRules.Switch.MakingCurrent), rail), Of(nameof(RailRules.Switch.BreakingCurrent), rail));
        Assert.Equal((makes, breaks), (closing.Verdict, opening.Verdict));
        if (makes != Verdict.Undecided)
            Assert.Equal((100, 20.0), (Math.Round(closing.Demand!.Value.Value, 1), opening.Demand!.Value.Value));

        // Within what it carries for ever nothing is asked of closing.
        Assert.DoesNotContain(Apply.Rule<OutsideSafeOperatingArea>(rail with { Path = [contact with { RatedCurrent = 120.Amperes(), MakingCurrent = null }] }), check => check.Subject.EndsWith("MakingCurrent", StringComparison.Ordinal));
    }

    [Fact]
    public void What_could_not_be_worked_out_is_not_passed()
    {
        var part = Switch(5, 2e-3, Area(Point(60, 1, 10)));
        var rail = Behind(part, 60, 1e-3);
        foreach (var (owner, datum) in new (object, string)[] { (rail, nameof(Rail.Path)), (rail, nameof(Rail.Capacitors)), (part, nameof(ElectronicFuse.StartPower)) })
            Assert.Contains(Apply.WithUnknown<OutsideSafeOperatingArea>(owner, datum, rail), check => check.Verdict == Verdict.Undecided && check.Names().Contains(datum));
    }

    /// <summary>A hotter case, a longer timer, more current or a higher voltage never leave more to spare.</summary>
    [Fact]
    public void Worse_is_never_better() =>
        Gen.Select(Gen.Double[1, 10], Gen.Double[1e-3, 0.05], Gen.Double[20, 50], Gen.Double[25, 100], Gen.Double[1, 1.4], Gen.Int[0, 3]).Sample((amperes, timer, volts, celsius, more, which) =>
        {
            var area = Area(Point(10, 40, 1e-3), Point(80, 4, 1e-3), Point(10, 20, 10e-3), Point(80, 1.5, 10e-3), Point(10, 12, 0.1), Point(80, 0.6, 0.1));
            double Margin(double start, double seconds, double v, double hot) => Of(nameof(ElectronicFuse.StartTimer), Behind(Switch(start, seconds, area), v, celsius: hot)).Margin!.Value;
            var worse = which switch
            {
                0 => Margin(amperes * more, timer, volts, celsius),
                1 => Margin(amperes, timer * more, volts, celsius),
                2 => Margin(amperes, timer, volts * more, celsius),
                _ => Margin(amperes, timer, volts, celsius * more),
            };
            return worse <= Margin(amperes, timer, volts, celsius) * (1 + 1e-9);
        });
}
