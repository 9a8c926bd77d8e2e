using System.Collections.Immutable;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0004: one finding a rail, with the data missing and the rules that wait for them.</summary>
public sealed class UndecidedChecksTests
{
    private static readonly ImmutableArray<InterruptingRating> Breaks = [new() { Current = 10.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 5.Milliseconds() }];

    private static Check Summary(Rail rail) => Assert.Single(Engine.Check([rail]), check => check.Rule == "RAIL0004" && ReferenceEquals(check.Rail, rail));

    [Fact]
    public void Missing_data_are_listed_once_with_the_rules_that_wait()
    {
        var fuse = new Fuse { PartNumber = "Reed20", RatedCurrent = 20.Amperes(), RatingBasis = RatingBasis.CarriesRating, ReferenceAmbient = 25.Celsius(), ColdResistance = 1.Milliohms(), Flammability = Flammability.V0, InterruptingRatings = Breaks };
        var rail = Apply.Carrying(5, fuse, volts: 54);
        var other = new Rail("Rail") { From = rail.From, Path = rail.Path, Return = rail.Return, Surroundings = rail.Surroundings, Loads = [new("Rail") { Current = 5.Amperes(), MaxVoltage = 75.Volts() }] };
        var check = Summary(other);
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("'Rail': 2 checks undecided; missing DcVoltageRating of 'Reed20' (RAIL0101, RAIL0102)", check.Message);
        Assert.Equal(new DatumPlace(other), check.Places[0]);
        Assert.Contains(new DatumPlace(fuse, nameof(Fuse.DcVoltageRating)), check.Places);
        Assert.Equal(2, check.Demand!.Value.Value - check.Capacity!.Value.Value);
    }

    [Fact]
    public void A_rail_that_is_decided_throughout_holds()
    {
        var fuse = new Fuse { RatedCurrent = 20.Amperes(), RatingBasis = RatingBasis.CarriesRating, ReferenceAmbient = 25.Celsius(), ColdResistance = 1.Milliohms(), Flammability = Flammability.V0, DcVoltageRating = 80.Volts(), InterruptingRatings = Breaks };
        var rail = Apply.Carrying(5, fuse, volts: 54);
        var whole = new Rail("Rail") { From = rail.From, Path = rail.Path, Return = rail.Return, Surroundings = rail.Surroundings, Loads = [new("Rail") { Current = 5.Amperes(), MaxVoltage = 75.Volts() }] };
        Assert.Equal(Verdict.Holds, Summary(whole).Verdict);
        Assert.All(Engine.Check([whole]), check => Assert.Equal(Verdict.Holds, check.Verdict));
    }

    [Fact]
    public void It_makes_no_check_of_its_own() => Assert.Empty(Apply.Rule<UndecidedChecks>(new Rail()));
}
