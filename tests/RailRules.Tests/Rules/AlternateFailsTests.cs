using System.Collections.Immutable;
using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0701: alternates in the place of the first choice. The oracle is the same board written with the alternate as its part.</summary>
public sealed class AlternateFailsTests
{
    private static readonly Fuse Good = new()
    {
        PartNumber = "Good",
        RatedCurrent = 0.5.Amperes(),
        DcVoltageRating = 80.Volts(),
        RatingBasis = RatingBasis.CarriesRating,
        ReferenceAmbient = 25.Celsius(),
        ColdResistance = 1.Milliohms(),
        OperatingTemperature = Band.Of((-40).Celsius(), 105.Celsius()),
        InterruptingRatings = [new() { Current = 1000.Kiloamperes(), Voltage = 80.Volts(), TimeConstant = 1.Seconds() }],
        MeltingIntegral = 100.AmpereSquaredSeconds(),
    };

    private static readonly Fuse Low = Good with { PartNumber = "Low", DcVoltageRating = 32.Volts() };

    private static readonly Fuse Small = Good with { PartNumber = "Small", RatedCurrent = 0.04.Amperes() };

    private static readonly Fuse Mains = Good with { PartNumber = "Mains", DcVoltageRating = null, AcVoltageRating = 250.Volts() };

    private static readonly Fuse Unrated = Good with { PartNumber = "Unrated", DcVoltageRating = null };

    /// <summary>So little power that only a few rules have anything to say, today and later.</summary>
    private static Rail Carrying(double amperes, Element part) => new("Rail")
    {
        From = new Supply { Name = "Source", Voltage = 54.Volts(), TransientMax = 54.Volts(), ContinuousCurrent = 0.2.Amperes(), SourceResistance = 1.Ohms(), SourceInductance = 1.Microhenries(), CurrentLimit = new() { Level = 0.2.Amperes(), Style = CurrentLimitStyle.ConstantCurrent, Response = 1.Microseconds() } },
        Path = [part],
        Return = Apply.NoReturn,
        Loads = [new("Rail") { Current = amperes.Amperes(), MaxVoltage = 75.Volts() }],
        Surroundings = Apply.Bench,
    };

    private static Fuse With(Fuse first, params Element[] alternates) => first with { Designator = "F1", Alternates = [.. alternates] };

    private static IReadOnlyList<Check> Of(params Rail[] rails) => [.. Engine.Check(rails).Where(check => check.Rule == "RAIL0701")];

    [Fact]
    public void An_alternate_that_fails_is_named_with_its_rule_and_both_margins()
    {
        var rail = Carrying(0.05, With(Good, Low));
        var check = Assert.Single(Of(rail));
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("alternate 'Low' of 'Good' on rail 'Rail' fails RAIL0101: 54 V against 32 V; the first choice has 1.48 ×", check.Message);
        Assert.Equal(32.0 / 54, check.Margin!.Value, 1e-9);
        Assert.Equal(new DatumPlace(rail, nameof(Rail.Path), 0), check.Places[0]);
        Assert.Contains(new DatumPlace(Low, nameof(Fuse.DcVoltageRating)), check.Places);
    }

    [Fact]
    public void One_that_holds_says_its_least_margin()
    {
        var check = Assert.Single(Of(Carrying(0.05, With(Good, Good with { PartNumber = "Other" }))));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal(80.0 / 54, check.Margin!.Value, 1e-9);
    }

    [Fact]
    public void Each_rule_that_fails_is_a_check_of_its_own() =>
        Assert.Equal(["RAIL0101", "RAIL0201"], Of(Carrying(0.05, With(Good, Low with { RatedCurrent = 0.04.Amperes() }))).Select(check => check.Subject[^8..]).Order(StringComparer.Ordinal));

    [Fact]
    public void Where_the_first_choice_fails_as_well_there_is_no_finding() =>
        Assert.DoesNotContain(Of(Carrying(0.05, With(Low, Low with { PartNumber = "Twin" }))), check => check.Verdict == Verdict.Fails);

    [Fact]
    public void A_waived_first_choice_fails_as_well()
    {
        var rail = Carrying(0.05, With(Low, Low with { PartNumber = "Twin" }));
        var options = new CheckOptions { Waivers = [new("RAIL0101") { Reason = "why", ApprovedBy = "lead" }] };
        Assert.DoesNotContain(Engine.Check([rail], options), check => check is { Rule: "RAIL0701", Verdict: Verdict.Fails });
    }

    [Fact]
    public void One_cause_is_one_finding_for_alternates_too() =>
        Assert.Equal(["RAIL0102"], Of(Carrying(0.05, With(Good, Mains))).Select(check => check.Subject[^8..]));

    [Fact]
    public void Missing_data_of_an_alternate_are_listed_with_the_rail()
    {
        var rail = Carrying(0.05, With(Good, Unrated));
        Assert.All(Of(rail), check => Assert.Equal(Verdict.Undecided, check.Verdict));
        Assert.Contains("DcVoltageRating of 'Unrated' (RAIL0701)", Assert.Single(Engine.Check([rail]), check => check.Rule == "RAIL0004").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Data_that_the_first_choice_lacks_too_are_asked_for_once()
    {
        var part = With(Unrated, Unrated with { PartNumber = "Twin" });
        var message = Assert.Single(Engine.Check([Carrying(0.05, part)]), check => check.Rule == "RAIL0004").Message;
        Assert.Contains("DcVoltageRating of 'Unrated' (RAIL0101, RAIL0102)", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Alternates_that_could_not_be_worked_out_are_not_passed()
    {
        var part = With(Good);
        var checks = Engine.Check([Carrying(0.05, part)], (owner, datum) => ReferenceEquals(owner, part) && datum == nameof(Element.Alternates));
        Assert.Equal(Verdict.Undecided, Assert.Single(checks, check => check.Rule == "RAIL0701").Verdict);
    }

    /// <summary>The alternate's own unknown data are known by the alternate, though its copy stands in the place.</summary>
    [Fact]
    public void An_alternates_datum_that_could_not_be_worked_out_is_unknown_in_its_place()
    {
        var rail = Carrying(0.05, With(Good, Unrated));
        var checks = Engine.Check([rail], (owner, datum) => ReferenceEquals(owner, Unrated) && datum == nameof(Fuse.DcVoltageRating));
        Assert.Contains(checks, check => check.Rule == "RAIL0701" && check.Missing.Any(datum => ReferenceEquals(datum.Place.Owner, Unrated)));
    }

    [Fact]
    public void A_contradiction_in_an_alternate_is_said_as_such_and_not_judged()
    {
        var checks = Engine.Check([Carrying(0.05, With(Good, Low with { ColdResistance = Band.Of(3.Milliohms(), 1.Milliohms()) }))]);
        Assert.Contains(checks, check => check is { Rule: "RAIL0003", Verdict: Verdict.Fails });
        Assert.DoesNotContain(checks, check => check.Rule == "RAIL0701");
    }

    [Fact]
    public void What_the_place_says_of_itself_holds_for_the_alternate_too()
    {
        var place = With(Good, Small) with { Surroundings = Apply.At(40), Policy = new DesignPolicy { VoltageFraction = 0.5 } };
        var checks = Of(Carrying(0.03, place with { DcVoltageRating = 200.Volts() }));
        Assert.Contains("fails RAIL0101: 54 V against 40 V", Assert.Single(checks, check => check.Subject.EndsWith("RAIL0101", StringComparison.Ordinal)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Alternates_in_feeds_returns_and_branches_are_judged_in_their_places()
    {
        var supply = new Supply { Voltage = 54.Volts(), ContinuousCurrent = 100.Amperes() };
        var group = new ParallelGroup { Branches = [[Good], [Good, With(Good, Low)]] };
        var rail = new Rail("Rail")
        {
            Feeds = [new() { From = supply, Path = [With(Good, Low)], Return = Apply.NoReturn }, new() { From = supply, Path = [Good], Return = Return.Of(new Trace { Resistance = 0.Ohms() }, With(Good, Low)) }],
            Path = [new Trace { Resistance = 0.Ohms() }, group],
            Return = Apply.NoReturn,
            Loads = [new("Rail") { Current = 0.5.Amperes() }],
            Surroundings = Apply.Bench,
        };
        var failing = Of(rail).Where(check => check.Verdict == Verdict.Fails && check.Subject.EndsWith("RAIL0101", StringComparison.Ordinal)).ToList();
        Assert.Equal([new DatumPlace(rail.Feeds[0], nameof(Feed.Path), 0), new DatumPlace(rail.Feeds[1], nameof(Feed.Return), 1), new DatumPlace(rail, nameof(Rail.Path), 1)], failing.Select(check => check.Places[0]));
    }

    [Fact]
    public void Rails_below_feel_the_alternate()
    {
        var supply = new Supply { Voltage = 48.Volts(), ContinuousCurrent = 100.Amperes() };
        var above = new Rail { Name = "Above", From = supply, Path = [With(Good with { RatedCurrent = 20.Amperes() }, Good with { RatedCurrent = 20.Amperes(), PartNumber = "Long", ColdResistance = 1.Ohms() })], Return = Apply.NoReturn, Surroundings = Apply.Bench };
        var below = new Rail { Name = "Below", From = above, Path = [Small with { RatedCurrent = 5.1.Amperes() }], Return = Apply.NoReturn, Loads = [new("Below") { Power = 240.Watts(), MinVoltage = 30.Volts() }] };
        var check = Assert.Single(Of(above, below), check => check.Verdict == Verdict.Fails && check.Subject.EndsWith("RAIL0201", StringComparison.Ordinal));
        Assert.StartsWith("alternate 'Long' of 'Good' on rail 'Above' fails RAIL0201: 'Small' on rail 'Below': RatedCurrent, ", check.Message, StringComparison.Ordinal);
        Assert.Equal(new DatumPlace(above, nameof(Rail.Path), 0), check.Places[0]);
    }

    /// <summary>The supply is judged at the first rail that takes from it, which is not the alternate's.</summary>
    [Fact]
    public void A_supply_that_is_overloaded_anyway_is_no_fault_of_an_alternate()
    {
        var supply = new Supply { Voltage = 48.Volts(), ContinuousCurrent = 0.8.Amperes() };
        Rail Of(string name, Fuse fuse) => new(name) { From = supply, Path = [fuse], Return = Apply.NoReturn, Surroundings = Apply.Bench, Loads = [new(name) { Current = 0.5.Amperes() }] };
        var checks = Engine.Check([Of("First", Good), Of("Second", With(Good, Good with { PartNumber = "Other" }))]);
        Assert.Contains(checks, check => check is { Rule: "RAIL0201", Verdict: Verdict.Fails, Part: Supply });
        Assert.DoesNotContain(checks, check => check is { Rule: "RAIL0701", Verdict: Verdict.Fails });
    }

    [Fact]
    public void A_board_that_is_broken_says_so_alone()
    {
        var rail = new Rail("Rail") { Path = [With(Good, Low)], Loads = [new("Rail") { Current = 0.5.Amperes() }] };
        Assert.DoesNotContain(Of(rail), check => check.Verdict != Verdict.Holds);
    }

    /// <summary>Random boards of two levels: a rule fails for an alternate if and only if it fails on the board written with it, and not on the board as it is.</summary>
    [Fact]
    public void It_agrees_with_the_board_written_with_the_alternate() => Gen.Int[1, 1 << 30].Sample(seed =>
    {
        var random = new Random(seed);
        Fuse Some(string number) => Good with
        {
            PartNumber = number,
            RatedCurrent = random.Next(1, 12).Amperes(),
            DcVoltageRating = random.Next(4) == 0 ? null : random.Next(30, 90).Volts(),
            AcVoltageRating = random.Next(2) == 0 ? 250.Volts() : null,
            ColdResistance = random.Next(1, 200).Milliohms(),
            Derating = random.Next(2) == 0 ? [new(25.Celsius(), 1), new(85.Celsius(), 0.7)] : [],
            OperatingTemperature = Band.Of((-40).Celsius(), random.Next(30, 100).Celsius()),
        };
        var supply = new Supply { Voltage = Band.Of(40.Volts(), 57.Volts()), ContinuousCurrent = 100.Amperes() };
        var air = Apply.At(random.Next(25, 60));
        var (first, alternate, other) = (Some("First"), Some("Alternate"), Some("Other"));
        (Rail Above, Rail Below) Board(Element upper, Element lower)
        {
            var above = new Rail("Above") { From = supply, Path = [upper, new Trace { Resistance = 10.Milliohms() }], Return = Return.Mirrored, Surroundings = air };
            return (above, new Rail("Below") { From = above, Path = [lower], Return = Apply.NoReturn, Loads = [new("Below") { Power = 300.Watts(), MinVoltage = 20.Volts(), MaxVoltage = 75.Volts() }] });
        }

        var isUpper = random.Next(2) == 0;
        var (whole, written, plain) = isUpper
            ? (Board(With(first, alternate), other), Board(With(alternate), other), Board(With(first), other))
            : (Board(other, With(first, alternate)), Board(other, With(alternate)), Board(other, With(first)));
        IEnumerable<string> Failing((Rail Above, Rail Below) board) => Engine.Check([board.Above, board.Below]).Where(check => check.Verdict == Verdict.Fails && check.Rule is not ("RAIL0004" or "RAIL0701"))
            .Select(check => $"{check.Rule} {(ReferenceEquals(check.Rail, board.Above) ? "above" : "below")} {check.Places[0].Datum} {check.Places[0].Index}");
        var expected = Failing(written).Except(Failing(plain)).Select(text => text[..8]).Distinct().Order(StringComparer.Ordinal);
        var found = Engine.Check([whole.Above, whole.Below]).Where(check => check is { Rule: "RAIL0701", Verdict: Verdict.Fails }).Select(check => check.Subject[^8..]).Order(StringComparer.Ordinal);
        Assert.Equal(expected, found);
    }, iter: 300, seed: "0000000000007");
}
