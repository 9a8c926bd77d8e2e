using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0102. Check value VR-03: an AC rating only, on a DC rail, does not pass (UL 248-2:2019, 5.2).</summary>
public sealed class NoDcVoltageRatingTests
{
    private static Rail Board(Element part) => new("Rail") { From = new Supply { Voltage = 54.Volts() }, Path = [part] };

    private static Check Judge(Element part) => Apply.Rule<NoDcVoltageRating>(Board(part)).Of(part);

    [Fact]
    public void An_AC_rating_alone_fails()
    {
        var check = Judge(new Fuse { PartNumber = "Mill10", AcVoltageRating = 250.Volts() });
        Assert.Equal((Verdict.Fails, (double?)null), (check.Verdict, check.Margin));
        Assert.Equal("'Mill10' on rail 'Rail' has no DC voltage rating (AC 250 V); nothing shows that it can clear 54 V DC", check.Message);
        Assert.Equal(Verdict.Fails, Judge(new CircuitBreaker { AcVoltageRating = 230.Volts() }).Verdict);
        Assert.Equal(Verdict.Fails, Judge(new Fuse { InterruptingRatings = [new() { Current = 100.Amperes(), Voltage = 250.Volts(), Kind = CurrentKind.Ac }] }).Verdict);
    }

    [Fact]
    public void A_DC_rating_holds() => Assert.Equal(Verdict.Holds, Judge(new Fuse { AcVoltageRating = 250.Volts(), DcVoltageRating = 80.Volts() }).Verdict);

    [Fact]
    public void Neither_is_undecided()
    {
        Assert.Equal([nameof(Fuse.DcVoltageRating)], Judge(new Fuse()).Names());
        Assert.Equal(Verdict.Undecided, Judge(new Fuse { InterruptingRatings = [new() { Current = 1.Kiloamperes(), Voltage = 32.Volts() }] }).Verdict);
    }

    [Fact]
    public void Parts_rated_by_their_highest_voltage_are_not_judged() =>
        Assert.Empty(Apply.Rule<NoDcVoltageRating>(Board(new ResettableFuse()), Board(new ElectronicFuse()), Board(new Switch())));

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var fuse = new Fuse { AcVoltageRating = 250.Volts() };
        var rail = Board(fuse);
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<NoDcVoltageRating>(fuse, nameof(Fuse.DcVoltageRating), rail).Of(fuse).Verdict);
        Assert.Contains(Apply.WithUnknown<NoDcVoltageRating>(rail, nameof(Rail.Path), rail), check => check.Verdict == Verdict.Undecided && check.Names().Contains(nameof(Rail.Path)));
    }

    [Fact]
    public void It_silences_the_voltage_rating_of_the_same_device_only()
    {
        var (bad, open) = (new Fuse { AcVoltageRating = 250.Volts(), DcVoltageRating = null }, new Fuse());
        var checks = Engine.Check([new Rail { From = new Supply { Voltage = 54.Volts() }, Path = [bad, open] }]);
        Assert.DoesNotContain(checks, check => check.Rule == "RAIL0101" && ReferenceEquals(check.Part, bad));
        Assert.Contains(checks, check => check.Rule == "RAIL0101" && ReferenceEquals(check.Part, open));
    }
}
