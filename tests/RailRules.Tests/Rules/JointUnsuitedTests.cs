using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0603. The limits are the policy's starting values as the rule's definition lists them.</summary>
public sealed class JointUnsuitedTests
{
    private static Surroundings Shaking(double? vibration, double? cycles = null) =>
        new() { Vibration = vibration is { } v ? Acceleration.FromMetersPerSecondSquared(v) : null, ThermalCyclesPerDay = cycles };

    private static Rail RailOf(Element part, Surroundings? surroundings, DesignPolicy? policy = null) => new("Rover") { Path = [part], Surroundings = surroundings, Policy = policy };

    private static Check Judge(Element part, Surroundings surroundings, DesignPolicy? policy = null) => Apply.Rule<JointUnsuited>(RailOf(part, surroundings, policy)).Of(part);

    [Theory]
    [InlineData(Joint.Clip, 10)]
    [InlineData(Joint.SpringContact, 20)]
    [InlineData(Joint.Bolted, 20)]
    [InlineData(Joint.BoltedLocked, 100)]
    [InlineData(Joint.Soldered, 50)]
    public void Each_joint_bears_its_vibration(Joint joint, double limit)
    {
        var fuse = new Fuse { PartNumber = "Reed20", Joint = joint };
        Assert.Equal(Verdict.Holds, Judge(fuse, Shaking(limit)).Verdict);
        var check = Judge(fuse, Shaking(limit * 1.25));
        Assert.Equal((Verdict.Fails, 0.8), (check.Verdict, Math.Round(check.Margin!.Value, 12)));
    }

    [Fact]
    public void The_message_names_joint_and_vibration() => Assert.Equal(
        "'Reed20' on rail 'Rover' is held by a clip, good for 10 m/s² r.m.s.; the surroundings of 'Rover' state 15 m/s² r.m.s.",
        Judge(new Fuse { PartNumber = "Reed20", Joint = Joint.Clip }, Shaking(15)).Message);

    [Fact]
    public void Thermal_cycles_strain_large_soldered_bodies()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Joint = Joint.Soldered };
        Assert.Equal(Verdict.Holds, Judge(fuse, Shaking(null, 10)).Verdict);
        Assert.Equal([nameof(Element.BodyLength)], Judge(fuse, Shaking(null, 16)).Names());
        Assert.Equal(Verdict.Holds, Judge(fuse with { BodyLength = 6.Millimeters() }, Shaking(null, 16)).Verdict);
        var check = Judge(fuse with { BodyLength = 10.Millimeters() }, Shaking(null, 16));
        Assert.Equal("'Reed20' on rail 'Rover' is held by solder on laminate, good for 10 cycles a day; the surroundings of 'Rover' state 16 cycles a day", check.Message);
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal(Verdict.Holds, Judge(fuse with { Joint = Joint.Clip }, Shaking(null, 16)).Verdict);
    }

    [Fact]
    public void Both_are_judged_and_inherited()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Joint = Joint.Clip };
        var rail = RailOf(fuse, Shaking(null, 5)) with { From = new Rail("Chassis") { Surroundings = Shaking(15) } };
        Assert.Equal([Verdict.Fails, Verdict.Holds], Apply.Rule<JointUnsuited>(rail).Select(check => check.Verdict));
    }

    [Fact]
    public void Nothing_stated_is_no_check() => Assert.Empty(Apply.Rule<JointUnsuited>(RailOf(new Fuse { PartNumber = "Reed20" }, Apply.Bench)));

    [Fact]
    public void An_unstated_joint_is_undecided_and_a_kind_without_limit_holds()
    {
        Assert.Equal([nameof(Fuse.Joint)], Judge(new Fuse { PartNumber = "Reed20" }, Shaking(15)).Names());
        var welded = new Fuse { PartNumber = "Reed20", Joint = Joint.Welded };
        Assert.Equal((Verdict.Holds, "the policy sets no limit of vibration for welding"), (Judge(welded, Shaking(15)).Verdict, Judge(welded, Shaking(15)).Assumptions[0]));
        var policy = new DesignPolicy { JointLimits = [new() { Joint = Joint.Welded, Vibration = Acceleration.FromStandardGravity(1) }] };
        Assert.Equal(Verdict.Fails, Judge(welded, Shaking(15), policy).Verdict);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Joint = Joint.Clip };
        var shaking = Shaking(5);
        var (rail, hidden) = (RailOf(fuse, shaking), RailOf(fuse, null));
        Assert.Contains(Apply.WithUnknown<JointUnsuited>(shaking, nameof(Surroundings.ThermalCyclesPerDay), rail), check => check.Names().SequenceEqual([nameof(Surroundings.ThermalCyclesPerDay)]));
        Assert.Equal([nameof(Rail.Surroundings)], Apply.WithUnknown<JointUnsuited>(hidden, nameof(Rail.Surroundings), hidden).Of(fuse).Names());
        Assert.Equal([nameof(DesignPolicy.JointLimits)], Apply.WithUnknown<JointUnsuited>(DesignPolicy.Default, nameof(DesignPolicy.JointLimits), rail).Of(fuse).Names());
        Assert.Contains(Apply.WithUnknown<JointUnsuited>(rail, nameof(Rail.Path), rail), check => check.Names().Contains(nameof(Rail.Path)));
    }

    [Fact]
    public void More_shaking_never_raises_the_margin() => Gen.Select(Gen.Double[1, 200], Gen.Double[1, 5]).Sample((vibration, more) =>
    {
        var fuse = new Fuse { PartNumber = "Reed20", Joint = Joint.BoltedLocked };
        return Judge(fuse, Shaking(vibration * more)).Margin <= Judge(fuse, Shaking(vibration)).Margin;
    });
}
