using System.Collections.Immutable;
using CsCheck;
using RailRules.Rules;
using RailRules.Tests.Checks;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0201. Check values: rows FC, AD and AL of the reference tables; the worked example of the design (river-lock cabin).</summary>
public sealed class InsufficientCurrentMarginTests
{
    private static Fuse Fuse(double rated, RatingBasis? basis = RatingBasis.CarriesThreeQuarters) => new()
    {
        PartNumber = "Reed",
        RatedCurrent = rated.Amperes(),
        RatingBasis = basis,
        ReferenceAmbient = 25.Celsius(),
        ColdResistance = 1.Milliohms(),
    };

    private static Check Judge(double amperes, Element part, Surroundings? surroundings = null, DesignPolicy? policy = null) =>
        Apply.Rule<InsufficientCurrentMargin>(Apply.Carrying(amperes, part, surroundings, policy)).Of(part);

    /// <summary>FC-01, FC-03 (usable current), FC-02 (its inverse), FC-08: the 80 % rule of a device not marked for 100 %.</summary>
    [Theory]
    [InlineData(10, RatingBasis.CarriesThreeQuarters, 7.5)] // FC-01, FC-02
    [InlineData(10, RatingBasis.CarriesRating, 10)] // FC-03
    public void The_rating_basis_gives_the_share_for_ever(double rated, RatingBasis basis, double usable)
    {
        Assert.Equal(usable, Judge(1, Fuse(rated, basis)).Capacity!.Value.Value, 1e-9 * usable);
        Assert.Equal(Verdict.Holds, Judge(usable, Fuse(rated, basis)).Verdict);
        Assert.Equal(Verdict.Fails, Judge(usable * 1.000001, Fuse(rated, basis)).Verdict);
    }

    [Fact]
    public void A_breaker_without_a_basis_carries_four_fifths() // FC-08; FC-06 is its inverse
    {
        var breaker = new CircuitBreaker { RatedCurrent = 60.Amperes(), ReferenceAmbient = 25.Celsius(), Resistance = 1.Milliohms() };
        Assert.Equal(48, Judge(48, breaker).Capacity!.Value.Value, 1e-9);
        Assert.Equal(Verdict.Holds, Judge(48, breaker).Verdict);
        Assert.Equal(Verdict.Fails, Judge(48.1, breaker).Verdict);
        Assert.Equal(Verdict.Holds, Judge(60, breaker with { RatingBasis = RatingBasis.CarriesRating }).Verdict);
        Assert.Equal(Verdict.Holds, Judge(60, breaker, policy: new() { BreakerContinuous = 1 }).Verdict);
    }

    /// <summary>FC-04, FC-05: the rating needed for 7.5 A with an ambient factor of 0.90.</summary>
    [Theory]
    [InlineData(RatingBasis.CarriesThreeQuarters, 11.11111)]
    [InlineData(RatingBasis.CarriesRating, 8.333333)]
    public void Basis_and_ambient_factor_multiply(RatingBasis basis, double needed)
    {
        var curve = ImmutableArray.Create(new DeratingPoint(25.Celsius(), 1), new DeratingPoint(60.Celsius(), 0.9));
        Assert.Equal(Verdict.Holds, Judge(7.5, Fuse(needed * 1.0005, basis) with { Derating = curve }, Apply.At(60)).Verdict);
        Assert.Equal(Verdict.Fails, Judge(7.5, Fuse(needed * 0.9995, basis) with { Derating = curve }, Apply.At(60)).Verdict);
    }

    /// <summary>AD-01 to AD-04: MIL-PRF-23419/9D points with straight lines between. Factors above 1 in the cold are credited by policy only.</summary>
    [Theory]
    [InlineData(60, 0.95)]
    [InlineData(-20, 1.07)]
    [InlineData(45, 0.9714286)]
    [InlineData(0, 1.038889)]
    public void The_derating_curve_is_read_by_straight_lines(double celsius, double factor)
    {
        var fuse = Fuse(100, RatingBasis.CarriesRating) with
        {
            Derating = [new((-20).Celsius(), 1.07), new(25.Celsius(), 1), new(60.Celsius(), 0.95)],
        };
        var air = new Surroundings { Ambient = Band.Of((-20).Celsius(), celsius.Celsius()) };
        Assert.Equal(100 * factor, Judge(1, fuse, air, new() { CreditCold = true }).Capacity!.Value.Value, 100 * factor * 0.0005);
        Assert.Equal(100 * Math.Min(1, factor), Judge(1, fuse, air).Capacity!.Value.Value, 100 * factor * 0.0005);
    }

    /// <summary>AL-01 to AL-03: nothing up to 2000 m, then 0.5 % per 100 m.</summary>
    [Theory]
    [InlineData(2000, 1)]
    [InlineData(3000, 0.95)]
    [InlineData(5000, 0.85)]
    public void Altitude_reduces_above_two_thousand_meters(double meters, double factor) =>
        Assert.Equal(100 * factor, Judge(1, Fuse(100, RatingBasis.CarriesRating), Apply.At(25, meters)).Capacity!.Value.Value, 1e-9);

    [Fact]
    public void An_altitude_curve_of_the_part_comes_before_the_rule()
    {
        var fuse = Fuse(100, RatingBasis.CarriesRating) with { AltitudeDerating = [new(2000.Meters(), 1), new(4000.Meters(), 0.8)] };
        Assert.Equal(90, Judge(1, fuse, Apply.At(25, 3000)).Capacity!.Value.Value, 1e-9);
    }

    /// <summary>The design's worked example: eight sleds of 600 W on a 43 V plant, in 55 °C.</summary>
    [Fact]
    public void The_river_lock_cabin_reads_as_in_the_design()
    {
        var sled = Cabin(0.86).First(rail => rail.Name == "Sled 1");
        var check = Apply.Rule<InsufficientCurrentMargin>(sled).Of(sled.Path[0]);
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("'Reed20' on rail 'Sled 1' carries 14.1 A at 42.7 V; after 0.75 continuous use and 0.86 for 55 °C it may carry 12.9 A", Assert.Single(
            Apply.Rule<InsufficientCurrentMargin>([.. Cabin(0.86)]), one => one.Rail!.Name == "Sled 1" && one.Part is Fuse).Message);
        Assert.Equal(12.9, check.Capacity!.Value.Value, 1e-9);
        Assert.Equal(new DatumPlace(sled, nameof(Rail.Path), 0), check.Places[0]);
        Assert.Equal(new DatumPlace(sled.Path[0], nameof(RailRules.Fuse.RatedCurrent)), check.Places[1]);
    }

    [Fact]
    public void Supplies_and_converters_carry_the_sum_of_their_loads()
    {
        var plant = new Supply { Name = "Plant", Voltage = 48.Volts(), ContinuousCurrent = 30.Amperes(), CurrentLimit = new() { Level = Band.Of(28.Amperes(), 33.Amperes()) } };
        Rail Branch(double amperes) => new() { From = plant, Return = Apply.NoReturn, Loads = [new() { Current = amperes.Amperes() }], Surroundings = Apply.Bench };
        var (a, b) = (Branch(15), Branch(13));
        var check = Apply.Rule<InsufficientCurrentMargin>(a, b).Of(plant);
        Assert.Equal((Verdict.Holds, 28.0, 28.0), (check.Verdict, check.Demand!.Value.Value, check.Capacity!.Value.Value));
        Assert.Equal(Verdict.Fails, Apply.Rule<InsufficientCurrentMargin>(a, b, Branch(1)).Of(plant).Verdict);
        Assert.StartsWith("'Plant' on rail", check.Message);
        Assert.Equal(nameof(Rail.From), check.Places[0].Datum);
    }

    [Fact]
    public void A_supply_that_states_neither_current_nor_limit_is_not_judged()
    {
        var plant = new Supply { Voltage = 48.Volts() };
        var rail = new Rail { From = plant, Loads = [new() { Current = 1.Amperes() }], Surroundings = Apply.Bench };
        Assert.DoesNotContain(Engine.Check([rail]), check => check.Rule == "RAIL0201");
    }

    [Fact]
    public void A_supply_whose_current_could_not_be_worked_out_is_undecided()
    {
        var plant = new Supply { Voltage = 48.Volts() };
        var rail = new Rail { From = plant, Loads = [new() { Current = 1.Amperes() }], Surroundings = Apply.Bench };
        var check = Assert.Single(Engine.Check([rail], (owner, datum) => ReferenceEquals(owner, plant) && datum == nameof(Supply.ContinuousCurrent)), check => check.Rule == "RAIL0201");
        Assert.Equal(Verdict.Undecided, check.Verdict);
        Assert.Equal([nameof(Supply.ContinuousCurrent)], check.Names());
        Assert.Null(check.Margin);
    }

    [Fact]
    public void A_battery_counts_its_strings()
    {
        var battery = new Battery { OpenCircuitVoltage = 48.Volts(), InternalResistance = 10.Milliohms(), ContinuousCurrent = 20.Amperes(), Strings = 2 };
        var rail = new Rail { From = battery, Return = Apply.NoReturn, Loads = [new() { Current = 40.Amperes() }], Surroundings = Apply.Bench };
        Assert.Equal(Verdict.Holds, Apply.Rule<InsufficientCurrentMargin>(rail).Of(battery).Verdict);
    }

    [Fact]
    public void An_electronic_fuse_bears_peaks_up_to_its_lowest_trip_level()
    {
        var part = new ElectronicFuse { TripLevel = Band.Of(10.Amperes(), 12.Amperes()), TripDelay = 5.Milliseconds(), OnResistance = 1.Milliohms() };
        Rail Board(Duration? width, Duration? delay = null) => new()
        {
            From = new Supply { Voltage = 12.Volts(), ContinuousCurrent = 50.Amperes() },
            Path = [part with { TripDelay = delay is { } stated ? stated : part.TripDelay }],
            Return = Apply.NoReturn,
            Loads = [new() { Current = 6.Amperes(), Pulses = [new() { Current = 5.Amperes(), Width = width, Period = 10.Seconds() }] }],
            Surroundings = Apply.Bench,
        };
        Assert.Equal(Verdict.Fails, Apply.Rule<InsufficientCurrentMargin>(Board(10.Milliseconds())).Single(check => check.Part is ElectronicFuse).Verdict);
        Assert.Equal(Verdict.Holds, Apply.Rule<InsufficientCurrentMargin>(Board(4.Milliseconds())).Single(check => check.Part is ElectronicFuse).Verdict);
        var open = Apply.Rule<InsufficientCurrentMargin>(Board(null)).Single(check => check.Part is ElectronicFuse);
        Assert.Equal(Verdict.Undecided, open.Verdict);
        Assert.Contains(nameof(Load.Pulses), open.Names());
        Assert.Contains("of its lowest trip level", Apply.Rule<InsufficientCurrentMargin>(Board(10.Milliseconds())).Single(check => check.Part is ElectronicFuse).Message);
    }

    /// <summary>Pulse trains count by their root mean square: rectangle I sqrt(D), triangle I sqrt(D/3), half sine I sqrt(D/2) (textbook closed forms).</summary>
    [Theory]
    [InlineData(PulseShape.Rectangle, 5)]
    [InlineData(PulseShape.Triangle, 2.886751)]
    [InlineData(PulseShape.HalfSine, 3.535534)]
    public void Pulse_trains_count_by_their_root_mean_square(PulseShape shape, double rms)
    {
        var rail = Apply.Carrying(0, Fuse(10));
        var board = new Rail { From = rail.From, Path = rail.Path, Return = rail.Return, Surroundings = rail.Surroundings, Loads = [new() { Pulses = [new() { Current = 10.Amperes(), Width = 1.Seconds(), Period = 4.Seconds(), Shape = shape }] }] };
        Assert.Equal(rms, Apply.Rule<InsufficientCurrentMargin>(board).Of(rail.Path[0]).Demand!.Value.Value, 1e-5);
    }

    [Fact]
    public void Parallel_devices_carry_their_share_and_devices_in_the_return_the_whole()
    {
        var (a, b) = (Fuse(100) with { ColdResistance = 1.Milliohms() }, Fuse(100) with { ColdResistance = 1.2.Milliohms() });
        var back = new CircuitBreaker { RatedCurrent = 200.Amperes(), ReferenceAmbient = 25.Celsius(), Resistance = 1.Milliohms() };
        var rail = new Rail
        {
            From = new Supply { Voltage = 48.Volts(), ContinuousCurrent = 500.Amperes() },
            Path = [new ParallelGroup { Branches = [[a], [b]] }],
            Return = Return.Of(back),
            Loads = [new() { Current = 100.Amperes() }],
            Surroundings = Apply.Bench,
        };
        var checks = Apply.Rule<InsufficientCurrentMargin>(rail);
        Assert.Equal(54.54545, checks.Of(a).Demand!.Value.Value, 54.5 * 0.0005); // PF-01
        Assert.Equal(100, checks.Of(back).Demand!.Value.Value, 1e-9);
        Assert.Equal(nameof(Rail.Return), checks.Of(back).Places[0].Datum);
    }

    /// <summary>A return that two rails share carries the sum of their currents (R-17 of the rulebook).</summary>
    [Fact]
    public void A_shared_return_carries_the_sum()
    {
        var back = Return.Of(new CircuitBreaker { RatedCurrent = 20.Amperes(), ReferenceAmbient = 25.Celsius(), Resistance = 1.Milliohms() });
        Rail Branch(double amperes) => new() { From = new Supply { Voltage = 48.Volts(), ContinuousCurrent = 50.Amperes() }, Return = back, Loads = [new() { Current = amperes.Amperes() }], Surroundings = Apply.Bench };
        var checks = Apply.Rule<InsufficientCurrentMargin>(Branch(9), Branch(8)).Where(check => check.Part is CircuitBreaker).ToList();
        Assert.All(checks, check => Assert.Equal((Verdict.Fails, 17.0), (check.Verdict, Math.Round(check.Demand!.Value.Value, 9))));
        Assert.Contains(checks[0].Assumptions, text => text.Contains("shares"));
    }

    [Fact]
    public void Resettable_fuses_and_conductors_are_judged_elsewhere() => Assert.All(
        Apply.Rule<InsufficientCurrentMargin>(Apply.Carrying(5, new ResettableFuse { HoldCurrent = 1.Amperes() }), Apply.Carrying(5, new Wire { Ampacity = 1.Amperes() })),
        check => Assert.IsType<Supply>(check.Part));

    /// <summary>10 mA behind a 1 A fuse of which nothing else is stated holds by its bounds; the same fuse at 0.9 A waits for data.</summary>
    [Fact]
    public void Absent_data_are_listed_only_where_they_matter()
    {
        var bare = new Fuse { PartNumber = "Midge1", RatedCurrent = 1.Amperes() };
        var small = Judge(0.01, bare, new Surroundings());
        Assert.Equal(Verdict.Holds, small.Verdict);
        Assert.Contains(small.Working, step => step.Quantity == "bound");
        Assert.Equal(0.375 / 0.01, small.Margin!.Value, 1e-6); // 0.75 × 0.5 of the rating
        var large = Judge(0.9, bare, new Surroundings());
        Assert.Equal(Verdict.Undecided, large.Verdict);
        Assert.Contains(nameof(RailRules.Fuse.RatingBasis), large.Names());
        Assert.Equal(Verdict.Fails, Judge(1.01, bare, new Surroundings()).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(0.1, new Fuse { ReferenceAmbient = 25.Celsius() }).Verdict);
        Assert.Equal([nameof(RailRules.Fuse.RatedCurrent)], Judge(0.1, new Fuse { ReferenceAmbient = 25.Celsius(), RatingBasis = RatingBasis.CarriesRating }).Names());
    }

    [Fact]
    public void An_unknown_return_is_not_a_zero_one()
    {
        var rail = new Rail
        {
            From = new Supply { Voltage = 48.Volts(), ContinuousCurrent = 100.Amperes() },
            Path = [Fuse(20)],
            Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts() }],
            Surroundings = Apply.Bench,
        };
        var check = Apply.Rule<InsufficientCurrentMargin>(rail).Of(rail.Path[0]);
        Assert.Equal(Verdict.Holds, check.Verdict); // at most 600 W / 40 V = 15 A: just what it may carry
        Assert.Equal(15, check.Demand!.Value.Value, 1e-9);
        var larger = new Rail { From = rail.From, Path = rail.Path, Surroundings = Apply.Bench, Loads = [new() { Power = 610.Watts(), MinVoltage = 40.Volts() }] };
        check = Apply.Rule<InsufficientCurrentMargin>(larger).Of(rail.Path[0]);
        Assert.Equal(Verdict.Undecided, check.Verdict);
        Assert.Equal([nameof(Rail.Return)], check.Names());
    }

    /// <summary>What is written but cannot be worked out is undecided, never passed.</summary>
    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var fuse = Fuse(20);
        var rail = Apply.Carrying(5, fuse);
        foreach (var (owner, datum) in new (object, string)[] { (rail, nameof(Rail.Path)), (rail, nameof(Rail.Loads)), (rail, nameof(Rail.Policy)) })
        {
            var checks = Apply.WithUnknown<InsufficientCurrentMargin>(owner, datum, rail);
            Assert.Contains(checks, check => check.Verdict == Verdict.Undecided && check.Missing.Any(one => ReferenceEquals(one.Place.Owner, owner) && one.Place.Datum == datum));
        }

        var hot = Apply.Carrying(14, Fuse(20), Apply.At(60));
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<InsufficientCurrentMargin>(hot.Path[0], nameof(RailRules.Fuse.Derating), hot).Of(hot.Path[0]).Verdict);
    }

    [Fact]
    public void A_path_that_cannot_deliver_the_power_has_no_current()
    {
        var rail = new Rail { From = new Supply { Voltage = 12.Volts(), ContinuousCurrent = 10.Amperes() }, Path = [Fuse(20), new SenseResistor { Resistance = 1.Ohms() }], Return = Apply.NoReturn, Loads = [new() { Power = 40.Watts() }], Surroundings = Apply.Bench };
        var check = Apply.Rule<InsufficientCurrentMargin>(rail).Of(rail.Path[0]);
        Assert.Equal(Verdict.Undecided, check.Verdict);
        Assert.Equal([nameof(Load.MinVoltage)], check.Names());
    }

    /// <summary>Whenever bounds give a verdict, each value inside the bounds gives the same: basis, reference, ambient, altitude and derating.</summary>
    [Fact]
    public void Verdicts_by_bounds_are_those_of_every_completion() =>
        Gen.Select(Gen.Double[0.05, 1.5], Gen.Int[0, 31], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((load, absent, x, y, z) =>
        {
            var basis = x < 0.5 ? RatingBasis.CarriesRating : RatingBasis.CarriesThreeQuarters;
            var (reference, ambient, altitude) = (20 + (5 * y), -40 + (125 * z), 2000 * x);

            // Within 5 K of its reference a rating holds as it stands, so the curve of the completion is level there.
            var curve = ImmutableArray.Create(new DeratingPoint((reference + 5).Celsius(), 1), new DeratingPoint(200.Celsius(), 0.5));
            Fuse Make(bool full) => new()
            {
                RatedCurrent = 10.Amperes(),
                ColdResistance = 0.Ohms(),
                RatingBasis = full || (absent & 1) == 0 ? basis : null,
                ReferenceAmbient = full || (absent & 2) == 0 ? reference.Celsius() : null,
                Derating = full || (absent & 4) == 0 ? curve : [],
            };
            Surroundings Around(bool full) => new()
            {
                Ambient = full || (absent & 8) == 0 ? ambient.Celsius() : null,
                Altitude = full || (absent & 16) == 0 ? altitude.Meters() : null,
            };
            var bounded = Judge(load * 10, Make(false), Around(false));
            var complete = Judge(load * 10, Make(true), Around(true));
            Assert.NotEqual(Verdict.Undecided, complete.Verdict);
            Assert.True(bounded.Verdict == Verdict.Undecided ? bounded.Missing.Length > 0 : bounded.Verdict == complete.Verdict, $"{bounded.Message} | {complete.Message}");
        }, iter: 2000);

    /// <summary>Whenever the bounds of resistances give a verdict, each value inside gives the same.</summary>
    [Fact]
    public void Verdicts_by_bounds_of_resistances_are_those_of_every_completion() => Boards.Incomplete.Sample(board =>
    {
        var bounded = Apply.Rule<InsufficientCurrentMargin>([.. board.Rails(null)]).Where(check => check.Part is Fuse).ToList();
        var complete = Apply.Rule<InsufficientCurrentMargin>([.. board.Rails(board.Completion)]).Where(check => check.Part is Fuse).ToList();
        foreach (var check in bounded)
        {
            // A path that cannot deliver its power has no current to compare.
            var other = complete.Single(one => one.Rail!.Name == check.Rail!.Name);
            Assert.True(check.Verdict is Verdict.Undecided || other.Verdict is Verdict.Undecided || check.Verdict == other.Verdict, $"{check.Message} | {other.Message}");
        }
    }, iter: 300);

    [Fact]
    public void A_curve_written_from_hot_to_cold_is_the_same_curve()
    {
        ImmutableArray<DeratingPoint> points = [new(85.Celsius(), 0.8), new(25.Celsius(), 1), new((-40).Celsius(), 1.1)];
        ImmutableArray<AltitudePoint> stages = [new(5000.Meters(), 0.8), new(2000.Meters(), 1)];
        var site = new Surroundings { Ambient = 55.Celsius(), Altitude = 3500.Meters() };
        var falling = Judge(10, Fuse(20) with { Derating = points, AltitudeDerating = stages }, site);
        var rising = Judge(10, Fuse(20) with { Derating = [.. points.Reverse()], AltitudeDerating = [.. stages.Reverse()] }, site);
        Assert.Equal(20 * 0.75 * 0.9 * 0.9, falling.Capacity!.Value.Value, 1e-9);
        Assert.Equal(falling.Capacity, rising.Capacity);
    }

    /// <summary>Hotter air, a higher site or more load never raise the margin.</summary>
    [Fact]
    public void Margins_fall_with_heat_height_and_load() =>
        Gen.Select(Gen.Double[1, 20], Gen.Double[1, 1.5], Gen.Double[-20, 80], Gen.Double[0, 40], Gen.Double[0, 5000], Gen.Double[0, 3000]).Sample((load, more, ambient, hotter, altitude, higher) =>
        {
            var fuse = Fuse(20) with { Derating = [new((-20).Celsius(), 1.05), new(25.Celsius(), 1), new(130.Celsius(), 0.3)] };
            double Margin(double amperes, double celsius, double meters) =>
                Judge(amperes, fuse, new() { Ambient = Band.Of((-40).Celsius(), celsius.Celsius()), Altitude = meters.Meters() }).Margin!.Value;
            var margin = Margin(load, ambient, altitude);
            return Margin(load * more, ambient, altitude) <= margin * (1 + 1e-12)
                && Margin(load, ambient + hotter, altitude) <= margin * (1 + 1e-12)
                && Margin(load, ambient, altitude + higher) <= margin * (1 + 1e-12);
        }, iter: 300);

    [Fact]
    public void Units_do_not_matter()
    {
        var amperes = Judge(14, Fuse(20));
        var other = Apply.Rule<InsufficientCurrentMargin>(new Rail("Rail")
        {
            From = new Supply { Name = "Source", Voltage = ElectricPotential.FromKilovolts(0.048), TransientMax = 48.Volts(), ContinuousCurrent = 1.Kiloamperes() },
            Path = [Fuse(20) with { RatedCurrent = ElectricCurrent.FromMilliamperes(20_000), ColdResistance = ElectricResistance.FromMicroohms(1000), ReferenceAmbient = Temperature.FromKelvins(298.15) }],
            Return = Apply.NoReturn,
            Loads = [new("Rail") { Current = ElectricCurrent.FromMilliamperes(14_000) }],
            Surroundings = new() { Ambient = Band.Of(Temperature.FromDegreesFahrenheit(32), Temperature.FromDegreesFahrenheit(77)), Altitude = Length.FromFeet(0) },
        }).Single(check => check.Part is Fuse);
        Assert.Equal(amperes.Message, other.Message);
        Assert.Equal(amperes.Margin!.Value, other.Margin!.Value, 1e-9);
    }

    /// <summary>A river-lock cabin: one plant, a bus, eight sleds. All data invented, not for use.</summary>
    private static IEnumerable<Rail> Cabin(double hot)
    {
        var cabin = new Surroundings { Ambient = Band.Of((-5).Celsius(), 25.Celsius(), 55.Celsius()), Altitude = 850.Meters() };
        var plant = new Supply { Voltage = Band.Of(43.Volts(), 54.Volts(), 57.Volts()), TransientMax = 60.Volts() };
        var weir = new Fuse { RatedCurrent = 200.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ColdResistance = 0.4.Milliohms() };
        var reed = new Fuse
        {
            PartNumber = "Reed20",
            RatedCurrent = 20.Amperes(),
            RatingBasis = RatingBasis.CarriesThreeQuarters,
            ReferenceAmbient = 25.Celsius(),
            Derating = [new(25.Celsius(), 1), new(55.Celsius(), hot), new(85.Celsius(), 0.7)],
            ColdResistance = 5.Milliohms(),
        };
        var bus = new Rail
        {
            Name = "Bus",
            From = plant,
            Path = [new Connector { ContactResistance = Band.Of(0.05.Milliohms(), 0.2.Milliohms()) }, weir.As("F1"), new Busbar { Resistance = 0.2.Milliohms() }],
            Return = Return.Mirrored,
            Surroundings = cabin,
        };
        var trace = new Trace { Resistance = 1.5.Milliohms() };
        var connector = new Connector { ContactResistance = Band.Of(0.5.Milliohms(), 2.Milliohms()) };
        return Enumerable.Range(1, 8).Select(slot => new Rail
        {
            Name = $"Sled {slot}",
            From = bus,
            Path = [reed.As($"F{10 + slot}"), trace, connector],
            Return = Return.Mirrored,
            Loads = [new() { Power = 600.Watts(), MinVoltage = 40.Volts(), MaxVoltage = 75.Volts() }],
        });
    }
}
