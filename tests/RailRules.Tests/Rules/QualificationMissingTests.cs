using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0602. Structural: names are compared exactly; the qualifications named here are invented.</summary>
public sealed class QualificationMissingTests
{
    private static readonly Surroundings Demanding = new() { RequiredQualifications = ["River-2"] };

    private static Rail RailOf(Fuse fuse, Surroundings? surroundings, DesignPolicy? policy = null, Source? from = null) =>
        new("Sled") { From = from, Path = [fuse], Surroundings = surroundings, Policy = policy };

    private static Check Judge(Fuse fuse, Surroundings? surroundings, DesignPolicy? policy = null) => Apply.Rule<QualificationMissing>(RailOf(fuse, surroundings, policy)).Of(fuse);

    [Fact]
    public void The_name_must_match_exactly()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Qualifications = ["River-1"] };
        var check = Judge(fuse, Demanding);
        Assert.Equal((Verdict.Fails, (double?)null), (check.Verdict, check.Margin));
        Assert.Equal("'Reed20' on rail 'Sled' lacks River-2, required by the surroundings of 'Sled'", check.Message);
        Assert.Equal(Verdict.Fails, Judge(fuse with { Qualifications = ["river-2"] }, Demanding).Verdict);
        Assert.Equal(Verdict.Holds, Judge(fuse with { Qualifications = ["River-1", "River-2"] }, Demanding).Verdict);
    }

    [Fact]
    public void The_policy_may_let_one_count_as_another()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Qualifications = ["River-3"] };
        Assert.Equal(Verdict.Fails, Judge(fuse, Demanding).Verdict);
        Assert.Equal(Verdict.Holds, Judge(fuse, Demanding, new() { QualificationCovers = [new("River-3", "River-2")] }).Verdict);
        Assert.Equal(Verdict.Fails, Judge(fuse, Demanding, new() { QualificationCovers = [new("River-2", "River-3")] }).Verdict);
    }

    [Fact]
    public void Every_requirement_is_judged()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Qualifications = ["River-2"] };
        var checks = Apply.Rule<QualificationMissing>(RailOf(fuse, new() { RequiredQualifications = ["River-2", "Lock-1"] }));
        Assert.Equal([Verdict.Holds, Verdict.Fails], checks.Select(check => check.Verdict));
    }

    [Fact]
    public void The_requirement_is_inherited_and_the_nearest_counts()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Qualifications = ["Lock-1"] };
        var bus = new Rail("Bus") { Surroundings = Demanding };
        Assert.Equal("'Reed20' on rail 'Sled' lacks River-2, required by the surroundings of 'Bus'", Apply.Rule<QualificationMissing>(RailOf(fuse, Apply.Bench, from: bus)).Of(fuse).Message);
        var own = fuse with { Surroundings = new() { RequiredQualifications = ["Lock-1"] } };
        Assert.Equal(Verdict.Holds, Apply.Rule<QualificationMissing>(RailOf(own, Demanding)).Of(own).Verdict);
    }

    [Fact]
    public void Nothing_required_is_no_check() => Assert.Empty(Apply.Rule<QualificationMissing>(RailOf(new() { PartNumber = "Reed20" }, Apply.Bench)));

    [Fact]
    public void Conductors_are_not_asked() => Assert.Empty(Apply.Rule<QualificationMissing>(new Rail { Path = [new Wire()], Surroundings = Demanding }));

    [Fact]
    public void Unstated_is_undecided_and_none_fails()
    {
        Assert.Equal([nameof(Fuse.Qualifications)], Judge(new() { PartNumber = "Reed20" }, Demanding).Names());
        Assert.Equal(Verdict.Fails, Judge(new() { PartNumber = "Reed20", Qualifications = [] }, Demanding).Verdict);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var fuse = new Fuse { PartNumber = "Reed20", Qualifications = ["River-1"] };
        var (rail, hidden) = (RailOf(fuse, Demanding), RailOf(fuse, null));
        Assert.Equal([nameof(Surroundings.RequiredQualifications)], Apply.WithUnknown<QualificationMissing>(Demanding, nameof(Surroundings.RequiredQualifications), rail).Of(fuse).Names());
        Assert.Equal([nameof(Rail.Surroundings)], Apply.WithUnknown<QualificationMissing>(hidden, nameof(Rail.Surroundings), hidden).Of(fuse).Names());
        Assert.Equal([nameof(DesignPolicy.QualificationCovers)], Apply.WithUnknown<QualificationMissing>(DesignPolicy.Default, nameof(DesignPolicy.QualificationCovers), rail).Of(fuse).Names());
        Assert.Contains(Apply.WithUnknown<QualificationMissing>(rail, nameof(Rail.Path), rail), check => check.Names().Contains(nameof(Rail.Path)));
        Assert.Empty(Apply.WithUnknown<QualificationMissing>(hidden with { Path = [] }, nameof(Fuse.Qualifications), hidden with { Path = [] }));
    }
}
