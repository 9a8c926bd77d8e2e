using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0307. Where a device belongs: AC 43.13-1B, 11-47; the free length of 150 mm is common practice.</summary>
public sealed class UnprotectedStretchTests
{
    private static readonly Supply Stiff = new() { Name = "Plant", Voltage = 50.Volts(), SourceResistance = 10.Milliohms() };

    private static Wire Wire(double? meters, double? ampacity = null) => new()
    {
        Name = "cable",
        Length = meters is { } length ? length.Meters() : null,
        Ampacity = ampacity is { } amperes ? amperes.Amperes() : null,
    };

    private static Fuse Fuse => new() { PartNumber = "Weir" };

    private static Rail Board(Source from, params Element[] path) => new("Rail") { From = from, Path = [.. path], Loads = [new("Rail") { Name = "pump" }] };

    private static Check? Judge(object part, params Rail[] rails) => Apply.Rule<UnprotectedStretch>(rails).SingleOrDefault(check => ReferenceEquals(check.Part, part));

    [Fact]
    public void A_long_cable_before_the_fuse_fails()
    {
        var cable = Wire(2);
        var rail = Board(Stiff, cable, Fuse);
        var check = Judge(cable, rail)!;
        Assert.Equal((Verdict.Fails, (double?)null), (check.Verdict, check.Margin));
        Assert.Equal("2 m of 'cable' on rail 'Rail' carries up to 5 kA from 'Plant' before any device", check.Message);
        Assert.Equal(Verdict.Holds, Judge(rail.Loads[0], rail)!.Verdict);
    }

    [Fact]
    public void Behind_the_fuse_it_holds()
    {
        var cable = Wire(2);
        var rail = Board(Stiff, Fuse, cable, new Connector());
        var checks = Apply.Rule<UnprotectedStretch>(rail);
        Assert.Equal(3, checks.Length);
        Assert.All(checks, check => Assert.Equal(Verdict.Holds, check.Verdict));
        Assert.Contains("'Weir'", checks.Of(cable).Message);
    }

    [Theory]
    [InlineData(0.15, true)]
    [InlineData(0.16, false)]
    public void A_short_conductor_and_terminals_before_the_device_are_free(double meters, bool free)
    {
        var (cable, lug) = (Wire(meters), new Connector());
        var rail = Board(Stiff, lug, cable, Fuse);
        Assert.Null(Judge(lug, rail));
        Assert.Equal(free, Judge(cable, rail) is null);
    }

    [Fact]
    public void Lengths_add_up_and_a_tap_with_a_device_begins_anew()
    {
        var (first, second) = (Wire(0.1), Wire(0.1));
        Assert.NotNull(Judge(second, Board(Stiff, first, second, Fuse)));
        var bus = new Rail { Name = "Bus", From = Stiff, Path = [first] };
        Assert.Null(Judge(second, Board(bus, second, Fuse)));
        Assert.NotNull(Judge(second, Board(bus, second)));
    }

    [Fact]
    public void A_load_without_any_device_fails_unless_it_protects_itself()
    {
        var rail = Board(Stiff);
        Assert.Equal(Verdict.Fails, Judge(rail.Loads[0], rail)!.Verdict);
        Assert.Equal("'pump' on rail 'Rail' carries up to 5 kA from 'Plant' before any device", Judge(rail.Loads[0], rail)!.Message);
        var own = new Rail { From = Stiff, Loads = [new() { OverloadLimit = 5.Amperes() }] };
        Assert.Empty(Apply.Rule<UnprotectedStretch>(own));
        var converter = new Converter { Input = rail, Output = 12.Volts() };
        Assert.Equal(Verdict.Fails, Judge(converter, new Rail { From = converter })!.Verdict);
    }

    [Fact]
    public void A_short_circuit_proof_element_is_not_judged()
    {
        var cable = Wire(2) with { ShortCircuitProof = true };
        Assert.Null(Judge(cable, Board(Stiff, cable, Fuse)));
    }

    /// <summary>A hardware limit of the source within what the conductor bears holds; beyond it nothing protects; firmware counts by policy only.</summary>
    [Theory]
    [InlineData(LimitedBy.Hardware, 25.0, Verdict.Holds)]
    [InlineData(LimitedBy.Hardware, 20.0, Verdict.Holds)]
    [InlineData(LimitedBy.Hardware, 19.0, Verdict.Fails)]
    [InlineData(LimitedBy.Hardware, null, Verdict.Undecided)]
    [InlineData(LimitedBy.Firmware, 25.0, Verdict.Fails)]
    [InlineData(null, 25.0, Verdict.Undecided)]
    [InlineData(null, 19.0, Verdict.Fails)]
    public void The_limit_of_the_source_may_bound_it(LimitedBy? by, double? ampacity, Verdict expected)
    {
        var cable = Wire(2, ampacity);
        var limited = new Supply { Name = "Shelf", Voltage = 50.Volts(), CurrentLimit = new() { Level = Band.Of(18.Amperes(), 20.Amperes()), LimitedBy = by } };
        Assert.Equal(expected, Judge(cable, Board(limited, cable))!.Verdict);
    }

    [Fact]
    public void Firmware_limits_are_credited_by_policy()
    {
        var cable = Wire(2, 25);
        var limited = new Supply { Voltage = 50.Volts(), CurrentLimit = new() { Level = 20.Amperes(), LimitedBy = LimitedBy.Firmware } };
        var rail = new Rail { From = limited, Path = [cable], Policy = new() { CreditFirmwareLimits = true } };
        Assert.Equal(Verdict.Holds, Judge(cable, rail)!.Verdict);
    }

    /// <summary>Contacts in parallel bear rating × (1 + (n - 1) R_min/R_max): two of 10 A that differ by half bear 15 A.</summary>
    [Theory]
    [InlineData(15, Verdict.Holds)]
    [InlineData(15.1, Verdict.Fails)]
    public void Contacts_share_by_their_resistances(double limit, Verdict expected)
    {
        var contacts = new Connector { Contacts = 2, ContactRating = 10.Amperes(), ContactResistance = Band.Of(1.Milliohms(), 2.Milliohms()) };
        var limited = new Supply { Voltage = 50.Volts(), CurrentLimit = new() { Level = limit.Amperes(), LimitedBy = LimitedBy.Hardware } };
        Assert.Equal(expected, Judge(contacts, Board(limited, Wire(1, 100), contacts))!.Verdict);
        var unstated = contacts with { ContactResistance = null };
        Assert.Equal([nameof(Connector.ContactResistance)], Judge(unstated, Board(limited, Wire(1, 100), unstated))!.Names());
    }

    [Fact]
    public void An_unknown_length_is_undecided_unless_the_rest_is_too_long_already()
    {
        var (unknown, known) = (Wire(null), Wire(0.2));
        Assert.Equal([nameof(RailRules.Wire.Length)], Judge(unknown, Board(Stiff, unknown, Fuse))!.Names());
        Assert.Equal(Verdict.Fails, Judge(unknown, Board(Stiff, known, unknown, Fuse))!.Verdict);
        Assert.Equal(Verdict.Undecided, Judge(new Connector() is var lug ? lug : null!, Board(Stiff, unknown, lug, Fuse))!.Verdict);
    }

    /// <summary>Two shelves feed a link: without a fuse at each end a fault in the cable is fed from the far shelf .</summary>
    [Fact]
    public void A_link_between_two_sources_needs_a_device_at_both_ends()
    {
        var (left, right) = (Wire(10), Wire(10));
        Rail Link(Element[] a, Element[] b) => new() { Feeds = [new() { From = Stiff, Path = [.. a] }, new() { From = new Supply { Name = "Far", Voltage = 50.Volts() }, Path = [.. b] }] };
        Assert.Equal(Verdict.Fails, Judge(left, Link([Fuse, left], [right]))!.Verdict);
        Assert.Equal(Verdict.Fails, Judge(right, Link([Fuse, left], [right]))!.Verdict);
        Assert.Contains("'Far'", Judge(left, Link([Fuse, left], [right]))!.Message);
        Assert.Equal(Verdict.Holds, Judge(left, Link([Fuse, left], [Fuse, right]))!.Verdict);
        Assert.Equal(Verdict.Holds, Judge(left, Link([Fuse, left, new BlockingDiode()], [right]))!.Verdict);
        Assert.Equal(Verdict.Fails, Judge(left, Link([Fuse, left, new ElectronicFuse { ReverseBlocking = false }], [right]))!.Verdict);
        Assert.Equal(Verdict.Undecided, Judge(left, Link([Fuse, left, new ElectronicFuse()], [right]))!.Verdict);
    }

    [Fact]
    public void A_far_source_reaches_up_another_bus()
    {
        var cable = Wire(10);
        var bus = new Rail { Name = "Bus", From = Stiff, Path = [Fuse, cable] };
        var shared = new Rail { Name = "Shared", Feeds = [new() { From = bus }, new() { From = new Battery { Name = "String" } }] };
        var check = Judge(cable, shared)!;
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Contains("whatever 'String' delivers", check.Message);
    }

    [Fact]
    public void A_group_protects_where_each_branch_has_a_device()
    {
        var cable = Wire(2);
        Assert.Equal(Verdict.Holds, Judge(cable, Board(Stiff, new ParallelGroup { Branches = [[Fuse], [Fuse]] }, cable))!.Verdict);
        Assert.Equal(Verdict.Fails, Judge(cable, Board(Stiff, new ParallelGroup { Branches = [[Fuse], [Wire(1)]] }, cable))!.Verdict);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var cable = Wire(2);
        var rail = Board(Stiff, cable);
        Assert.All(Apply.WithUnknown<UnprotectedStretch>(rail, nameof(Rail.Path), rail), check => Assert.Equal(Verdict.Undecided, check.Verdict));
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<UnprotectedStretch>(cable, nameof(Element.ShortCircuitProof), rail).Of(cable).Verdict);
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<UnprotectedStretch>(Stiff, nameof(Supply.CurrentLimit), rail).Of(cable).Verdict);
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<UnprotectedStretch>(rail.Loads[0], nameof(Load.OverloadLimit), rail).Of(rail.Loads[0]).Verdict);
        Assert.Equal([nameof(Rail.From)], Assert.Single(Apply.Rule<UnprotectedStretch>(new Rail { Path = [cable] })).Names());
    }

    /// <summary>More free conductor never protects; a longer one never turns failing into holding; a verdict without a length is that of any length.</summary>
    [Fact]
    public void Longer_is_never_better() => Gen.Select(Gen.Double[0, 0.4], Gen.Double[0, 0.4], Gen.Double[0, 0.4]).Sample((before, length, more) =>
    {
        Verdict? Of(double? meters)
        {
            var cable = Wire(meters);
            return Judge(cable, Board(Stiff, Wire(before), cable, Fuse))?.Verdict;
        }

        var (shorter, longer, open) = (Of(length), Of(length + more), Of(null));
        return (shorter != Verdict.Fails || longer == Verdict.Fails) && (open == Verdict.Undecided || open == shorter);
    });
}
