using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>
/// RAIL0401. Charge through a resistance: C V²/(2 R), at a constant limit I C V (closed forms, rulebook R-14); shares of the melting I²t: R-15, rows PC of the reference tables;
/// case-023, case-025, case-072 and case-083 are boards of their own.
/// </summary>
public sealed class InrushAgesFuseTests
{
    private static readonly Fuse Reed = new() { PartNumber = "Reed", RatedCurrent = 20.Amperes(), MeltingIntegral = 300.AmpereSquaredSeconds(), ColdResistance = 0.Ohms() };

    private static Load Board(double farads, double? esr = 0, double? starts = 10_000) =>
        new() { Name = "Board", InputCapacitance = farads.Farads(), InputCapacitorEsr = esr?.Ohms(), StartsInLife = starts };

    private static Supply Stiff(double volts, double ohms = 0) => new() { Name = "Plant", Voltage = volts.Volts(), SourceResistance = ohms.Ohms() };

    private static Rail RailOf(Source source, double ohms, Load load, Fuse? fuse = null, DesignPolicy? policy = null, params Element[] more) => new("Rail")
    {
        From = source,
        Path = [fuse ?? Reed, .. more],
        Return = Return.OfResistance(ohms.Ohms()),
        Loads = [load],
        Surroundings = Apply.Bench,
        Policy = policy,
    };

    private static Check Judge(Rail rail) => Apply.Rule<InrushAgesFuse>(rail).Of(rail.Path.OfType<Fuse>().Single());

    /// <summary>2.2 mF, 60 V, 40 mΩ: 99 A²s, which for 10 000 starts needs 341 A²s (rulebook R-14).</summary>
    [Fact]
    public void The_published_example_fails_at_340_and_holds_at_342()
    {
        var check = Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), Reed with { MeltingIntegral = 340.AmpereSquaredSeconds() }));
        Assert.Equal((Verdict.Fails, 99.0), (check.Verdict, Math.Round(check.Demand!.Value.Value, 1)));
        Assert.Equal("each start sends 99 A²s through 'Reed' on rail 'Rail'; 10000 starts allow 0.29 of 340 A²s, 98.6 A²s", check.Message);
        Assert.Equal(Verdict.Holds, Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), Reed with { MeltingIntegral = 342.AmpereSquaredSeconds() })).Verdict);
    }

    /// <summary>54 V and 50 mΩ: 64.15 A²s (row PI-09).</summary>
    [Fact]
    public void Everything_in_series_counts()
    {
        var rail = RailOf(Stiff(54, 0.02), 0.01, Board(2.2e-3, 0.012), Reed with { ColdResistance = Band.Of(8.Milliohms(), 11.Milliohms()) });
        Assert.Equal(64.152, Judge(rail).Demand!.Value.Value, 1e-2);
    }

    /// <summary>At a constant limit the integral is I C V: 10 A × 1 mF × 48 V = 0.48 A²s.</summary>
    [Fact]
    public void A_limited_source_sends_its_limit_until_charged()
    {
        var source = new Supply { Voltage = 48.Volts(), CurrentLimit = new() { Level = 10.Amperes() } };
        Assert.Equal(0.48, Judge(RailOf(source, 0, Board(1e-3))).Demand!.Value.Value, 1e-4);

        // Through 1 Ω the limit ends at 38 V; the rest is an exponential: 10² × 3.8 ms + 1 mF × 10²/2.
        Assert.Equal(0.38 + 0.05, Judge(RailOf(source, 1, Board(1e-3))).Demand!.Value.Value, 1e-4);
    }

    /// <summary>Its output capacitors give more than its limit: 10 mF and 1 mF share 0.909 mF, 48²/(2 × 0.1 Ω) × 0.909 mF = 10.5 A²s; the limit adds at most twice 10 A times the shared charge.</summary>
    [Fact]
    public void Output_capacitors_of_a_limited_source_are_charged()
    {
        var source = new Supply { Voltage = 48.Volts(), CurrentLimit = new() { Level = 10.Amperes() }, OutputCapacitance = 10.Millifarads(), OutputCapacitorEsr = 0.05.Ohms() };
        var demand = Judge(RailOf(source, 0.05, Board(1e-3))).Demand!.Value.Value;
        Assert.InRange(demand, 10.47, 10.47 + (2 * 10 * 0.909e-3 * 48));
    }

    [Theory]
    [InlineData(50, 0.48)]
    [InlineData(1000, 0.38)]
    [InlineData(10_000, 0.29)]
    [InlineData(100_000, 0.22)]
    public void The_share_falls_with_the_number_of_starts(double starts, double share) =>
        Assert.Equal(share * 300, Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3, starts: starts))).Capacity!.Value.Value, 1e-9);

    [Fact]
    public void The_pulse_life_of_the_part_goes_first()
    {
        var fuse = Reed with { PulseLife = [new(1000, 0.8), new(100_000, 0.6)] };
        Assert.Equal(0.7 * 300, Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), fuse)).Capacity!.Value.Value, 1e-9);
        Assert.Equal(Verdict.Holds, Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), fuse)).Verdict);
    }

    [Fact]
    public void More_starts_than_the_table_knows_need_the_pulse_life_of_the_part()
    {
        Assert.Equal([nameof(Fuse.PulseLife)], Judge(RailOf(Stiff(60), 0.4, Board(2.2e-3, starts: 1e6))).Names());
        Assert.Equal(Verdict.Fails, Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3, starts: 1e6))).Verdict);
    }

    /// <summary>99 A²s of 300: too much for 10 000 starts, not for 100. Unstated starts are between 1 and 100 000.</summary>
    [Fact]
    public void Unstated_starts_are_bounded()
    {
        Assert.Equal([nameof(Load.StartsInLife)], Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3, starts: null))).Names());
        Assert.Equal(Verdict.Holds, Judge(RailOf(Stiff(60), 0.08, Board(2.2e-3, starts: null))).Verdict);
        Assert.Equal(Verdict.Fails, Judge(RailOf(Stiff(60), 0.02, Board(2.2e-3, starts: null))).Verdict);
    }

    [Fact]
    public void Unknown_resistances_are_bounded()
    {
        Assert.Equal([nameof(Load.InputCapacitorEsr)], Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3, esr: null))).Names());
        Assert.Equal(Verdict.Holds, Judge(RailOf(Stiff(60), 0.4, Board(2.2e-3, esr: null))).Verdict);
        Assert.Equal([nameof(Supply.SourceResistance)], Judge(RailOf(new Supply { Voltage = 60.Volts() }, 0.04, Board(2.2e-3))).Names());
        Assert.Equal([nameof(Rail.Return)], Judge(RailOf(Stiff(60), 0, Board(2.2e-3)) with { Return = null }).Names());
        Assert.Equal([nameof(Fuse.MeltingIntegral)], Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), Reed with { MeltingIntegral = null })).Names());
    }

    /// <summary>10 A for 48 ms (limit, 10 mF, 48 V): I²t is no measure of so long a pulse. The edge melts in 48 ms at 100 A × (10/48)^(1/2).</summary>
    [Fact]
    public void A_long_pulse_is_held_against_the_melting_edge()
    {
        var source = new Supply { Voltage = 48.Volts(), CurrentLimit = new() { Level = 10.Amperes() } };
        var fuse = Reed with { MeltingIntegral = 1.AmpereSquaredSeconds(), Curve = [new(10.Amperes(), 1.Seconds(), null), new(100.Amperes(), 10.Milliseconds(), null)] };
        var check = Judge(RailOf(source, 0, Board(10e-3), fuse));
        Assert.Equal((Verdict.Holds, "A"), (check.Verdict, check.Demand!.Value.Unit));
        Assert.Equal(Math.Sqrt(0.29) * 100 * Math.Sqrt(10.0 / 48), check.Capacity!.Value.Value, 1e-2);

        // Without a curve the melting I²t is a lower bound: enough, or the curve is asked for.
        Assert.Equal([nameof(Fuse.Curve)], Judge(RailOf(source, 0, Board(10e-3), fuse with { Curve = [] })).Names());
        Assert.Equal(Verdict.Holds, Judge(RailOf(source, 0, Board(10e-3), fuse with { Curve = [], MeltingIntegral = 17.AmpereSquaredSeconds() })).Verdict);
    }

    [Fact]
    public void An_inrush_limiter_is_cold()
    {
        var limiter = new InrushLimiter { ColdResistance = 5.Ohms(), HotResistance = 0.15.Ohms() };
        Assert.Equal(2.2e-3 * 3600 / (2 * 5.04), Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), null, null, limiter)).Demand!.Value.Value, 1e-4);
    }

    /// <summary>2 A × 2.2 mF × 60 V = 0.264 A²s, whatever the resistances.</summary>
    [Fact]
    public void An_electronic_fuse_in_the_path_bounds_the_current()
    {
        var electronic = new ElectronicFuse { StartCurrent = Band.Of(1.Amperes(), 2.Amperes()), OnResistance = 1.Milliohms() };
        var check = Judge(RailOf(Stiff(60), 0, Board(2.2e-3), null, new() { AdiabaticLimit = 1.Seconds() }, electronic));
        Assert.Equal(0.264, check.Demand!.Value.Value, 1e-3);
        Assert.Equal([nameof(ElectronicFuse.StartCurrent)], Judge(RailOf(Stiff(60), 0.04, Board(2.2e-3), null, null, electronic with { StartCurrent = null })).Names());
    }

    [Fact]
    public void All_capacitors_below_start_at_once_unless_the_policy_says_otherwise()
    {
        var bus = RailOf(Stiff(60), 0.04, Board(0)) with { Loads = [] };
        Rail Slot(Rail from) => new("Slot") { From = from, Return = Apply.NoReturn, Loads = [Board(1.1e-3)] };
        Assert.Equal(99, Apply.Rule<InrushAgesFuse>(bus, Slot(bus), Slot(bus)).Of(Reed).Demand!.Value.Value, 1e-2);
        var alone = bus with { Policy = new() { StartsCoincide = false } };
        Assert.Equal(49.5, Apply.Rule<InrushAgesFuse>(alone, Slot(alone), Slot(alone)).Of(Reed).Demand!.Value.Value, 1e-2);
    }

    /// <summary>A branch that is closed onto a live bus: the bank of the bus gives what the limited source cannot.</summary>
    [Fact]
    public void A_charged_bank_before_the_fuse_counts()
    {
        var bus = new Rail("Bus")
        {
            From = new Supply { Voltage = 48.Volts(), CurrentLimit = new() { Level = 5.Amperes() } },
            Capacitors = [new() { Capacitance = 1.Farads(), Esr = 0.Ohms() }],
        };
        var branch = RailOf(bus, 0.1, Board(1e-3));
        Assert.Equal(1e-3 * 48 * 48 / 0.2, Apply.Rule<InrushAgesFuse>(bus, branch).Of(Reed).Demand!.Value.Value, 0.02);
    }

    [Fact]
    public void A_fuse_in_a_parallel_group_takes_its_share()
    {
        var other = Reed with { PartNumber = "Other" };
        var group = new ParallelGroup { Branches = [[Reed with { ColdResistance = 2.Milliohms() }], [other with { ColdResistance = 2.Milliohms() }]] };
        var rail = RailOf(Stiff(60), 0.039, Board(2.2e-3)) with { Path = [group] };
        Assert.All(Apply.Rule<InrushAgesFuse>(rail), check => Assert.Equal(99.0 / 4, check.Demand!.Value.Value, 1e-2));
        Assert.Equal(2, Apply.Rule<InrushAgesFuse>(rail).Length);
    }

    /// <summary>A load that draws while the capacitor is charged adds 2 I C V.</summary>
    [Fact]
    public void A_load_that_is_on_adds_its_part()
    {
        var load = Board(2.2e-3) with { Current = 5.Amperes() };
        Assert.Equal(99, Judge(RailOf(Stiff(60), 0.04, load)).Demand!.Value.Value, 1e-2);
        Assert.Equal(99 + (2 * 5 * 2.2e-3 * 60), Judge(RailOf(Stiff(60), 0.04, load with { EnablesAt = EnablesAt.Zero })).Demand!.Value.Value, 1e-2);
        Assert.Equal(99, Judge(RailOf(Stiff(60), 0.04, load with { EnablesAt = EnablesAt.PowerGood })).Demand!.Value.Value, 1e-2);
    }

    [Fact]
    public void What_holds_no_charge_and_what_is_no_fuse_is_no_check()
    {
        Assert.Empty(Apply.Rule<InrushAgesFuse>(RailOf(Stiff(60), 0.04, new Load { Current = 5.Amperes() })));
        Assert.Empty(Apply.Rule<InrushAgesFuse>(RailOf(Stiff(60), 0.04, Board(2.2e-3)) with { Path = [new ElectronicFuse { OnResistance = 1.Milliohms() }] }));
        Assert.Empty(Apply.Rule<InrushAgesFuse>(RailOf(Stiff(60), 0.04, Board(2.2e-3)) with { Path = [new ResettableFuse { HoldCurrent = 5.Amperes() }] }));
    }

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var load = Board(2.2e-3);
        var rail = RailOf(Stiff(60), 0.4, load);
        foreach (var (owner, datum) in new (object, string)[] { (load, nameof(Load.InputCapacitorEsr)), (load, nameof(Load.StartsInLife)), (Reed, nameof(Fuse.PulseLife)), (DesignPolicy.Default, nameof(DesignPolicy.PulseShare)) })
        {
            var hidden = load with { InputCapacitorEsr = datum == nameof(Load.InputCapacitorEsr) ? null : load.InputCapacitorEsr, StartsInLife = datum == nameof(Load.StartsInLife) ? null : load.StartsInLife };
            var check = Apply.WithUnknown<InrushAgesFuse>(ReferenceEquals(owner, load) ? hidden : owner, datum, RailOf(Stiff(60), datum == nameof(Load.InputCapacitorEsr) ? 0.04 : 0.08, hidden)).Of(Reed);
            Assert.Equal((Verdict.Undecided, datum), (check.Verdict, check.Missing[0].Place.Datum));
        }

        Assert.Contains(Apply.WithUnknown<InrushAgesFuse>(rail, nameof(Rail.Loads), rail), check => check.Names().Contains(nameof(Rail.Loads)));
    }

    private static readonly Gen<(double Farads, double Ohms, double Volts, double Starts)> Boards =
        Gen.Select(Gen.Double[-5, -2], Gen.Double[-2.5, 0.5], Gen.Double[5, 400], Gen.Double[0, 5]).Select((c, r, v, n) => (Math.Pow(10, c), Math.Pow(10, r), v, Math.Pow(10, n)));

    [Fact]
    public void More_starts_never_heal() => Gen.Select(Boards, Gen.Double[1, 1000]).Sample((board, more) =>
    {
        Check At(double starts) => Judge(RailOf(Stiff(board.Volts), board.Ohms, Board(board.Farads, starts: starts)));
        var (few, many) = (At(board.Starts), At(Math.Min(1e5, board.Starts * more)));

        // Undecided has no margin: a pulse above the adiabatic limit of a fuse without a curve.
        return (few.Margin is null || many.Margin is null || many.Margin <= few.Margin * (1 + 1e-9)) && (few.Verdict != Verdict.Fails || many.Verdict == Verdict.Fails) && (many.Verdict != Verdict.Holds || few.Verdict == Verdict.Holds);
    });

    [Fact]
    public void A_larger_capacitor_never_asks_for_less() => Gen.Select(Boards, Gen.Double[1, 30], Gen.Bool).Sample((board, more, limited) =>
    {
        Source source = limited ? new Supply { Voltage = board.Volts.Volts(), CurrentLimit = new() { Level = 5.Amperes() } } : Stiff(board.Volts);
        double At(double farads) => new Network([RailOf(source, board.Ohms, Board(farads))]) is var network && network.InrushOf(network.Parts(network.Rails[0]).First())!.Most is var end ? end.Integral : 0;
        return At(board.Farads) <= At(board.Farads * more) * (1 + 1e-6);
    });

    [Fact]
    public void Through_a_resistance_it_is_the_closed_form_in_any_units() => Boards.Sample(board =>
    {
        var load = new Load { InputCapacitance = ElectricCapacitance.FromMicrofarads(board.Farads * 1e6), InputCapacitorEsr = ElectricResistance.FromMicroohms(0), StartsInLife = board.Starts };
        var one = Judge(RailOf(Stiff(board.Volts), board.Ohms, Board(board.Farads, starts: board.Starts), Reed with { Curve = [] }, new() { AdiabaticLimit = 1e3.Seconds() }));
        var other = Judge(RailOf(new Supply { Voltage = ElectricPotential.FromMillivolts(board.Volts * 1e3), SourceResistance = 0.Ohms() }, board.Ohms, load, Reed, new() { AdiabaticLimit = 1e3.Seconds() }));
        var exact = board.Farads * board.Volts * board.Volts / (2 * board.Ohms);
        return Math.Abs(one.Demand!.Value.Value - exact) < 1e-3 * exact && Math.Abs(other.Margin!.Value - one.Margin!.Value) < 1e-6 * one.Margin.Value;
    });

    /// <summary>Whenever bounds give a verdict, every completion gives the same.</summary>
    [Fact]
    public void Verdicts_by_bounds_are_those_of_every_completion() => Gen.Select(Boards, Gen.Double[0, 0.2], Gen.Double[0, 0.025], Gen.Double[0, 5]).Sample((board, esr, own, starts) =>
    {
        var fuse = Reed with { ColdResistance = null };
        var bounded = Judge(RailOf(Stiff(board.Volts), board.Ohms, Board(board.Farads, null, null), fuse, new() { AdiabaticLimit = 1e3.Seconds() }));
        var complete = Judge(RailOf(Stiff(board.Volts), board.Ohms, Board(board.Farads, esr, Math.Pow(10, starts)), fuse with { ColdResistance = own.Ohms() }, new() { AdiabaticLimit = 1e3.Seconds() }));
        return bounded.Verdict == Verdict.Undecided || bounded.Verdict == complete.Verdict;
    });
}
