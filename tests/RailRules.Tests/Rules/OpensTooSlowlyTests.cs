using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0303: a device that opens too slowly on the smallest fault. Parts and boards are invented.</summary>
public sealed class OpensTooSlowlyTests
{
    private static Check Judge(Rail rail, Element? part = null) => Apply.Rule<OpensTooSlowly>(rail).Of(part ?? rail.Path[0]);

    private static Fuse General(double rated) => new() { PartNumber = "Weir", RatedCurrent = rated.Amperes(), Characteristic = Characteristic.Iec60269gG, RatingBasis = RatingBasis.CarriesRating, ColdResistance = 0.Ohms() };

    /// <summary>A fuse that certainly takes a time at a current, ten times less at ten times the current and for ever below its sure-opening current.</summary>
    private static Fuse Drawn(double amperes, double seconds, double sure = 20) => new()
    {
        PartNumber = "Reed",
        RatedCurrent = (sure / 1.35).Amperes(),
        RatingBasis = RatingBasis.CarriesThreeQuarters,
        ColdResistance = 0.Ohms(),
        Curve = [new(sure.Amperes(), null, 10000.Seconds()), new(amperes.Amperes(), null, seconds.Seconds()), new((amperes * 10).Amperes(), null, (seconds / 10).Seconds())],
    };

    /// <summary>A wire without resistance that carries next to nothing for ever, so that no fault is harmless, and withstands what it states.</summary>
    private static Wire Weak(double withstand = 1e12) => FaultBoards.Wire(0, 1) with { Withstand = withstand.AmpereSquaredSeconds(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius() };

    /// <summary>A rail on which the smallest fault is a current.</summary>
    private static Rail With(double amperes, Element device, params Element[] behind) => FaultBoards.Rail(FaultBoards.Battery(50, 50 / amperes), [device, .. behind]);

    /// <summary>OP-02: 136.6 A against a 63 A gG link, whose gate of 5 s lies at 320 A (IEC 60269-1 Table 3, from memory). At the gate equality holds.</summary>
    [Theory]
    [InlineData(136.6, Verdict.Fails)]
    [InlineData(319.9, Verdict.Fails)]
    [InlineData(320, Verdict.Holds)]
    public void A_general_purpose_link_opens_within_five_seconds_from_its_gate_on(double amperes, Verdict expected)
    {
        var check = Judge(With(amperes, General(63), Weak()));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(5, check.Capacity!.Value.Value, 1e-9);
        Assert.Equal(expected == Verdict.Fails ? 3600 : 5, check.Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void The_message_says_current_place_and_times() =>
        Assert.Equal("'Weir' on rail 'Rail' takes up to 3600 s to open on 137 A at the end of rail 'Rail'; 5 s is allowed", Judge(With(136.6, General(63), Weak())).Message);

    /// <summary>
    /// KW-14: 4 kA in 16 mm² of copper with k = 115 (thermoplastic, from 70 °C) for 0.2116 s at most: IEC 60364-4-43, 434.5.2. The table's k is rounded, ours is computed; the
    /// running temperature is that of the conductor at its full current.
    /// </summary>
    [Theory]
    [InlineData(0.205, Verdict.Holds)]
    [InlineData(0.215, Verdict.Fails)]
    public void A_conductor_may_be_harmed_before_the_policy_is_offended(double seconds, Verdict expected)
    {
        var wire = new Wire { Name = "Lead", Resistance = 0.Ohms(), Section = 16.SquareMillimeters(), Ampacity = 76.Amperes(), TemperatureLimit = 70.Celsius(), ShortTimeLimit = 160.Celsius(), Inductance = UnitsNet.ElectricInductance.Zero };
        var check = Judge(With(4000, Drawn(4000, seconds, 125), wire) with { Loads = [new() { Current = 76.Amperes() }] });
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(0.2116, check.Capacity!.Value.Value, 0.01 * 0.2116);
        Assert.Equal(seconds, check.Demand!.Value.Value, 1e-9);
        Assert.Contains("'Lead' bears it for ", check.Message, StringComparison.Ordinal);
    }

    /// <summary>Where clearing I²t is known and melting adiabatic, that counts: 900 A²s at 1 kA are 0.9 ms, whatever the coarse curve says.</summary>
    [Fact]
    public void Clearing_integral_counts_where_melting_is_adiabatic()
    {
        var fuse = Drawn(100, 10) with
        {
            MeltingIntegral = 300.AmpereSquaredSeconds(),
            DcVoltageRating = 80.Volts(),
            ClearingIntegrals = [new() { Value = 900.AmpereSquaredSeconds(), Voltage = 50.Volts(), TimeConstant = 10.Milliseconds() }],
        };
        Assert.Equal(0.9e-3, Judge(With(1000, fuse, Weak())).Demand!.Value.Value, 1e-9);

        // At 100 A melting would take 30 ms, which is not adiabatic: the curve counts.
        Assert.Equal(10, Judge(With(100, fuse, Weak())).Demand!.Value.Value, 1e-9);
    }

    /// <summary>Resettable and electronic devices need not open within the policy's time, only before harm: 20 s at 100 A are 200 kA²s.</summary>
    [Theory]
    [InlineData(250e3, Verdict.Holds)]
    [InlineData(150e3, Verdict.Fails)]
    public void Resettable_and_electronic_devices_have_no_opening_time_of_policy(double withstand, Verdict expected)
    {
        Element[] devices =
        [
            new ResettableFuse { HoldCurrent = 10.Amperes(), TripCurrent = 20.Amperes(), TripDerating = [new((-40).Celsius(), 1), new(85.Celsius(), 1)], Resistance = 0.Ohms(), TimeToTrip = [new(100.Amperes(), 20.Seconds())] },
            new ElectronicFuse { TripLevel = 20.Amperes(), TripDelay = 20.Seconds(), OnResistance = 0.Ohms() },
        ];

        // Without section and heat loss the withstand is the whole story beyond what adiabatic heating covers; a limit of 60 s makes it so.
        Assert.All(devices, device => Assert.Equal(expected, Judge(With(100, device, Weak(withstand)) with { Policy = new() { WithstandLimit = 60.Seconds() } }, device).Verdict));
    }

    /// <summary>A magnetic breaker: 0.1 s from its level on, on DC 1.4 times as high; below it the curve.</summary>
    [Theory]
    [InlineData(349, 20)]
    [InlineData(350, 0.1)]
    public void A_breaker_opens_magnetically_above_its_level_on_direct_current(double amperes, double expected)
    {
        var breaker = new CircuitBreaker
        {
            PartNumber = "Lock",
            RatedCurrent = 25.Amperes(),
            MagneticTrip = Band.Of(125.Amperes(), 250.Amperes()),
            MagneticTripDcFactor = 1.4,
            Resistance = 0.Ohms(),
            Curve = [new(36.25.Amperes(), null, 3600.Seconds()), new(100.Amperes(), null, 20.Seconds())],
        };
        Assert.Equal(expected, Judge(With(amperes, breaker, Weak())).Demand!.Value.Value, 1e-9);
    }

    /// <summary>Rulebook R-12, harm first: what everything on the way bears for ever needs no haste.</summary>
    [Fact]
    public void A_harmless_fault_may_last()
    {
        var check = Judge(With(50, Drawn(100, 1000, 20), FaultBoards.Wire(0, 20)));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Null(check.Margin);
        Assert.Equal("'Reed' on rail 'Rail' may open late on a fault at the end of rail 'Rail': what can last harms nothing on the way", check.Message);
    }

    /// <summary>What does not open at all is for RAIL0302, that of a resettable fuse for RAIL0404.</summary>
    [Fact]
    public void A_fault_that_opens_nothing_makes_no_check()
    {
        Assert.Empty(Apply.Rule<OpensTooSlowly>(With(15, Drawn(100, 1), Weak())));
        Assert.Empty(Apply.Rule<OpensTooSlowly>(With(15, new ResettableFuse { TripCurrent = 20.Amperes(), TripDerating = [new((-40).Celsius(), 1), new(85.Celsius(), 1)], Resistance = 0.Ohms() }, Weak())));
    }

    /// <summary>A quicker device above opens first: its time counts.</summary>
    [Fact]
    public void A_quicker_device_above_counts()
    {
        var slow = Drawn(100, 20) with { PartNumber = "Slow" };
        var bus = new Rail("Bus") { From = FaultBoards.Battery(50, 0.5), Path = [Drawn(100, 2, 40) with { PartNumber = "Quick" }], Return = Apply.NoReturn, Surroundings = Apply.Bench };
        var rail = new Rail("Rail") { From = bus, Path = [slow, Weak()], Return = Apply.NoReturn };
        var check = Apply.Rule<OpensTooSlowly>(bus, rail).Of(slow);
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal(2, check.Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void Without_curve_and_gates_the_time_is_undecided_and_beyond_the_last_gate_too()
    {
        var bare = new Fuse { RatedCurrent = 25.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ColdResistance = 0.Ohms() };
        Assert.Contains("Curve", Judge(With(1000, bare, Weak())).Names());

        // UL 248-14 promises 120 s at twice the rated current, and nothing of what happens at forty times.
        var family = bare with { Characteristic = Characteristic.Ul248Part14 };
        Assert.Equal(Verdict.Fails, Judge(With(50, family, Weak())).Verdict);
        Assert.Contains("Curve", Judge(With(1000, family, Weak())).Names());
        Assert.Contains("TimeToTrip", Judge(With(1000, new ResettableFuse { TripCurrent = 20.Amperes(), TripDerating = [new((-40).Celsius(), 1), new(85.Celsius(), 1)], Resistance = 0.Ohms() }, Weak(100))).Names());
    }

    [Fact]
    public void Opening_time_is_the_policy()
    {
        var rail = With(136.6, General(63), Weak()) with { Policy = new() { OpeningTime = 3600.Seconds() } };
        Assert.Equal(Verdict.Holds, Judge(rail).Verdict);
        Assert.Contains("OpeningTime", Apply.WithUnknown<OpensTooSlowly>(rail.Policy!, nameof(DesignPolicy.OpeningTime), rail).Of(rail.Path[0]).Names());
    }

    /// <summary>A contact without a stated withstand is left to its rating (RAIL0204); one with it counts.</summary>
    [Fact]
    public void A_contact_is_judged_by_time_only_where_it_states_a_withstand()
    {
        var contact = new Connector { Name = "Lug", ContactRating = 1.Amperes(), ContactResistance = 0.Ohms() };
        Assert.Equal(5, Judge(With(1000, Drawn(1000, 1), contact)).Capacity!.Value.Value, 1e-9);
        Assert.Equal(0.1, Judge(With(1000, Drawn(1000, 1), contact with { Withstand = 100e3.AmpereSquaredSeconds() })).Capacity!.Value.Value, 1e-9);
    }

    /// <summary>A slower device never turns a failing check into holding.</summary>
    [Fact]
    public void A_slower_curve_is_never_better() => Gen.Select(Gen.Double[1, 1000], Gen.Double[0.001, 100], Gen.Double[1, 50], Gen.Double[2, 8]).Sample(at =>
    {
        var (above, seconds, factor, withstand) = at;
        var amperes = 25 + above;
        Check Of(double time) => Judge(With(amperes, Drawn(amperes, time, 20), Weak(Math.Pow(10, withstand))));
        Assert.False(Of(seconds).Verdict == Verdict.Fails && Of(seconds * factor).Verdict == Verdict.Holds);
    }, iter: 200);

    /// <summary>Bounding is sound: where a board with absent data is decided, it is decided alike for any value inside the bounds.</summary>
    [Fact]
    public void What_bounding_decides_any_value_decides() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.5, 40], Gen.Double[1.5, 16], Gen.Double[160, 250], Gen.Bool, Gen.Bool, Gen.Bool).Sample(at =>
        {
            var (back, seconds, section, final, knowsBack, knowsSection, knowsFinal) = at;
            Check Of(bool whole) => Judge(new Rail("Rail")
            {
                From = FaultBoards.Battery(48, 0.2),
                Path =
                [
                    Drawn(40, seconds) with { MeltingIntegral = 400.AmpereSquaredSeconds() },
                    new Wire
                    {
                        Resistance = 0.1.Ohms(),
                        Ampacity = 10.Amperes(),
                        TemperatureLimit = 70.Celsius(),
                        Section = whole || knowsSection ? section.SquareMillimeters() : null,
                        ShortTimeLimit = whole || knowsFinal ? final.Celsius() : null,
                    },
                ],
                Return = whole || knowsBack ? Return.OfResistance(back.Ohms()) : null,
                Surroundings = Apply.At(30),
            });
            var partial = Of(false).Verdict;
            Assert.True(partial == Verdict.Undecided || partial == Of(true).Verdict);
        }, iter: 200);
}
