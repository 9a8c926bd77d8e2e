using CsCheck;
using RailRules.Physics;
using RailRules.Rules;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0301. Rows IR-01 to IR-03 of the reference values, and the boards of rulebook .</summary>
public sealed class InterruptingRatingExceededTests
{
    private static Check Judge(Rail rail, object? part = null) => Apply.Rule<InterruptingRatingExceeded>(rail).Of(part ?? rail.Path[0]);

    private static Supply Bank(double limit = 20) => new()
    {
        Voltage = 54.Volts(),
        CurrentLimit = new() { Level = limit.Amperes(), LimitedBy = LimitedBy.Hardware },
        OutputCapacitance = 10.Millifarads(),
        OutputCapacitorEsr = 10.Milliohms(),
        OutputCapacitorEsl = 2.Microhenries(),
    };

    /// <summary>IR-01: 1000 A and 500 A²s against a bank of 10 mF that gives 2417 A and 1458 A²s (CD-02, CD-09): it melts on the pulse and fails.</summary>
    [Fact]
    public void A_capacitor_pulse_that_melts_the_element_is_duty()
    {
        var check = Judge(FaultBoards.Rail(Bank(), FaultBoards.Fuse(melting: 500)));
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.InRange(check.Demand!.Value.Value, 2000, 2460);
        Assert.Equal("highest voltage, all feeds, cold; a fault behind 'Reed'", check.Corner);
    }

    /// <summary>Rulebook R-06: a link of 5000 A²s does not melt on that pulse; its duty is the sustained current of the source.</summary>
    [Fact]
    public void A_capacitor_pulse_that_does_not_melt_the_element_is_none()
    {
        var check = Judge(FaultBoards.Rail(Bank(), FaultBoards.Fuse(melting: 5000)));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal(20, check.Demand!.Value.Value, 0.1);
    }

    /// <summary>IR-02: 10 kA against a battery of 6811 A (SC-12).</summary>
    [Fact]
    public void A_battery_gives_what_its_resistance_lets_through()
    {
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(1.05 * 48, (0.9 * 0.006) + 0.002), FaultBoards.Fuse(interrupts: 10_000)));
        Assert.Equal(Verdict.Holds, check.Verdict);
        Assert.Equal(10_000 / 6810.811, check.Margin!.Value, 1e-3);
    }

    /// <summary>IR-03: a low-breaking 2 A fuse (35 A) against 137 A (SC-24).</summary>
    [Fact]
    public void The_message_names_part_demand_and_rating()
    {
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(40.5, 40.5 / 137), FaultBoards.Fuse(2, 35, 250)));
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Equal("'Reed' on rail 'Rail' may have to interrupt 137 A, above its 35 A interrupting rating at 250 V DC", check.Message);
    }

    /// <summary>In the return flows what flows in the path: 40.5 V behind 40.5 V / 137 A gives 137 A at the beginning of the path (SC-24). Ohm's law.</summary>
    [Theory]
    [InlineData(35, Verdict.Fails)]
    [InlineData(137.1, Verdict.Holds)]
    public void A_device_in_the_return_interrupts_the_same_fault(double interrupts, Verdict expected)
    {
        var link = FaultBoards.Fuse(2, interrupts, 250);
        var rail = new Rail("Rail") { From = FaultBoards.Battery(40.5, 40.5 / 137), Path = [FaultBoards.Wire(0.001, 35)], Return = Return.Of(link), Surroundings = Apply.Bench };
        var check = Judge(rail, link);
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(137, check.Demand!.Value.Value, 0.1);
    }

    [Fact]
    public void Equality_holds_and_a_share_of_the_rating_may_be_the_policy()
    {
        var battery = FaultBoards.Battery(50, 0.05);
        Assert.Equal(Verdict.Holds, Judge(FaultBoards.Rail(battery, FaultBoards.Fuse(interrupts: 1000.01))).Verdict);
        var strict = new Rail("Rail") { From = battery, Path = [FaultBoards.Fuse(interrupts: 1200)], Return = Return.Mirrored, Policy = new() { InterruptingFraction = 0.8 } };
        Assert.Equal(Verdict.Fails, Judge(strict).Verdict);
    }

    /// <summary>The device's own resistance does not count in what it must interrupt.</summary>
    [Fact]
    public void The_devices_own_resistance_is_left_out()
    {
        var fuse = FaultBoards.Fuse() with { ColdResistance = 1.Ohms() };
        Assert.Equal(1000, Judge(FaultBoards.Rail(FaultBoards.Battery(50, 0.05), fuse)).Demand!.Value.Value, 0.1);
    }

    /// <summary>The path between source and device counts cold: Band.Min, at 0 °C on the bench (0.00393/K), both ways.</summary>
    [Fact]
    public void The_path_counts_cold()
    {
        var rail = FaultBoards.Rail(FaultBoards.Battery(50, 0.05), FaultBoards.Wire(0.05, 100), FaultBoards.Fuse());
        var cold = 0.05 * (1 + (0.00393 * (0 - 20)));
        Assert.Equal(50 / (0.05 + (2 * cold)), Judge(rail, rail.Path[1]).Demand!.Value.Value, 0.1);
    }

    /// <summary>Case-018's question: a common fuse meets both banks, one at each bank meets one bank only, for a fault on either side of it.</summary>
    [Fact]
    public void A_fuse_in_a_feed_meets_the_other_feed()
    {
        Feed From(string name, double ohms) => new() { From = FaultBoards.Battery(13.6, ohms, name: name), Path = [FaultBoards.Fuse(interrupts: 20_000) with { PartNumber = name }], Return = Return.Mirrored };
        var rail = new Rail("Bar") { Feeds = [From("A", 0.0012), From("B", 0.0006)], Return = Apply.NoReturn };
        var checks = Apply.Rule<InterruptingRatingExceeded>(rail);

        // A is met by B's 22.7 kA when the fault lies before it; B by its own 22.7 kA when it lies behind it.
        Assert.All(checks, check => Assert.Equal(13.6 / 0.0006, check.Demand!.Value.Value, 50.0));
        Assert.Contains("a fault before 'A'", checks[0].Corner);
        Assert.Contains("a fault behind 'B'", checks[1].Corner);
    }

    [Fact]
    public void A_blocking_diode_keeps_the_other_feed_away()
    {
        Feed From(string name, double ohms) => new()
        {
            From = FaultBoards.Battery(13.6, ohms, name: name),
            Path = [FaultBoards.Fuse(interrupts: 20_000) with { PartNumber = name }, new BlockingDiode { ForwardDrop = 0.Volts() }],
            Return = Return.Mirrored,
        };
        var rail = new Rail("Bar") { Feeds = [From("A", 0.0012), From("B", 0.0006)], Return = Apply.NoReturn };
        Assert.Equal(13.6 / 0.0012, Apply.Rule<InterruptingRatingExceeded>(rail)[0].Demand!.Value.Value, 50.0);
    }

    [Fact]
    public void A_limit_made_by_firmware_is_not_credited()
    {
        double Demand(LimitedBy? by, bool credit = false) => Judge(new Rail("Rail")
        {
            From = FaultBoards.Limited(50, 20, by, 0.05),
            Path = [FaultBoards.Fuse(melting: 50_000)],
            Return = Return.Mirrored,
            Policy = new() { CreditFirmwareLimits = credit },
        }).Demand!.Value.Value;

        Assert.Equal(20, Demand(LimitedBy.Hardware), 0.1);
        Assert.Equal(1000, Demand(LimitedBy.Firmware), 1.0);
        Assert.Equal(20, Demand(LimitedBy.Firmware, credit: true), 0.1);
    }

    /// <summary>A switch-mode source whose resistance is not stated is no stiff source: its level from the first instant (rulebook R-10).</summary>
    [Fact]
    public void A_limited_source_gives_its_highest_level()
    {
        var check = Judge(FaultBoards.Rail(FaultBoards.Limited(54, 40, null), FaultBoards.Fuse()));
        Assert.Equal(40, check.Demand!.Value.Value, 0.1);
        Assert.Contains(check.Assumptions, text => text.Contains("hardware"));
    }

    [Fact]
    public void A_source_of_unknown_resistance_is_bounded_by_the_path()
    {
        var source = new Supply { Name = "Plant", Voltage = 50.Volts() };
        var rail = FaultBoards.Rail(source, FaultBoards.Wire(0.05, 100), FaultBoards.Fuse(interrupts: 1000));
        Assert.Equal(Verdict.Holds, Judge(rail, rail.Path[1]).Verdict);
        var weak = FaultBoards.Rail(source, FaultBoards.Wire(0.05, 100), FaultBoards.Fuse(interrupts: 100));
        Assert.Equal(Verdict.Undecided, Judge(weak, weak.Path[1]).Verdict);
        Assert.Contains("SourceResistance", Judge(weak, weak.Path[1]).Names());
    }

    [Fact]
    public void Without_melting_data_the_peak_counts_where_it_holds()
    {
        Assert.Equal(Verdict.Holds, Judge(FaultBoards.Rail(Bank(), FaultBoards.Fuse(interrupts: 3000))).Verdict);
        var open = Judge(FaultBoards.Rail(Bank(), FaultBoards.Fuse(interrupts: 1000)));
        Assert.Equal(Verdict.Undecided, open.Verdict);
        Assert.Contains("MeltingIntegral", open.Names());
        Assert.Equal(Verdict.Fails, Judge(FaultBoards.Rail(Bank(50), FaultBoards.Fuse(interrupts: 40))).Verdict);
    }

    [Fact]
    public void A_device_without_interrupting_rating_is_undecided()
    {
        var rail = FaultBoards.Rail(FaultBoards.Battery(50, 0.05), new Fuse { PartNumber = "Reed" });
        Assert.Equal(["InterruptingRatings"], Judge(rail).Names());
        var ac = FaultBoards.Rail(FaultBoards.Battery(50, 0.05), new Fuse { InterruptingRatings = [new() { Current = 10.Kiloamperes(), Voltage = 250.Volts(), Kind = CurrentKind.Ac }] });
        Assert.Equal(Verdict.Undecided, Judge(ac).Verdict);
    }

    /// <summary>A rating at a lower voltage does not count; whether any does is RAIL0306's question.</summary>
    [Fact]
    public void Only_ratings_at_this_voltage_count()
    {
        var fuse = FaultBoards.Fuse() with
        {
            InterruptingRatings = [new() { Current = 5.Kiloamperes(), Voltage = 32.Volts() }, new() { Current = 500.Amperes(), Voltage = 80.Volts() }],
        };
        Assert.Equal(500, Judge(FaultBoards.Rail(FaultBoards.Battery(60, 0.06), fuse)).Capacity!.Value.Value, 0.1);
        var low = FaultBoards.Fuse() with { InterruptingRatings = [new() { Current = 5.Kiloamperes(), Voltage = 32.Volts() }] };
        Assert.Empty(Apply.Rule<InterruptingRatingExceeded>(FaultBoards.Rail(FaultBoards.Battery(60, 0.06), low)));
        Assert.Equal(Verdict.Fails, Judge(FaultBoards.Rail(FaultBoards.Battery(60, 0.006), low)).Verdict);
    }

    [Fact]
    public void A_resettable_fuse_is_judged_by_its_largest_fault_current()
    {
        var rail = FaultBoards.Rail(FaultBoards.Battery(12.6, 0.2), new ResettableFuse { PartNumber = "Poly", MaxFaultCurrent = 100.Amperes() });
        Assert.Equal(63, Judge(rail).Demand!.Value.Value, 0.01);
        Assert.Equal(Verdict.Fails, Judge(FaultBoards.Rail(FaultBoards.Battery(12.6, 0.1), rail.Path[0]), rail.Path[0]).Verdict);
    }

    /// <summary>HS-11: 50 A level, 60 V, 1 µH, 1 µs: 110 A.</summary>
    [Fact]
    public void An_electronic_fuse_overshoots_by_voltage_over_inductance()
    {
        var part = new ElectronicFuse { PartNumber = "Gate", ShortCircuitLevel = 50.Amperes(), ShortCircuitResponse = 1.Microseconds(), MaxFaultCurrent = 100.Amperes(), OnResistance = 0.Ohms() };
        var check = Judge(FaultBoards.Rail(FaultBoards.Battery(60, 1e-4, 1e-6), part));
        Assert.Equal(110, check.Demand!.Value.Value, 0.1);
        Assert.Equal(Verdict.Fails, check.Verdict);
        Assert.Empty(Apply.Rule<InterruptingRatingExceeded>(FaultBoards.Rail(FaultBoards.Battery(60, 1e-4), part with { MaxFaultCurrent = null })));
    }

    /// <summary>Eight sleds on a bus: the input capacitors of the seven others feed a fault in the first. Against the same circuit drawn branch by branch.</summary>
    [Fact]
    public void The_capacitors_of_other_rails_feed_the_fault()
    {
        var bus = new Rail("Bus") { From = FaultBoards.Battery(54, 0.01, 5e-6), Path = [FaultBoards.Wire(0.001, 200)], Return = Apply.NoReturn, Surroundings = Apply.At(20) };
        Rail Sled(int n, double farads) => new($"Sled {n}")
        {
            From = bus,
            Path = [FaultBoards.Fuse(interrupts: 50_000), FaultBoards.Wire(0.002, 50)],
            Return = Apply.NoReturn,
            Loads = [new() { InputCapacitance = UnitsNet.ElectricCapacitance.FromFarads(farads), InputCapacitorEsr = 10.Milliohms(), InputCapacitorEsl = 100.Nanohenries() }],
        };
        var sleds = Enumerable.Range(1, 8).Select(n => Sled(n, n == 8 ? 2e-3 : 1e-3)).ToArray();
        var demand = Judge(sleds, 0);

        var circuit = new FaultNetwork();
        var end = circuit.AddNode();
        circuit.AddBranch(0, end, 0.01 + (0.001 * (1 + (0.00393 * -20))), 5e-6, 54);
        for (var n = 2; n <= 8; n++)
            circuit.AddCapacitor(0, end, n == 8 ? 2e-3 : 1e-3, 54, 0.01 + (0.002 * (1 + (0.00393 * -20))), 100e-9);

        var fault = circuit.AddBranch(end, 0, 1e-7, 1e-10);
        Assert.Equal(circuit.Solve()!.Value[fault].PeakCurrent, demand, 0.01 * demand);

        static double Judge(Rail[] rails, int index)
        {
            var part = new Network(rails);
            return part.LargestFault(part.Parts(rails[index]).First(), 0, false, false).Peak;
        }
    }

    [Fact]
    public void More_fault_current_never_turns_a_failing_check_into_holding() =>
        Gen.Select(Gen.Double[1e-4, 0.1], Gen.Double[1e-4, 0.1], Gen.Double[100, 20_000], Gen.Double[10, 1e5]).Sample(at =>
        {
            var (a, b, interrupts, melting) = at;
            var (weak, strong) = (Math.Max(a, b), Math.Min(a, b));
            Check With(double ohms) => Judge(FaultBoards.Rail(FaultBoards.Battery(54, ohms, 2e-6), FaultBoards.Fuse(interrupts: interrupts, melting: melting)));
            Assert.False(With(weak).Verdict == Verdict.Fails && With(strong).Verdict == Verdict.Holds);
        }, iter: 50);

    /// <summary>Bounding is sound: where a board with absent data is decided, it is decided alike for any value inside the bounds.</summary>
    [Fact]
    public void What_bounding_decides_any_value_decides() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[1e-3, 0.5], Gen.Double[20, 2000], Gen.Bool, Gen.Bool).Sample(at =>
        {
            var (source, wire, interrupts, knowsSource, knowsWire) = at;
            Check With(bool whole) => Judge(new Rail("Rail")
            {
                From = new Supply { Voltage = 54.Volts(), SourceResistance = whole || knowsSource ? source.Ohms() : null, SourceInductance = UnitsNet.ElectricInductance.Zero },
                Path = [FaultBoards.Fuse(interrupts: interrupts), new Wire { Resistance = wire.Ohms() }],
                Return = whole || knowsWire ? Return.OfResistance(0.Ohms()) : null,
            });
            var partial = With(false).Verdict;
            Assert.True(partial == Verdict.Undecided || partial == With(true).Verdict);
        }, iter: 100);

    [Fact]
    public void What_could_not_be_worked_out_is_undecided()
    {
        var rail = FaultBoards.Rail(new Supply { Voltage = 54.Volts() }, FaultBoards.Fuse());
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<InterruptingRatingExceeded>(rail.From!, nameof(Supply.CurrentLimit), rail).Of(rail.Path[0]).Verdict);
        var whole = FaultBoards.Rail(FaultBoards.Limited(54, 40), FaultBoards.Fuse());
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<InterruptingRatingExceeded>(whole.From!, nameof(Supply.OutputCapacitance), whole).Of(whole.Path[0]).Verdict);
        Assert.Contains(Apply.WithUnknown<InterruptingRatingExceeded>(whole, nameof(RailRules.Rail.Path), whole), check => check.Verdict == Verdict.Undecided);
    }
}
