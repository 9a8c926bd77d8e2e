using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0104. The comparison is the data sheets' own: stand-off voltage not below the highest working voltage; case-053, case-056 and case-058 are boards of their own.</summary>
public sealed class StandOffVoltageTooLowTests
{
    private static Check Judge(TransientSuppressor clamp, double steady = 57, double? transient = 60, Surroundings? air = null, DesignPolicy? policy = null) =>
        Apply.Rule<StandOffVoltageTooLow>(RailOf(clamp, steady, transient, air, policy)).Of(clamp);

    private static Rail RailOf(TransientSuppressor clamp, double steady, double? transient, Surroundings? air = null, DesignPolicy? policy = null) => new("Sled")
    {
        From = new Supply { Name = "Plant", Voltage = Band.Of(43.Volts(), steady.Volts()), TransientMax = transient?.Volts() },
        Clamps = [clamp],
        Surroundings = air,
        Policy = policy,
    };

    [Fact]
    public void The_message_names_both_voltages() => Assert.Equal(
        "'D1' on rail 'Sled' conducts from 54 V, below the steady maximum 57 V",
        Judge(new() { Name = "D1", StandOffVoltage = 54.Volts() }).Message);

    /// <summary>The transient is what the clamp is there to cut: only the steady voltage counts.</summary>
    [Theory]
    [InlineData(57, Verdict.Holds)]
    [InlineData(58, Verdict.Holds)]
    [InlineData(56.9, Verdict.Fails)]
    public void The_steady_voltage_counts_and_not_the_transient(double standOff, Verdict expected)
    {
        var check = Judge(new() { Name = "D1", StandOffVoltage = standOff.Volts() });
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(standOff / 57, check.Margin!.Value, 1e-12);
        Assert.Equal(57, check.Demand!.Value.Value);
    }

    [Fact]
    public void A_battery_counts_its_charging_voltage()
    {
        var clamp = new TransientSuppressor { Name = "D1", StandOffVoltage = 54.Volts() };
        var check = Apply.Rule<StandOffVoltageTooLow>(new Rail { From = new Battery { OpenCircuitVoltage = Band.Of(42.Volts(), 52.Volts()), ChargeVoltage = 56.4.Volts() }, Clamps = [clamp] }).Of(clamp);
        Assert.Equal((Verdict.Fails, 56.4), (check.Verdict, check.Demand!.Value.Value));
    }

    /// <summary>Without a stand-off voltage the breakdown counts, which is lower in the cold by what only the data sheet knows.</summary>
    [Fact]
    public void The_breakdown_voltage_stands_in_for_the_stand_off_voltage()
    {
        var clamp = new TransientSuppressor { Name = "D1", BreakdownVoltage = Band.Of(64.4.Volts(), 71.2.Volts()) };
        Assert.Equal([nameof(TransientSuppressor.BreakdownVoltageCold)], Judge(clamp, steady: 60).Names());
        Assert.Equal([nameof(TransientSuppressor.BreakdownVoltageCold)], Judge(clamp, steady: 63, air: Apply.At(55)).Names());
        Assert.Equal(Verdict.Holds, Judge(clamp, steady: 63, air: new() { Ambient = Band.Of(25.Celsius(), 55.Celsius()) }).Verdict);

        // At most 0.11 %/K less at -40 °C: 59.8 V.
        Assert.Equal(Verdict.Holds, Judge(clamp).Verdict);
        Assert.Equal((Verdict.Holds, 60.1), (Judge(clamp with { BreakdownVoltageCold = 60.1.Volts() }).Verdict, Judge(clamp with { BreakdownVoltageCold = 60.1.Volts() }).Capacity!.Value.Value));
        Assert.Equal(Verdict.Fails, Judge(clamp, steady: 64.5).Verdict);
    }

    [Fact]
    public void The_policy_may_leave_less()
    {
        var check = Judge(new() { Name = "D1", StandOffVoltage = 60.Volts() }, policy: new() { Name = "house", StandOffFraction = 0.9 });
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("'D1' on rail 'Sled' conducts from 54 V (0.9 of 60 V), below the steady maximum 57 V", check.Message);
    }

    [Fact]
    public void What_is_not_known_is_undecided()
    {
        Assert.Equal([nameof(TransientSuppressor.StandOffVoltage)], Judge(new() { Name = "D1" }).Names());
        var clamp = new TransientSuppressor { Name = "D1", StandOffVoltage = 60.Volts() };
        var rail = new Rail { From = new Supply { Name = "Plant" }, Clamps = [clamp] };
        Assert.Equal([nameof(Supply.Voltage)], Apply.Rule<StandOffVoltageTooLow>(rail).Of(clamp).Names());
        foreach (var (owner, datum) in new (object, string)[] { (clamp, nameof(TransientSuppressor.StandOffVoltage)), (DesignPolicy.Default, nameof(DesignPolicy.StandOffFraction)) })
        {
            var hidden = new TransientSuppressor { Name = "D1", StandOffVoltage = ReferenceEquals(owner, clamp) ? null : 60.Volts() };
            Assert.Equal([datum], Apply.WithUnknown<StandOffVoltageTooLow>(ReferenceEquals(owner, clamp) ? hidden : owner, datum, RailOf(hidden, 57, 60)).Of(hidden).Names());
        }

        var clamped = RailOf(clamp, 57, 60) with { Clamps = [] };
        Assert.Equal([nameof(Rail.Clamps)], Assert.Single(Apply.WithUnknown<StandOffVoltageTooLow>(clamped, nameof(Rail.Clamps), clamped)).Names());
    }

    [Fact]
    public void No_clamp_is_no_check() => Assert.Empty(Apply.Rule<StandOffVoltageTooLow>(new Rail { From = new Supply { Voltage = 48.Volts() } }));

    [Fact]
    public void Margin_falls_with_the_voltage_and_units_do_not_matter() => Gen.Select(Gen.Double[5, 100], Gen.Double[5, 100], Gen.Double[0, 20]).Sample((standOff, steady, more) =>
    {
        var clamp = new TransientSuppressor { Name = "D1", StandOffVoltage = standOff.Volts() };
        var other = clamp with { StandOffVoltage = ElectricPotential.FromMillivolts(standOff * 1000) };
        var check = Judge(clamp, steady, null);
        return Judge(clamp, steady + more, null).Margin <= check.Margin && Math.Abs(Judge(other, steady, null).Margin!.Value - check.Margin!.Value) < 1e-9
            && check.Verdict == (standOff >= steady * (1 - 1e-9) ? Verdict.Holds : Verdict.Fails);
    });
}
