using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0206. Check values PF-01 and PF-02 (current divider), case-042; parallel fuses only as sets: 46 CFR 111.50-3(d).</summary>
public sealed class UnequalSharingTests
{
    private static Fuse Fuse(double rated, double least, double most) => new()
    {
        PartNumber = "Weir",
        RatedCurrent = rated.Amperes(),
        RatingBasis = RatingBasis.CarriesRating,
        ReferenceAmbient = 25.Celsius(),
        ColdResistance = Band.Of(least.Milliohms(), most.Milliohms()),
        ParallelAllowed = "sheet 4",
    };

    private static System.Collections.Immutable.ImmutableArray<Check> Judge(double amperes, params Element[][] branches) =>
        Apply.Rule<UnequalSharing>(Apply.Carrying(amperes, new ParallelGroup { Branches = [.. branches.Select(branch => (System.Collections.Immutable.ImmutableArray<Element>)[.. branch])] }));

    private static Check Share(double amperes, params Element[][] branches) => Judge(amperes, branches).First(check => check.Part is Fuse);

    [Fact]
    public void The_least_resistance_takes_most() // PF-01
    {
        var check = Share(100, [Fuse(60, 1, 1)], [Fuse(60, 1.2, 1.2)]);
        Assert.Equal(54.54545, check.Demand!.Value.Value, 0.0005 * 54.5);
        Assert.Equal("'Weir' in parallel on 'Rail' takes 54.5 A of 100 A; it may carry 60 A", check.Message);
    }

    [Theory] // PF-02: two of 60 A with 10 % of spread carry 109 A
    [InlineData(109.0, Verdict.Holds)]
    [InlineData(109.2, Verdict.Fails)]
    public void Ratings_do_not_add(double amperes, Verdict expected) => Assert.Equal(expected, Share(amperes, [Fuse(60, 0.9, 1.1)], [Fuse(60, 0.9, 1.1)]).Verdict);

    [Fact]
    public void Wiring_in_the_branches_counts()
    {
        var lead = new SenseResistor { Resistance = 1.Milliohms() };
        Assert.Equal(100 * 2.0 / 3, Share(100, [Fuse(60, 1, 1)], [Fuse(60, 1, 1), lead]).Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void Unlike_parts_and_parts_without_leave_are_no_set()
    {
        var set = Judge(45, [Fuse(40, 1.4, 1.4) with { Name = "F1", PartNumber = null }], [Fuse(5, 17.5, 17.5) with { Name = "F2", PartNumber = null }]);
        Assert.Equal(2, set.Count(check => check.Verdict == Verdict.Fails));
        Assert.Equal(41.66667, set.First(check => check.Verdict == Verdict.Fails && check.Part is Fuse).Demand!.Value.Value, 1e-4);
        Assert.Contains("'F1' and 'F2' in parallel on rail 'Rail' are not a set", set.Single(check => check.Part is ParallelGroup).Message);
        var without = Fuse(60, 1, 1) with { ParallelAllowed = null };
        Assert.Equal(Verdict.Fails, Judge(10, [without], [without]).Single(check => check.Part is ParallelGroup).Verdict);
        Assert.Equal(Verdict.Holds, Judge(10, [Fuse(60, 1, 1)], [Fuse(60, 1, 1)]).Single(check => check.Part is ParallelGroup).Verdict);
        var group = new ParallelGroup { Branches = [[without], [without]], ParallelAllowed = "sheet 5" };
        Assert.Equal(Verdict.Holds, Apply.Rule<UnequalSharing>(Apply.Carrying(10, group)).Single(check => check.Part is ParallelGroup).Verdict);
    }

    [Fact]
    public void Without_resistances_it_is_undecided_unless_one_alone_carries_all()
    {
        var fuse = Fuse(60, 1, 1) with { ColdResistance = null };
        var check = Share(100, [fuse], [fuse]);
        Assert.Equal(Verdict.Undecided, check.Verdict);
        Assert.Equal([nameof(RailRules.Fuse.ColdResistance)], check.Names().Distinct());
        Assert.Equal(Verdict.Holds, Share(60, [fuse], [fuse]).Verdict);
    }

    [Fact]
    public void Parallel_conductors_before_one_fuse_and_a_single_branch_ask_for_nothing()
    {
        Assert.Empty(Judge(10, [new Wire { Resistance = 1.Milliohms() }], [new Wire { Resistance = 1.Milliohms() }]));
        Assert.Empty(Judge(10, [Fuse(60, 1, 1)]));
    }

    /// <summary>One finding: what takes too much by unequal sharing is not said again by RAIL0201.</summary>
    [Fact]
    public void It_silences_the_current_margin_of_the_same_device()
    {
        var rail = Apply.Carrying(130, new ParallelGroup { Branches = [[Fuse(60, 1, 1)], [Fuse(60, 1, 1)]] });
        Assert.DoesNotContain(Engine.Check([rail]), check => check.Rule == "RAIL0201" && check.Part is Fuse);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var group = new ParallelGroup { Branches = [[Fuse(60, 1, 1)], [Fuse(60, 1, 1)]] };
        var rail = Apply.Carrying(100, group);
        Assert.Contains(Apply.WithUnknown<UnequalSharing>(group, nameof(ParallelGroup.Branches), rail), check => check.Names().Contains(nameof(ParallelGroup.Branches)));
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<UnequalSharing>(group, nameof(ParallelGroup.ParallelAllowed), rail).Single(check => check.Part is ParallelGroup).Verdict);
    }

    /// <summary>More mismatch never helps: a wider band in either branch never lowers the largest share.</summary>
    [Fact]
    public void More_mismatch_never_helps() => Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.1, 5], Gen.Double[0, 0.9], Gen.Double[0, 2], Gen.Double[1, 200]).Sample((a, b, less, more, amperes) =>
    {
        double Largest(double spreadLow, double spreadHigh)
        {
            var checks = Judge(amperes, [Fuse(60, a * (1 - spreadLow), a * (1 + spreadHigh))], [Fuse(60, b * (1 - spreadLow), b * (1 + spreadHigh))]);
            return checks.Where(check => check.Part is Fuse).Max(check => check.Demand!.Value.Value);
        }

        return Largest(less, more) >= Largest(less / 2, more / 2) * (1 - 1e-9) && Largest(less, more) <= amperes * (1 + 1e-9) && Largest(0, 0) >= (amperes / 2) * (1 - 1e-9);
    });
}
