using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>
/// RAIL0601. The order of classes is that of UL 94; 15 W is the limit of power source class PS1 in IEC 62368-1 (from memory). Power is the highest voltage times
/// what surely opens the device: 1.35 times the rating of a UL 248-14 style fuse (rows GU of the reference tables).
/// </summary>
public sealed class FlammabilityTooLowTests
{
    private static Fuse Fuse(double rated, Flammability? flammability) =>
        new() { PartNumber = "Reed", RatedCurrent = rated.Amperes(), RatingBasis = RatingBasis.CarriesThreeQuarters, ColdResistance = 1.Milliohms(), Flammability = flammability };

    private static Rail RailOf(Element part, double volts = 48, CurrentLimit? limit = null, double load = 0.1, double? source = 0.01, DesignPolicy? policy = null) => new("Rail")
    {
        From = new Supply { Name = "Plant", Voltage = volts.Volts(), CurrentLimit = limit, SourceResistance = source?.Ohms() },
        Path = [part],
        Return = Apply.NoReturn,
        Surroundings = Apply.Bench,
        Loads = [new() { Current = load.Amperes() }],
        Policy = policy,
    };

    private static Check Judge(Rail rail) => Apply.Rule<FlammabilityTooLow>(rail).Of(rail.Path[0]);

    [Theory]
    [InlineData(Flammability.FiveVA, Verdict.Holds)]
    [InlineData(Flammability.FiveVB, Verdict.Holds)]
    [InlineData(Flammability.V0, Verdict.Holds)]
    [InlineData(Flammability.V1, Verdict.Holds)]
    [InlineData(Flammability.V2, Verdict.Fails)]
    [InlineData(Flammability.HB, Verdict.Fails)]
    public void Classes_from_V1_up_may_stand_where_power_is(Flammability flammability, Verdict expected)
    {
        var check = Judge(RailOf(Fuse(20, flammability)));
        Assert.Equal((expected, (double?)null), (check.Verdict, check.Margin));
    }

    /// <summary>48 V × 1.35 × 20 A = 1296 W.</summary>
    [Fact]
    public void The_message_names_class_and_power() => Assert.Equal(
        "'Reed' on rail 'Rail' is V-2; the default policy asks for V-1 where 1.3 kW is available",
        Judge(RailOf(Fuse(20, Flammability.V2))).Message);

    /// <summary>A source that latches off at 30 A gives 2 A × 48 V = 96 W and up to 30 A × 48 V = 1440 W for ever; 1.35 × 20 A opens first: 1296 W.</summary>
    [Fact]
    public void Below_its_level_a_latching_source_gives_power_for_ever()
    {
        var limit = new CurrentLimit { Level = 30.Amperes(), LimitedBy = LimitedBy.Hardware, Style = CurrentLimitStyle.LatchOff };
        var check = Judge(RailOf(Fuse(20, Flammability.HB), limit: limit, load: 2));
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Contains("1.3 kW", check.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Metal_glass_and_ceramic_do_not_burn() => Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(20, Flammability.NonCombustible))));

    /// <summary>5 V × 1.35 × 2 A = 13.5 W; × 2.3 A = 15.5 W.</summary>
    [Fact]
    public void Below_15_watts_there_is_no_check()
    {
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(2, null), volts: 5)));
        Assert.Equal([nameof(RailRules.Fuse.Flammability)], Judge(RailOf(Fuse(2.3, null), volts: 5)).Names());
        Assert.Equal(Verdict.Fails, Judge(RailOf(Fuse(2.3, Flammability.HB), volts: 5)).Verdict);
    }

    /// <summary>3 V behind 2 Ω give at most 1.5 A: 4.5 W, whatever the fuse.</summary>
    [Fact]
    public void A_weak_source_bounds_the_power()
    {
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(20, null), volts: 3, source: 2)));
        var cell = RailOf(Fuse(20, null)) with { From = new Battery { OpenCircuitVoltage = Band.Of(2.Volts(), 3.Volts()), InternalResistance = 2.Ohms() } };
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(cell));
    }

    [Fact]
    public void A_hardware_limit_of_the_source_bounds_the_power()
    {
        var limit = new CurrentLimit { Level = Band.Of(0.2.Amperes(), 0.3.Amperes()), Style = CurrentLimitStyle.ConstantCurrent, LimitedBy = LimitedBy.Hardware };
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(20, Flammability.HB), limit: limit)));
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(20, Flammability.HB), limit: limit with { LimitedBy = null })));
        Assert.Equal(Verdict.Fails, Judge(RailOf(Fuse(20, Flammability.HB), limit: limit with { LimitedBy = LimitedBy.Firmware })).Verdict);
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(20, Flammability.HB), limit: limit with { LimitedBy = LimitedBy.Firmware }, policy: new() { CreditFirmwareLimits = true })));
    }

    /// <summary>Without a source resistance the steady current alone shows that power is there.</summary>
    [Fact]
    public void The_steady_current_is_available_for_certain()
    {
        Assert.Equal(Verdict.Undecided, Judge(RailOf(Fuse(20, Flammability.HB), load: 0.1, source: null)).Verdict);
        Assert.Equal(Verdict.Fails, Judge(RailOf(Fuse(20, Flammability.HB), load: 1, source: null)).Verdict);
    }

    [Fact]
    public void The_device_nearest_the_source_bounds_what_follows()
    {
        var connector = new Connector { Name = "J1", ContactResistance = 1.Milliohms(), Flammability = Flammability.HB };
        var rail = RailOf(Fuse(0.2, Flammability.V0)) with { };
        Assert.DoesNotContain(Apply.Rule<FlammabilityTooLow>(rail with { Path = [rail.Path[0], connector] }), check => ReferenceEquals(check.Part, connector));
        Assert.Equal(Verdict.Fails, Apply.Rule<FlammabilityTooLow>(RailOf(connector, load: 1)).Of(connector).Verdict);
    }

    [Fact]
    public void The_policy_decides_class_and_power()
    {
        Assert.Equal(Verdict.Fails, Judge(RailOf(Fuse(20, Flammability.V1), policy: new() { MinimumFlammability = Flammability.V0 })).Verdict);
        Assert.Empty(Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(20, Flammability.HB), policy: new() { FlammabilityFrom = Power.FromKilowatts(2) })));
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var rail = RailOf(Fuse(20, Flammability.HB));
        Assert.Equal([nameof(DesignPolicy.MinimumFlammability)], Apply.WithUnknown<FlammabilityTooLow>(DesignPolicy.Default, nameof(DesignPolicy.MinimumFlammability), rail).Of(rail.Path[0]).Names());
        Assert.Contains(Apply.WithUnknown<FlammabilityTooLow>(rail, nameof(Rail.Path), rail), check => check.Names().Contains(nameof(Rail.Path)));
        var unstated = RailOf(new Fuse { PartNumber = "Reed", Flammability = Flammability.HB }, load: 0.1, source: null);
        Assert.Equal([nameof(RailRules.Fuse.RatedCurrent), nameof(Supply.SourceResistance)], Judge(unstated).Names());
    }

    [Fact]
    public void More_voltage_never_turns_failing_into_holding() => Gen.Select(Gen.Double[5, 60], Gen.Double[0.1, 5], Gen.Double[1, 3]).Sample((volts, rated, more) =>
    {
        Verdict? At(double v) => Apply.Rule<FlammabilityTooLow>(RailOf(Fuse(rated, Flammability.HB), v)).Select(check => (Verdict?)check.Verdict).SingleOrDefault();
        return At(volts) != Verdict.Fails || At(volts * more) == Verdict.Fails;
    });
}
