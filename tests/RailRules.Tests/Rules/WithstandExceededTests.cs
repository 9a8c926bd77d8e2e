using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0304: let-through above what an element withstands. Parts and boards are invented.</summary>
public sealed class WithstandExceededTests
{
    private static Check Judge(Rail rail, int part = 1) => Apply.Rule<WithstandExceeded>(rail).Of(rail.Path[part]);

    /// <summary>A fuse of a clearing I²t proven at a voltage, that melts with a third of it.</summary>
    private static Fuse Clears(double integral, double volts = 80, double? tau = 0.005) => new()
    {
        PartNumber = "Reed",
        RatedCurrent = 63.Amperes(),
        RatingBasis = RatingBasis.CarriesRating,
        DcVoltageRating = 100.Volts(),
        MeltingIntegral = (integral / 3).AmpereSquaredSeconds(),
        ClearingIntegrals = [new() { Value = integral.AmpereSquaredSeconds(), Voltage = volts.Volts(), TimeConstant = tau is { } seconds ? seconds.Seconds() : null }],
        Curve = [new(101.Amperes(), null, 3600.Seconds()), new(200.Amperes(), null, 10.Seconds()), new(500.Amperes(), null, 1.Seconds()), new(1.Kiloamperes(), null, 100.Milliseconds())],
        ColdResistance = 0.Ohms(),
    };

    /// <summary>A wire at its full current when the fault comes.</summary>
    private static Wire Copper(double section, double limit = 70, double final = 160) => new()
    {
        Name = "Lead",
        Resistance = 0.Ohms(),
        Inductance = ElectricInductance.Zero,
        Section = section.SquareMillimeters(),
        Ampacity = 20.Amperes(),
        TemperatureLimit = limit.Celsius(),
        ShortTimeLimit = final.Celsius(),
    };

    private static Rail Loaded(Source from, params Element[] path) => FaultBoards.Rail(from, [.. path]) with { Loads = [new() { Current = 20.Amperes() }] };

    /// <summary>5 kA: all that these fuses let through is adiabatic.</summary>
    private static Battery Stiff(double volts = 80, double henries = 0) => FaultBoards.Battery(volts, volts / 5000, henries);

    /// <summary>KW-12: 86 kA²s need 2.55 mm² of copper with k = 115 (IEC 60364-4-43, 434.5.2, from memory).</summary>
    [Theory]
    [InlineData(2.5, Verdict.Fails)]
    [InlineData(2.6, Verdict.Holds)]
    public void A_conductor_needs_its_smallest_section(double section, Verdict expected)
    {
        var check = Judge(Loaded(Stiff(), Clears(86000), Copper(section)));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(86000, check.Demand!.Value.Value, 1e-6 * 86000);
        Assert.Equal(Math.Pow(section / 2.550066, 2), check.Margin!.Value, 0.004);
    }

    /// <summary>KW-13: 6 mm² with 90 °C insulation, k = 143, withstands 736 kA²s (IEC 60364-4-43, 434.5.2, from memory).</summary>
    [Fact]
    public void The_withstand_is_that_of_the_table()
    {
        var check = Judge(Loaded(Stiff(), Clears(86000), Copper(6, 90, 250)));
        Assert.Equal(736164, check.Capacity!.Value.Value, 0.004 * 736164);
        Assert.Equal("'Reed' lets 86000 A²s through at ", check.Message[..33]);
        Assert.EndsWith("'Lead' on rail 'Rail' withstands 735000 A²s", check.Message);
    }

    /// <summary>case-063: 2.7 kA for 50 ms are 364.5 kA²s, four times what 2.5 mm² withstand.</summary>
    [Fact]
    public void A_conductor_meets_the_fault_at_its_beginning()
    {
        var slow = Clears(1e9) with { MeltingIntegral = null, ClearingIntegrals = [], Curve = [new(101.Amperes(), null, 1.Seconds()), new(2.7.Kiloamperes(), null, 50.Milliseconds())] };
        var lead = Copper(2.5) with { Resistance = 34.Milliohms() };
        Assert.Equal(364500, Judge(Loaded(FaultBoards.Battery(54, 0.02), slow, lead)).Demand!.Value.Value, 5.0);
    }

    /// <summary>The worst current may lie between: 200 A for 3 s are 120 kA²s, while 100 A give 40 and 400 A 16 kA²s.</summary>
    [Theory]
    [InlineData(121e3, Verdict.Holds)]
    [InlineData(119e3, Verdict.Fails)]
    public void The_worst_current_may_lie_inside(double withstand, Verdict expected)
    {
        var humped = new Fuse
        {
            PartNumber = "Reed",
            RatedCurrent = 30.Amperes(),
            RatingBasis = RatingBasis.CarriesThreeQuarters,
            ColdResistance = 0.Ohms(),
            Curve = [new(100.Amperes(), null, 4.Seconds()), new(200.Amperes(), null, 3.Seconds()), new(400.Amperes(), null, 100.Milliseconds())],
        };
        var contact = new Connector { Name = "Lug", ContactRating = 20.Amperes(), ContactResistance = 0.Ohms(), Withstand = withstand.AmpereSquaredSeconds() };
        var bank = new Battery { OpenCircuitVoltage = Band.Of(40.Volts(), 60.Volts()), InternalResistance = Band.Of(0.15.Ohms(), 0.4.Ohms()) };
        var check = Judge(FaultBoards.Rail(bank, humped, contact));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(120e3, check.Demand!.Value.Value, 1.0);
        Assert.Contains("200 A", check.Message, StringComparison.Ordinal);
    }

    /// <summary>MIL-DTL-917F, 3.13.2.1: a semiconductor stands 10 % above its fuse.</summary>
    [Theory]
    [InlineData(1120, Verdict.Holds)]
    [InlineData(1100, Verdict.Fails)]
    public void A_semiconductor_stands_ten_percent_above_its_fuse(double surge, Verdict expected)
    {
        Element[] parts = [new BlockingDiode { RatedCurrent = 20.Amperes(), SurgeIntegral = surge.AmpereSquaredSeconds(), ForwardDrop = 0.Volts() }, new Switch { RatedCurrent = 20.Amperes(), SurgeIntegral = surge.AmpereSquaredSeconds(), OnResistance = 0.Ohms() }];
        Assert.All(parts, part =>
        {
            var check = Judge(FaultBoards.Rail(Stiff(), Clears(1000), part));
            Assert.Equal(expected, check.Verdict);
            Assert.Equal(0.9 * surge, check.Capacity!.Value.Value, 1e-6);
        });
        Assert.Contains("SurgeIntegral", Judge(FaultBoards.Rail(Stiff(), Clears(1000), new BlockingDiode { RatedCurrent = 20.Amperes(), ForwardDrop = 0.Volts() })).Names());
    }

    /// <summary>R-20: at half the voltage half of the arcing part: 20 + (60 − 20) / 2 = 40 kA²s; at a higher voltage or a slower circuit nothing is proven.</summary>
    [Fact]
    public void Clearing_integral_is_reduced_for_a_lower_voltage_and_never_raised()
    {
        Assert.Equal(40000, Judge(Loaded(Stiff(40), Clears(60000), Copper(4))).Demand!.Value.Value, 1.0);
        Assert.Contains("ClearingIntegrals", Judge(Loaded(Stiff(90), Clears(60000), Copper(4))).Names());
        Assert.Contains("ClearingIntegrals", Judge(Loaded(Stiff(40, henries: 1e-4), Clears(60000), Copper(4))).Names());

        // A test that states no time constant counts for circuits of the assumed one.
        Assert.Equal(Verdict.Holds, Judge(Loaded(Stiff(40, henries: 5e-6), Clears(60000, tau: null), Copper(4))).Verdict);
        Assert.Contains("ClearingIntegrals", Judge(Loaded(Stiff(40, henries: 3e-5), Clears(60000, tau: null), Copper(4))).Names());
    }

    /// <summary>An electronic fuse: 60 V over 12 µH reach 20 A after 4 µs, go on for 2 µs to 30 A: (60 / 12 µH)² t³ / 3 with t = 6 µs are 1.8 mA²s.</summary>
    [Fact]
    public void An_electronic_fuse_lets_the_rise_of_the_fault_through()
    {
        var electronic = new ElectronicFuse
        {
            PartNumber = "U1",
            TripLevel = 12.Amperes(),
            TripDelay = 1.Milliseconds(),
            ShortCircuitLevel = 20.Amperes(),
            ShortCircuitResponse = 2.Microseconds(),
            OnResistance = 0.Ohms(),
        };
        var contact = new Connector { Name = "Lug", ContactRating = 5.Amperes(), ContactResistance = 0.Ohms(), Withstand = 10.AmpereSquaredSeconds() };
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(60, 0.001, 12e-6), electronic, contact) with { Policy = new() { AssumedTimeConstant = 1.Seconds() } });
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal(Math.Pow(60 / 12e-6, 2) * Math.Pow(6e-6, 3) / 3, check.Demand!.Value.Value, 1e-5);
    }

    [Fact]
    public void What_carries_any_fault_for_ever_holds()
    {
        var check = Judge(FaultBoards.Rail(FaultBoards.Limited(54, 20), Clears(1e6), Copper(0.1)));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal("'Lead' on rail 'Rail' carries for ever what any fault gives", check.Message);
    }

    [Fact]
    public void Contacts_without_a_withstand_and_stretches_without_a_device_make_no_check()
    {
        Assert.Empty(Apply.Rule<WithstandExceeded>(FaultBoards.Rail(Stiff(), Clears(1000), new Connector { ContactRating = 20.Amperes(), ContactResistance = 0.Ohms() })));
        Assert.Empty(Apply.Rule<WithstandExceeded>(FaultBoards.Rail(Stiff(), Copper(4))));
    }

    /// <summary>IEC 60364-4-43, 435.1 (from memory): a full-range fuse that protects against overload protects against short circuit; of breakers it need not be so.</summary>
    [Fact]
    public void A_full_range_fuse_that_protects_against_overload_counts()
    {
        var fuse = new Fuse { PartNumber = "Weir", RatedCurrent = 63.Amperes(), RatingBasis = RatingBasis.CarriesRating, Characteristic = Characteristic.Iec60269gG, ColdResistance = 0.Ohms() };
        var lead = Copper(4) with { Ampacity = 76.Amperes() };
        var check = Judge(Loaded(Stiff(), fuse, lead));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Contains("435.1", Assert.Single(check.Assumptions), StringComparison.Ordinal);
        Assert.Equal(Verdict.Undecided, Judge(Loaded(Stiff(), fuse, lead with { Ampacity = 60.Amperes() })).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(Loaded(Stiff(), new CircuitBreaker { RatedCurrent = 63.Amperes(), MagneticTrip = Band.Of(300.Amperes(), 600.Amperes()), Resistance = 0.Ohms() }, lead)).Verdict);
    }

    [Fact]
    public void A_thicker_wire_never_turns_a_holding_check_into_failing() => Gen.Select(Gen.Double[0.5, 10], Gen.Double[1, 3], Gen.Double[3, 6]).Sample(at =>
    {
        var (section, factor, exponent) = at;
        Check Of(double square) => Judge(Loaded(Stiff(), Clears(Math.Pow(10, exponent)), Copper(square)));
        Assert.False(Of(section).Verdict == Verdict.Holds && Of(section * factor).Verdict == Verdict.Fails);
    }, iter: 100);

    /// <summary>Bounding is sound: where a board with absent data is decided, it is decided alike for any value inside the bounds.</summary>
    [Fact]
    public void What_bounding_decides_any_value_decides() =>
        Gen.Select(Gen.Double[0.6, 10], Gen.Double[160, 250], Gen.Double[2.5, 6], Gen.Double[1, 5], Gen.Bool, Gen.Bool, Gen.Bool).Sample(at =>
        {
            var (section, final, exponent, ratio, knowsSection, knowsFinal, knowsClearing) = at;
            var melting = Math.Pow(10, exponent);
            Check Of(bool whole) => Judge(Loaded(
                Stiff(),
                Clears(melting * ratio) with { MeltingIntegral = melting.AmpereSquaredSeconds(), ClearingIntegrals = whole || knowsClearing ? Clears(melting * ratio).ClearingIntegrals : [], Curve = Clears(1).Curve },
                Copper(section) with { Section = whole || knowsSection ? section.SquareMillimeters() : null, ShortTimeLimit = whole || knowsFinal ? final.Celsius() : null }));
            var partial = Of(false).Verdict;
            Assert.True(partial == Verdict.Undecided || partial == Of(true).Verdict);
        }, iter: 150);
}
