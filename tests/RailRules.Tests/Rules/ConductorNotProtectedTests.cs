using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0204. I_n ≤ I_z and I₂ ≤ 1.45 I_z: IEC 60364-4-43, 433.1 (from memory); check values OL-01, OL-02 and KW-15.</summary>
public sealed class ConductorNotProtectedTests
{
    private static readonly Supply Stiff = new() { Name = "Plant", Voltage = 48.Volts(), SourceResistance = 5.Milliohms() };

    private static Fuse Fuse(double rated, Characteristic? family = null) =>
        new() { Name = "F", RatedCurrent = rated.Amperes(), Characteristic = family, RatingBasis = family is null ? RatingBasis.CarriesThreeQuarters : null, ColdResistance = 1.Milliohms() };

    private static Wire Wire(double? ampacity) => new() { Name = "lead", Length = 1.Meters(), Section = 50.SquareMillimeters(), Ampacity = ampacity is { } known ? known.Amperes() : null };

    private static Check? Judge(Element part, params Rail[] rails) => Apply.Rule<ConductorNotProtected>(rails).SingleOrDefault(check => ReferenceEquals(check.Part, part));

    private static Rail Board(Source from, params Element[] path) => new("Rail") { From = from, Path = [.. path], Return = Apply.NoReturn, Surroundings = Apply.Bench };

    [Theory]
    [InlineData(115, Verdict.Holds)] // OL-01
    [InlineData(105, Verdict.Fails)] // OL-02
    [InlineData(110.345, Verdict.Holds)] // KW-15
    [InlineData(110.344, Verdict.Fails)]
    public void A_general_purpose_fuse_needs_more_than_its_rating(double ampacity, Verdict expected)
    {
        var wire = Wire(ampacity);
        Assert.Equal(expected, Judge(wire, Board(Stiff, Fuse(100, Characteristic.Iec60269gG), wire))!.Verdict);
    }

    [Fact]
    public void It_says_what_lets_how_much_flow_for_how_long()
    {
        var wire = Wire(20);
        Assert.Equal("'lead' on rail 'Rail' may carry 20 A; 'F' lets 30 A flow for ever", Judge(wire, Board(Stiff, Fuse(30), wire))!.Message);
    }

    [Fact]
    public void A_bus_above_fused_branches_and_a_contact_before_the_fuse_are_bounded_by_what_leaves()
    {
        var bar = new Busbar { Name = "bar", Ampacity = 60.Amperes(), Resistance = 1.Milliohms() };
        var bus = Board(Stiff, bar);
        Rail Branch(double rated) => Board(bus, Fuse(rated));
        Assert.Equal(Verdict.Holds, Judge(bar, bus, Branch(30), Branch(30))!.Verdict);
        Assert.Equal(Verdict.Fails, Judge(bar, bus, Branch(30), Branch(31))!.Verdict);
        Assert.Null(Judge(bar, bus, Branch(30), Board(bus, Wire(10))));
        var jack = new Connector { Name = "jack", ContactRating = 5.Amperes(), ContactResistance = 1.Milliohms() };
        Assert.Equal(Verdict.Fails, Judge(jack, Board(Stiff, jack, Fuse(10)))!.Verdict);
    }

    [Fact]
    public void A_hardware_limit_bounds_and_firmware_does_not()
    {
        var wire = Wire(2.1);
        Supply Limited(LimitedBy by) => new() { Voltage = 5.Volts(), CurrentLimit = new() { Level = 0.6.Amperes(), LimitedBy = by } };
        Assert.Equal(Verdict.Holds, Judge(wire, Board(Limited(LimitedBy.Hardware), wire))!.Verdict);
        Assert.Null(Judge(wire, Board(Limited(LimitedBy.Firmware), wire)));
    }

    [Fact]
    public void A_shared_return_carries_the_sum()
    {
        var back = Wire(50);
        var shared = Return.Of(back);
        Rail Branch(double rated) => new() { From = Stiff, Path = [Fuse(rated)], Return = shared, Surroundings = Apply.Bench };
        Assert.Equal(Verdict.Holds, Judge(back, Branch(20), Branch(30))!.Verdict);
        Assert.Equal(Verdict.Fails, Judge(back, Branch(20), Branch(31))!.Verdict);
    }

    [Fact]
    public void Without_its_continuous_current_it_is_undecided()
    {
        var wire = Wire(null) with { Section = null, Resistance = 1.Milliohms() };
        Assert.Equal([nameof(RailRules.Wire.Ampacity)], Judge(wire, Board(Stiff, Fuse(10), wire))!.Names());
    }

    /// <summary>A larger fuse never protects better; a larger conductor is never protected worse.</summary>
    [Fact]
    public void A_larger_fuse_is_never_better() => Gen.Select(Gen.Double[1, 100], Gen.Double[1, 100], Gen.Double[0, 50]).Sample((rated, ampacity, more) =>
    {
        bool Holds(double fuse, double conductor)
        {
            var wire = Wire(conductor);
            return Judge(wire, Board(Stiff, Fuse(fuse), wire))!.Verdict == Verdict.Holds;
        }

        return (!Holds(rated + more, ampacity) || Holds(rated, ampacity)) && (!Holds(rated, ampacity) || Holds(rated, ampacity + more));
    });
}
