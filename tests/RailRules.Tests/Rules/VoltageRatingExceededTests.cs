using CsCheck;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0101. Check values VR-01 and VR-02 of the reference tables; the opening surge V + I sqrt(L/C) is circuit theory.</summary>
public sealed class VoltageRatingExceededTests
{
    private static Fuse Rated(double? volts) => new() { PartNumber = "Weir", DcVoltageRating = volts is { } stated ? stated.Volts() : null };

    private static Rail Board(Element part, double high = 57, double? transient = null, Load? load = null) => new("Rail")
    {
        From = new Supply { Voltage = Band.Of(43.Volts(), high.Volts()), TransientMax = transient is { } peak ? peak.Volts() : null },
        Path = [part],
        Loads = load is null ? [] : [load],
    };

    private static Check Judge(Rail rail, object part) => Apply.Rule<VoltageRatingExceeded>(rail).Of(part);

    /// <summary>VR-01: 58 V against 57 V holds; VR-02: against a 60 V trip level it fails; equality holds.</summary>
    [Theory]
    [InlineData(58, null, Verdict.Holds)]
    [InlineData(58, 60.0, Verdict.Fails)]
    [InlineData(57, null, Verdict.Holds)]
    [InlineData(60, 60.0, Verdict.Holds)]
    public void The_rating_covers_the_highest_voltage(double rating, double? transient, Verdict expected)
    {
        var rail = Board(Rated(rating), transient: transient);
        Assert.Equal(expected, Judge(rail, rail.Path[0]).Verdict);
    }

    [Fact]
    public void The_message_names_part_demand_and_rating()
    {
        var rail = Board(Rated(58), transient: 60);
        Assert.Equal("'Weir' on rail 'Rail' can meet 60 V (transient); it is rated 58 V DC", Judge(rail, rail.Path[0]).Message);
        Assert.Contains("(steady)", Judge(Board(Rated(50)) is var low ? low : rail, low.Path[0]).Message);
    }

    [Fact]
    public void A_share_of_the_rating_may_be_the_policy()
    {
        var rail = Board(Rated(70));
        var strict = new Rail("Rail") { From = rail.From, Path = rail.Path, Policy = new() { VoltageFraction = 0.8 } };
        Assert.Equal(Verdict.Fails, Judge(strict, rail.Path[0]).Verdict);
        Assert.Equal(56, Judge(strict, rail.Path[0]).Capacity!.Value.Value, 1e-9);
    }

    [Fact]
    public void Without_a_transient_maximum_the_steady_one_counts_as_an_assumption()
    {
        var rail = Board(Rated(58));
        Assert.Contains(Judge(rail, rail.Path[0]).Assumptions, text => text.Contains("transient maximum"));
    }

    [Fact]
    public void Each_kind_of_device_has_its_rating()
    {
        Element[] parts =
        [
            new CircuitBreaker { DcVoltageRating = 50.Volts() }, new Switch { DcVoltageRating = 50.Volts() },
            new ElectronicFuse { MaxVoltage = 50.Volts(), AvalancheEnergy = UnitsNet.Energy.FromMillijoules(100) }, new ResettableFuse { MaxVoltage = 50.Volts() },
            new BlockingDiode { ReverseVoltage = 50.Volts() }, new Connector { VoltageRating = 50.Volts() }, new Fuse { VoltageRating = 50.Volts() },
        ];
        Assert.All(parts, part => Assert.Equal(Verdict.Fails, Judge(Board(part), part).Verdict));
        Assert.Empty(Apply.Rule<VoltageRatingExceeded>(Board(new Connector()), Board(new Wire()), Board(new Trace())));
        Assert.Equal(Verdict.Undecided, Judge(Board(parts[0]) is var _ ? Board(Rated(null)) is var open ? open : null! : null!, open.Path[0]).Verdict);
    }

    /// <summary>Parts across the rail: the peak, or the steady voltage behind a clamp or with a surge withstand; RAIL0103 judges the rest.</summary>
    [Fact]
    public void Behind_a_clamp_the_steady_voltage_counts()
    {
        var load = new Load { Name = "pump", MaxVoltage = 58.Volts() };
        var bare = Board(new Wire(), transient: 60, load: load);
        Assert.Equal(Verdict.Fails, Judge(bare, load).Verdict);
        var clamped = new Rail { From = bare.From, Loads = [load], Clamps = [new()] };
        Assert.Equal(Verdict.Holds, Judge(clamped, load).Verdict);
        var withstands = new Load { MaxVoltage = 58.Volts(), SurgeWithstand = 100.Volts() };
        Assert.Equal(Verdict.Holds, Judge(Board(new Wire(), transient: 60, load: withstands), withstands).Verdict);
        var capacitor = new Capacitor { VoltageRating = 50.Volts() };
        Assert.Equal(Verdict.Fails, Judge(new Rail { From = bare.From, Capacitors = [capacitor] }, capacitor).Verdict);
        Assert.Equal([nameof(Load.MaxVoltage)], Judge(Board(new Wire(), load: new Load { Name = "lamp" }) is var open ? open : bare, open.Loads[0]).Names());
    }

    [Fact]
    public void Unknown_clamps_leave_open_what_they_decide()
    {
        var load = new Load { MaxVoltage = 58.Volts() };
        var rail = Board(new Wire(), transient: 60, load: load);
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<VoltageRatingExceeded>(rail, nameof(Rail.Clamps), rail).Of(load).Verdict);
        var strong = new Load { MaxVoltage = 75.Volts() };
        var other = Board(new Wire(), transient: 60, load: strong);
        Assert.Equal(Verdict.Holds, Apply.WithUnknown<VoltageRatingExceeded>(other, nameof(Rail.Clamps), other).Of(strong).Verdict);
    }

    [Fact]
    public void The_input_of_a_converter_is_judged_too()
    {
        var bus = Board(new Wire());
        var converter = new Converter { Input = bus, Output = 12.Volts(), InputMaxVoltage = 50.Volts() };
        Assert.Equal(Verdict.Fails, Apply.Rule<VoltageRatingExceeded>(new Rail { From = converter }).Of(converter).Verdict);
    }

    [Fact]
    public void Between_two_sources_the_higher_one_counts()
    {
        var fuse = Rated(58);
        var rail = new Rail { Feeds = [new() { From = new Supply { Voltage = 48.Volts() }, Path = [fuse] }, new() { From = new Supply { Voltage = 60.Volts() } }] };
        Assert.Equal(60, Judge(rail, fuse).Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void What_is_missing_is_named_unless_it_does_not_matter()
    {
        var fuse = Rated(58);
        Assert.Equal([nameof(Supply.Voltage)], Judge(new Rail { From = new Supply(), Path = [fuse] }, fuse).Names());
        Assert.Equal([nameof(Rail.From)], Judge(new Rail { Path = [fuse] }, fuse).Names());
        var half = new Rail { Feeds = [new() { From = new Supply { Voltage = 60.Volts() }, Path = [fuse] }, new() { From = new Supply() }] };
        Assert.Equal(Verdict.Fails, Judge(half, fuse).Verdict); // one feed alone is too high already
    }

    /// <summary>Opening surge: 57 V + 20 A sqrt(8 µH / 200 µF) = 61 V.</summary>
    [Fact]
    public void An_electronic_switch_meets_its_own_opening_surge()
    {
        Rail Fed(ElectronicFuse part, Rail? above = null) => new()
        {
            From = above ?? new Rail
            {
                From = new Supply { Voltage = Band.Of(43.Volts(), 57.Volts()), TransientMax = 57.Volts(), SourceInductance = 8.Microhenries() },
                Capacitors = [new() { Capacitance = 200.Microfarads(), VoltageRating = 100.Volts() }],
            },
            Path = [part],
        };
        var weak = new ElectronicFuse { TripLevel = 20.Amperes(), ShortCircuitResponse = 0.Seconds(), MaxVoltage = 60.Volts() };
        var check = Judge(Fed(weak), weak);
        Assert.Equal((Verdict.Fails, 61.0), (check.Verdict, Math.Round(check.Demand!.Value.Value, 6)));
        var strong = weak with { MaxVoltage = 61.1.Volts() };
        Assert.Equal(Verdict.Holds, Judge(Fed(strong), strong).Verdict);
        var avalanche = weak with { AvalancheEnergy = UnitsNet.Energy.FromJoules(1) };
        Assert.Equal(Verdict.Holds, Judge(Fed(avalanche), avalanche).Verdict);
        var bare = weak with { MaxVoltage = 100.Volts() };
        var open = Judge(Fed(bare, new Rail { From = new Supply { Voltage = 57.Volts() } }), bare);
        Assert.Equal(Verdict.Undecided, open.Verdict);
        Assert.Contains(nameof(ElectronicFuse.AvalancheEnergy), open.Names());
        var clamped = new Rail
        {
            From = new Supply { Voltage = 57.Volts(), SourceInductance = 8.Microhenries() },
            Clamps = [new() { BreakdownVoltageHot = 70.Volts(), DynamicResistance = 0.5.Ohms() }],
        };
        Assert.Equal(80, Judge(Fed(bare, clamped), bare).Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var rail = Board(Rated(58), load: new Load { MaxVoltage = 100.Volts() });
        foreach (var datum in new[] { nameof(Rail.Path), nameof(Rail.Loads), nameof(Rail.Capacitors) })
        {
            Assert.Contains(Apply.WithUnknown<VoltageRatingExceeded>(rail, datum, rail), check => check.Verdict == Verdict.Undecided && check.Names().Contains(datum));
        }

        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<VoltageRatingExceeded>(rail.From!, nameof(Supply.TransientMax), rail).Of(rail.Path[0]).Verdict);
        Assert.Equal(Verdict.Fails, Apply.WithUnknown<VoltageRatingExceeded>(rail.From!, nameof(Supply.TransientMax), Board(Rated(50)) is var low ? low : rail).Of(low.Path[0]).Verdict);
    }

    /// <summary>A higher voltage never turns failing into holding; margin = rating / voltage.</summary>
    [Fact]
    public void Margins_fall_with_voltage() => Gen.Select(Gen.Double[20, 100], Gen.Double[0, 50], Gen.Double[20, 150]).Sample((high, more, rating) =>
    {
        var (a, b) = (Board(Rated(rating), high), Board(Rated(rating), high + more));
        var (first, second) = (Judge(a, a.Path[0]), Judge(b, b.Path[0]));
        return Math.Abs(first.Margin!.Value - (rating / Math.Max(43, high))) < 1e-9 * 10 && second.Margin <= first.Margin || high < 43;
    });
}
