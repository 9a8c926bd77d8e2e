using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>
/// RAIL0405. Charge through a resistance: C V²/(2 R), its energy C V²/2 (closed forms, rulebook R-14; rows PI-09 and HS-04 of the reference tables); at a constant limit
/// C V/I (row HS-05). The published example is case-083: 4.7 mF, 57 V, 5 Ω cold and 0.15 Ω hot, 50 mΩ of loop, 60 A²s, 1000 starts.
/// </summary>
public sealed class LimiterStillHotTests
{
    private static readonly Fuse Reed = new() { PartNumber = "Reed", RatedCurrent = 10.Amperes(), MeltingIntegral = 60.AmpereSquaredSeconds(), ColdResistance = 0.Ohms() };

    private static readonly InrushLimiter Warm = new()
    {
        PartNumber = "Warm",
        ColdResistance = 5.Ohms(),
        HotResistance = 0.15.Ohms(),
        RecoveryTime = 60.Seconds(),
        MaxEnergy = 20.Joules(),
        MaxCurrent = 8.Amperes(),
    };

    private static readonly Supply Plant = new() { Name = "Plant", Voltage = 57.Volts(), SourceResistance = 0.Ohms() };

    private static Load Board(double farads = 4.7e-3) => new() { Name = "Board", InputCapacitance = farads.Farads(), InputCapacitorEsr = 0.Ohms(), StartsInLife = 1000 };

    private static Rail RailOf(InrushLimiter? limiter = null, Source? source = null, Load? load = null, Fuse? fuse = null, double? outage = 1, double ohms = 0.05) => new("Rail")
    {
        From = source ?? Plant,
        Path = [fuse ?? Reed, limiter ?? Warm],
        Return = Return.OfResistance(ohms.Ohms()),
        Loads = [load ?? Board()],
        Surroundings = Apply.Bench,
        ShortestOutage = outage?.Seconds(),
    };

    private static Check? Judge(Rail rail, string datum) => Apply.Rule<LimiterStillHot>(rail).SingleOrDefault(check => check.Subject.EndsWith(": " + datum, StringComparison.Ordinal));

    private static Check? Restart(Rail rail) => Judge(rail, nameof(InrushLimiter.HotResistance));

    private static double Digits(Figure? figure) => double.Parse(Figures.Digits(figure!.Value.Value), System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void The_published_example_fails_when_it_starts_again()
    {
        var check = Restart(RailOf())!;
        Assert.Equal((Verdict.Fails, 38.2, 22.8), (check.Verdict, Digits(check.Demand), Digits(check.Capacity)));
        Assert.Equal("'Warm' on rail 'Rail' is still at 150 mΩ after an outage of 1 s: 'Reed' then takes 38.2 A²s, allowed 22.8 A²s", check.Message);
        Assert.Equal(Verdict.Holds, Apply.Rule<InrushAgesFuse>(RailOf()).Of(Reed).Verdict);
    }

    [Fact]
    public void It_holds_once_it_has_cooled()
    {
        var check = Restart(RailOf(outage: 60))!;
        Assert.Equal((Verdict.Holds, 1.0, "s"), (check.Verdict, check.Margin, check.Demand!.Value.Unit));
        Assert.Equal(Verdict.Fails, Restart(RailOf(outage: 59.9))!.Verdict);
    }

    [Fact]
    public void A_start_that_is_harmless_hot_and_a_bypass_that_opens_are_no_check()
    {
        Assert.Null(Restart(RailOf(Warm with { HotResistance = 0.4.Ohms() })));
        Assert.Null(Restart(RailOf(Warm with { Bypass = true })));
        Assert.Equal(Verdict.Fails, Restart(RailOf(Warm with { Bypass = false }))!.Verdict);
        Assert.Empty(Apply.Rule<LimiterStillHot>(RailOf() with { Path = [Reed] }));
        Assert.Empty(Apply.Rule<LimiterStillHot>(RailOf(load: new() { Current = 0.Amperes() }) with { }).Where(check => check.Verdict != Verdict.Holds));
    }

    /// <summary>A fuse that melts at the cold start already is one finding, of RAIL0401.</summary>
    [Fact]
    public void A_fuse_that_the_cold_start_harms_is_left_to_RAIL0401()
    {
        var rail = RailOf(Warm with { ColdResistance = 3.Ohms() }, fuse: Reed with { MeltingIntegral = 1.AmpereSquaredSeconds() });
        Assert.Equal(Verdict.Fails, Apply.Rule<InrushAgesFuse>(rail)[0].Verdict);
        Assert.Null(Restart(rail));
    }

    [Fact]
    public void Times_that_are_not_stated_are_asked_for_only_where_the_hot_start_harms()
    {
        Assert.Equal([nameof(Rail.ShortestOutage)], Restart(RailOf(outage: null))!.Names());
        Assert.Equal([nameof(InrushLimiter.RecoveryTime)], Restart(RailOf(Warm with { RecoveryTime = null }))!.Names());
        Assert.Null(Restart(RailOf(Warm with { HotResistance = 0.4.Ohms() }, outage: null)));
    }

    /// <summary>Between 0 and the cold resistance: 22.8 A²s are reached at 0.285 Ω.</summary>
    [Fact]
    public void A_hot_resistance_that_is_not_stated_is_bounded_by_the_cold_one()
    {
        Assert.Contains(nameof(InrushLimiter.HotResistance), Restart(RailOf(Warm with { HotResistance = null }))!.Names());
        Assert.Null(Restart(RailOf(Warm with { HotResistance = null }, ohms: 0.4)));
    }

    [Fact]
    public void Fuses_above_and_below_are_judged_too()
    {
        var small = Reed with { PartNumber = "Small", MeltingIntegral = 40.AmpereSquaredSeconds() };
        var bus = new Rail("Bus") { From = Plant, Path = [Reed], Return = Return.OfResistance(0.05.Ohms()), Surroundings = Apply.Bench, ShortestOutage = 1.Seconds() };
        var middle = new Rail("Middle") { From = bus, Path = [Warm], Return = Apply.NoReturn };
        var end = new Rail("End") { From = middle, Path = [small], Return = Apply.NoReturn, Loads = [Board()] };
        var check = Assert.Single(Apply.Rule<LimiterStillHot>(bus, middle, end), check => check.Verdict == Verdict.Fails);
        Assert.Equal(("Middle", 15.2), (check.Rail!.Name, Digits(check.Capacity)));
        Assert.Contains("'Small' then takes 38.2 A²s, allowed 15.2 A²s", check.Message);

        // The outage is that of the rails above unless the rail states its own.
        Assert.DoesNotContain(Apply.Rule<LimiterStillHot>(bus, middle with { ShortestOutage = 100.Seconds() }), check => check.Verdict == Verdict.Fails);
    }

    /// <summary>A source that latches off after 5 ms at 20 A: from 57 V down to 20 A × 0.2 Ω takes 4.7 mF × 53 V / 20 A = 12.5 ms; cold 57 V / 5.05 Ω is below its limit.</summary>
    [Theory]
    [InlineData(CurrentLimitStyle.LatchOff)]
    [InlineData(CurrentLimitStyle.Hiccup)]
    public void A_source_that_gives_up_at_its_limit_does_not_start(CurrentLimitStyle style)
    {
        Supply Source(double seconds) => new() { Name = "Unit", Voltage = 57.Volts(), CurrentLimit = new() { Level = 20.Amperes(), Style = style, TripTime = seconds.Seconds(), OnTime = seconds.Seconds() } };
        var check = Restart(RailOf(source: Source(5e-3)))!;
        Assert.Equal((Verdict.Fails, "s"), (check.Verdict, check.Demand!.Value.Unit));
        Assert.Equal(4.7e-3 * 53 / 20, check.Demand.Value.Value, 1e-6);
        Assert.EndsWith("'Unit' is then held at its limit for 12.5 ms and gives up after 5 ms", check.Message);
        Assert.Null(Restart(RailOf(source: Source(13e-3))));

        // 0.5 A of the board, on from the start, leave 19.5 A: 12.8 ms.
        Assert.Equal(4.7e-3 * 53 / 19.5, Restart(RailOf(source: Source(5e-3), load: Board() with { Current = 0.5.Amperes(), EnablesAt = EnablesAt.Zero }))!.Demand!.Value.Value, 1e-6);
    }

    [Fact]
    public void A_source_whose_time_is_not_stated_is_undecided_and_one_that_only_limits_is_no_check()
    {
        Supply Source(CurrentLimitStyle? style) => new() { Name = "Unit", Voltage = 57.Volts(), CurrentLimit = new() { Level = 20.Amperes(), Style = style } };
        Assert.Equal([nameof(CurrentLimit.TripTime)], Restart(RailOf(source: Source(CurrentLimitStyle.LatchOff)))!.Names());
        Assert.Equal([nameof(CurrentLimit.OnTime)], Restart(RailOf(source: Source(CurrentLimitStyle.Hiccup)))!.Names());
        Assert.Equal([nameof(CurrentLimit.Style)], Restart(RailOf(source: Source(null)))!.Names());
        Assert.Null(Restart(RailOf(source: Source(CurrentLimitStyle.ConstantCurrent))));
        Assert.Null(Restart(RailOf(Warm with { HotResistance = 3.Ohms() }, Source(CurrentLimitStyle.LatchOff))));
    }

    /// <summary>4.7 mF at 57 V: 7.635 J.</summary>
    [Fact]
    public void The_energy_of_a_charge_is_held_against_what_it_bears()
    {
        const string Datum = nameof(InrushLimiter.MaxEnergy);
        Assert.Equal(4.7e-3 * 57 * 57 / 2, Judge(RailOf(), Datum)!.Demand!.Value.Value, 1e-9);
        Assert.Equal(Verdict.Holds, Judge(RailOf(Warm with { MaxEnergy = 7.7.Joules() }), Datum)!.Verdict);
        var check = Judge(RailOf(Warm with { MaxEnergy = 7.6.Joules() }), Datum)!;
        Assert.Equal((Verdict.Fails, "'Warm' on rail 'Rail' takes 7.64 J at each start; it may take 7.6 J"), (check.Verdict, check.Message));
        Assert.Equal([Datum], Judge(RailOf(Warm with { MaxEnergy = null }), Datum)!.Names());

        // Two alike share it.
        var pair = RailOf() with { Path = [Reed, new ParallelGroup { Branches = [[Warm with { Designator = "RT1" }], [Warm with { Designator = "RT2" }]] }] };
        var both = Apply.Rule<LimiterStillHot>(pair).Where(one => one.Subject.EndsWith(Datum, StringComparison.Ordinal)).ToList();
        Assert.Equal([4.7e-3 * 57 * 57 / 4, 4.7e-3 * 57 * 57 / 4], both.Select(one => one.Demand!.Value.Value), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void The_steady_current_is_held_against_what_it_carries_in_the_hottest_air()
    {
        const string Datum = nameof(InrushLimiter.MaxCurrent);
        Check? At(InrushLimiter limiter, double amperes, double celsius) => Judge(RailOf(limiter, load: Board() with { Current = amperes.Amperes() }) with { Surroundings = Apply.At(celsius) }, Datum);
        Assert.Equal(Verdict.Holds, At(Warm, 8, 25)!.Verdict);
        Assert.Equal("'Warm' on rail 'Rail' carries 8.1 A; at 25 °C it may carry 8 A", At(Warm, 8.1, 25)!.Message);
        Assert.Equal([nameof(InrushLimiter.Derating)], At(Warm, 5, 70)!.Names());
        Assert.Equal(8 * 0.6, At(Warm with { Derating = [new(25.Celsius(), 1), new(85.Celsius(), 0.6)] }, 5, 85)!.Capacity!.Value.Value, 1e-9);
        Assert.Equal([Datum], At(Warm with { MaxCurrent = null }, 1, 25)!.Names());
        Assert.Null(At(Warm with { Bypass = true }, 20, 25));
        Assert.Equal(Verdict.Holds, At(Warm with { MaxCurrent = null }, 0, 25)!.Verdict);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var rail = RailOf();
        Assert.Contains(Apply.WithUnknown<LimiterStillHot>(Warm, nameof(InrushLimiter.Bypass), rail), check => check.Names().Contains(nameof(InrushLimiter.Bypass)));
        Assert.Contains(Apply.WithUnknown<LimiterStillHot>(rail, nameof(Rail.Loads), rail), check => check.Names().Contains(nameof(Rail.Loads)));
        var load = Board() with { InputCapacitance = null };
        var hidden = RailOf(load: load);
        Assert.All(
            Apply.WithUnknown<LimiterStillHot>(load, nameof(Load.InputCapacitance), hidden).Where(check => !check.Subject.EndsWith(nameof(InrushLimiter.MaxCurrent), StringComparison.Ordinal)),
            check => Assert.Contains(nameof(Load.InputCapacitance), check.Names()));
        var group = new Rail("Group") { From = Plant, Path = [Warm], Return = Apply.NoReturn };
        Assert.Contains(Apply.WithUnknown<LimiterStillHot>(group, nameof(Rail.Capacitors), group), check => check.Names().Contains(nameof(Rail.Capacitors)));
    }

    private static readonly Gen<(double Farads, double Hot, double Cold, double Volts)> Starts =
        Gen.Select(Gen.Double[-4, -2], Gen.Double[-1.5, 0], Gen.Double[0, 1], Gen.Double[12, 400]).Select((c, hot, cold, v) => (Math.Pow(10, c), Math.Pow(10, hot), Math.Pow(10, cold), v));

    /// <summary>It fails exactly where the closed form says that the hot start harms and the cold one does not; the same in other units.</summary>
    [Fact]
    public void It_is_the_closed_form_in_any_units() => Starts.Sample(start =>
    {
        var policy = new DesignPolicy { AdiabaticLimit = 1e3.Seconds() };
        var rail = RailOf(Warm with { HotResistance = start.Hot.Ohms(), ColdResistance = start.Cold.Ohms() }, new Supply { Voltage = start.Volts.Volts(), SourceResistance = 0.Ohms() }, Board(start.Farads)) with { Policy = policy };
        var other = RailOf(
            Warm with { HotResistance = ElectricResistance.FromMilliohms(start.Hot * 1e3), ColdResistance = ElectricResistance.FromKiloohms(start.Cold / 1e3), RecoveryTime = 1.Minutes() },
            new Supply { Voltage = ElectricPotential.FromMillivolts(start.Volts * 1e3), SourceResistance = 0.Ohms() },
            Board() with { InputCapacitance = ElectricCapacitance.FromMicrofarads(start.Farads * 1e6) }) with
        { Policy = policy };
        double At(double ohms) => start.Farads * start.Volts * start.Volts / (2 * (ohms + 0.05));
        var fails = At(start.Hot) > 0.38 * 60 && At(start.Cold) <= 0.38 * 60;
        var (check, same) = (Restart(rail), Restart(other));
        return Math.Abs(At(start.Hot) - (0.38 * 60)) < 1e-3 || Math.Abs(At(start.Cold) - (0.38 * 60)) < 1e-3
            || ((check?.Verdict == Verdict.Fails) == fails && check?.Verdict == same?.Verdict && (!fails || Math.Abs(check!.Demand!.Value.Value - At(start.Hot)) < 1e-3 * At(start.Hot)));
    });

    /// <summary>A longer outage never harms, a larger hot resistance neither.</summary>
    [Fact]
    public void More_time_and_more_resistance_never_harm() => Gen.Select(Starts, Gen.Double[0, 120], Gen.Double[0, 120], Gen.Double[1, 5]).Sample((start, time, more, factor) =>
    {
        bool Fails(double outage, double hot) =>
            Restart(RailOf(Warm with { HotResistance = hot.Ohms(), ColdResistance = (start.Cold * 5).Ohms() }, new Supply { Voltage = start.Volts.Volts(), SourceResistance = 0.Ohms() }, Board(start.Farads), outage: outage))?.Verdict == Verdict.Fails;
        return Fails(time, start.Hot) || !(Fails(time + more, start.Hot) || Fails(time, Math.Min(start.Hot * factor, start.Cold * 5)));
    });

    /// <summary>Whenever bounds give a verdict, every completion gives the same; what is not asked for, none needs.</summary>
    [Fact]
    public void Verdicts_by_bounds_are_those_of_every_completion() => Gen.Select(Starts, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((start, part, esr) =>
    {
        var source = new Supply { Voltage = start.Volts.Volts(), SourceResistance = 0.Ohms() };
        var policy = new DesignPolicy { AdiabaticLimit = 1e3.Seconds() };
        var cold = Warm with { ColdResistance = start.Cold.Ohms() };
        var bounded = Restart(RailOf(cold with { HotResistance = null }, source, Board(start.Farads) with { InputCapacitorEsr = null }) with { Policy = policy });
        var complete = Restart(RailOf(cold with { HotResistance = (start.Cold * part).Ohms() }, source, Board(start.Farads) with { InputCapacitorEsr = esr.Ohms() }) with { Policy = policy });
        return bounded is null ? complete?.Verdict is not Verdict.Fails : bounded.Verdict == Verdict.Undecided || bounded.Verdict == complete?.Verdict;
    });
}
