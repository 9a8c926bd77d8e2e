using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0308: a range of currents that harms something and that nothing interrupts. Parts and boards are invented.</summary>
public sealed class UninterruptedCurrentsTests
{
    private const double Ambient = 30;

    private static Check Judge(Rail rail, int part = 1) => Apply.Rule<UninterruptedCurrents>(rail).Of(rail.Path[part]);

    private static Fuse Drawn(params (double Amperes, double Seconds)[] points) => new()
    {
        PartNumber = "Reed",
        RatedCurrent = 63.Amperes(),
        RatingBasis = RatingBasis.CarriesRating,
        ColdResistance = 0.Ohms(),
        Curve = [.. points.Select(point => new CurvePoint(point.Amperes.Amperes(), null, point.Seconds.Seconds()))],
    };

    /// <summary>16 mm², 76 A, thermoplastic insulation, without load at 30 °C.</summary>
    private static readonly Wire Lead = new()
    {
        Name = "Lead",
        Resistance = 0.Ohms(),
        Inductance = ElectricInductance.Zero,
        Section = 16.SquareMillimeters(),
        Ampacity = 76.Amperes(),
        TemperatureLimit = 70.Celsius(),
        ShortTimeLimit = 160.Celsius(),
    };

    private static Rail On(Source from, params Element[] path) => FaultBoards.Rail(from, [.. path]) with { Surroundings = new() { Ambient = Ambient.Celsius(), Altitude = 0.Meters() } };

    /// <summary>
    /// How long the lead bears a current, written once more from the definition: first-order heating towards 30 + 40 (I/76)² °C with the time constant that makes its beginning
    /// adiabatic; k of copper by IEC 60949. The hour where it settles below 160 °C.
    /// </summary>
    private static double Bears(double current)
    {
        var integral = 225.669 * 225.669 * Math.Log((234.5 + 160) / (234.5 + Ambient)) * 16 * 16;
        var settled = Ambient + (40 * Math.Pow(current / 76, 2));
        var tau = integral / (76 * 76) * 40 / (160 - Ambient);
        var time = settled <= 160 ? 3600 : tau * Math.Log((settled - Ambient) / (settled - 160));
        return integral / (current * current) < 5 ? Math.Min(time, integral / (current * current)) : Math.Min(time, 3600);
    }

    private static double LogLog(double current, params (double Amperes, double Seconds)[] points)
    {
        var k = Enumerable.Range(0, points.Length - 1).Last(i => points[i].Amperes <= current || i == 0);
        var share = Math.Log(current / points[k].Amperes) / Math.Log(points[k + 1].Amperes / points[k].Amperes);
        return points[k].Seconds * Math.Pow(points[k + 1].Seconds / points[k].Seconds, share);
    }

    /// <summary>The range is where the curve lies above the time that the lead bears: both edges solve the two formulas.</summary>
    [Fact]
    public void The_range_is_where_the_curve_lies_above_what_the_lead_bears()
    {
        (double, double)[] curve = [(101, 3600), (200, 600), (400, 30), (1000, 0.5)];
        var check = Judge(On(FaultBoards.Battery(50, 0.03), Drawn(curve), Lead));
        Assert.Equal(Verdict.Fails, check.Verdict);
        var (low, high) = (check.Capacity!.Value.Value, check.Demand!.Value.Value);
        Assert.True(low < high);
        Assert.Equal(1, LogLog(high, curve) / Bears(high), 1e-4);
        Assert.True(LogLog(low * 1.001, curve) > Bears(low * 1.001));
        Assert.True(LogLog(low * 0.999, curve) <= Bears(low * 0.999));
        Assert.StartsWith("between 137 A and ", check.Message);
        Assert.EndsWith(" nothing interrupts the current in 'Lead' on rail 'Rail', which bears 76 A", check.Message);
        Assert.Equal(Verdict.Holds, Judge(On(FaultBoards.Battery(50, 0.03), Drawn((101, 3600), (200, 60), (400, 3), (1000, 0.1)), Lead)).Verdict);
    }

    /// <summary>A back-up link melts from 101 A on and breaks no less than 300 A (rulebook R-06): from the 210 A that the bar bears up to those nothing interrupts.</summary>
    [Fact]
    public void A_back_up_link_leaves_what_it_cannot_break()
    {
        var link = Drawn((101, 3600), (200, 10), (500, 0.2)) with { BreakingRange = BreakingRange.Partial, MinimumBreakingCurrent = 300.Amperes() };
        var check = Judge(On(FaultBoards.Battery(50, 0.03), link, Lead with { Ampacity = 210.Amperes(), Section = 70.SquareMillimeters() }));
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal(210, check.Capacity!.Value.Value, 0.1);
        Assert.Equal(300, check.Demand!.Value.Value, 0.1);
    }

    /// <summary>Rulebook R-26: behind a transistor that has failed short the fuse above must do, and the lead must last.</summary>
    [Theory]
    [InlineData(false, 10, Verdict.Holds)]
    [InlineData(true, 10, Verdict.Fails)]
    [InlineData(true, 0.1, Verdict.Holds)]
    public void With_a_shorted_switch_the_fuse_above_must_do(bool single, double seconds, Verdict expected)
    {
        var electronic = new ElectronicFuse { PartNumber = "U1", TripLevel = 80.Amperes(), TripDelay = 1.Milliseconds(), OnResistance = 0.Ohms() };
        var rail = On(FaultBoards.Battery(50, 0.03), Drawn((101, 3600), (200, 60 * seconds), (1000, 0.05 * seconds)), electronic, Lead) with { Policy = new() { SingleFault = single } };
        Assert.Equal(expected, Judge(rail, 2).Verdict);
    }

    /// <summary>A source that latches off after 10 ms interrupts all from its level on.</summary>
    [Theory]
    [InlineData(CurrentLimitStyle.LatchOff, Verdict.Holds)]
    [InlineData(CurrentLimitStyle.ConstantCurrent, Verdict.Fails)]
    public void A_source_that_latches_off_interrupts_too(CurrentLimitStyle style, Verdict expected)
    {
        var source = new Supply
        {
            Voltage = 50.Volts(),
            SourceResistance = 0.Ohms(),
            CurrentLimit = new() { Level = 250.Amperes(), Response = 1.Milliseconds(), Style = style, TripTime = 10.Milliseconds(), LimitedBy = LimitedBy.Hardware },
        };
        Assert.Equal(expected, Judge(On(source, Drawn((101, 3600), (140, 1000), (200, 900), (400, 30), (1000, 0.5)), Lead) with { Policy = new() { ConventionalTime = 3600.Seconds() } }).Verdict is Verdict.Holds ? Verdict.Holds : Verdict.Fails);
    }

    [Fact]
    public void What_bears_for_ever_all_that_can_last_holds()
    {
        var check = Judge(On(FaultBoards.Battery(50, 0.03), Drawn((76, 3600), (1000, 100)), Lead));
        Assert.Equal("'Lead' on rail 'Rail' bears for ever what can last", check.Message);
        Assert.Equal(Verdict.Holds, check.Verdict);
    }

    [Fact]
    public void Without_a_curve_a_breaker_is_undecided_and_a_fuse_counts_by_its_rating()
    {
        var breaker = new CircuitBreaker { PartNumber = "Lock", RatedCurrent = 63.Amperes(), Resistance = 0.Ohms() };
        Assert.Contains("Curve", Judge(On(FaultBoards.Battery(50, 0.03), breaker, Lead)).Names());
        var check = Judge(On(FaultBoards.Battery(50, 0.03), Drawn() with { Characteristic = Characteristic.Iec60269gG }, Lead));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Contains("435.1", Assert.Single(check.Assumptions), StringComparison.Ordinal);
    }

    /// <summary>What RAIL0204 or 0303 have named is not named again.</summary>
    [Fact]
    public void Ranges_named_by_other_rules_are_not_named_again()
    {
        // 25 A: RAIL0204. A fault of 180 A in the range itself: RAIL0303.
        var fuse = Drawn((101, 3600), (200, 600), (400, 30), (1000, 0.5));
        Assert.DoesNotContain("RAIL0308", Fails(On(FaultBoards.Battery(50, 0.03), fuse, Lead with { Ampacity = 25.Amperes() })));
        var far = Fails(On(FaultBoards.Battery(50, 0.28), fuse, Lead));
        Assert.Contains("RAIL0303", far);
        Assert.DoesNotContain("RAIL0308", far);
        Assert.Contains("RAIL0308", Fails(On(FaultBoards.Battery(50, 0.03), fuse, Lead)));

        static List<string> Fails(Rail rail) => [.. Engine.Check([rail]).Where(check => check.Verdict == Verdict.Fails).Select(check => check.Rule)];
    }

    /// <summary>A curve that is slower everywhere never takes a finding away, and a holding one lies below what the lead bears at every current tried.</summary>
    [Fact]
    public void A_holding_curve_lies_below_what_the_lead_bears() => Gen.Select(Gen.Double[0.5, 3.5], Gen.Double[-1, 2], Gen.Double[-3, 1], Gen.Double[0, 1]).Sample(at =>
    {
        var (first, second, third, where) = at;
        (double, double)[] curve = [(101, 3600), (200, Math.Pow(10, Math.Max(first, second))), (500, Math.Pow(10, Math.Max(second, third))), (1500, Math.Pow(10, third))];
        var check = Judge(On(FaultBoards.Battery(50, 0.03), Drawn(curve), Lead));
        var current = 102 * Math.Pow(1500 / 102.0, where);
        var late = LogLog(current, curve) > Bears(current);
        Assert.NotEqual(Verdict.Undecided, check.Verdict);
        if (check.Verdict == Verdict.Holds)
        {
            Assert.True(!late || LogLog(current, curve) < 1.02 * Bears(current), $"{current} A");
        }
        else if (current > check.Capacity!.Value.Value * 1.001 && current < check.Demand!.Value.Value * 0.999)
        {
            Assert.True(late, $"{current} A");
        }
    }, iter: 200);
}
