using System.Text.Json;
using CsCheck;
using RailRules.Rules;
using RailRules.Tests.Checks;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0504. The greatest power of a single loop is V²/(4R) (circuit theory); the collapse cases of the circuit simulation.</summary>
public sealed class NoOperatingPointTests
{
    private static readonly JsonDocument Cases = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Reference", "spice", "loadflow.json")));

    private static Rail Loop(double volts, double ohms, double watts, double? minimum = null) => new("Loop")
    {
        From = new Supply { Name = "Plant", Voltage = Band.Of(volts.Volts(), (volts * 1.2).Volts()) },
        Path = [new SenseResistor { Name = "Path", Resistance = ohms.Ohms() }],
        Return = Apply.NoReturn,
        Surroundings = Apply.Bench,
        Loads = [new() { Name = "Sled", Power = watts.Watts(), MinVoltage = minimum?.Volts() }],
    };

    private static Check Judge(params Rail[] rails) => Apply.Rule<NoOperatingPoint>(rails).Single(check => ReferenceEquals(check.Rail, rails[0]));

    [Theory]
    [InlineData(43, 0.5, 600, Verdict.Holds)]
    [InlineData(43, 0.5, 924.5, Verdict.Holds)]
    [InlineData(43, 0.5, 924.6, Verdict.Fails)]
    public void A_single_loop_delivers_a_quarter_of_its_short_circuit_power(double volts, double ohms, double watts, Verdict expected)
    {
        var check = Judge(Loop(volts, ohms, watts));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(volts * volts / (4 * ohms), check.Capacity!.Value.Value, 1e-7 * watts);
        Assert.Equal(watts, check.Demand!.Value.Value, 1e-9);
    }

    [Fact]
    public void The_message_names_path_and_powers() =>
        Assert.Equal("rail 'Loop' cannot deliver 1.2 kW at 43 V: its path of 500 mΩ collapses at 924 W", Judge(Loop(43, 0.5, 1200)).Message);

    /// <summary>Switching off at its lowest voltage is no operating point.</summary>
    [Fact]
    public void A_lowest_voltage_makes_no_solution() => Assert.Equal(Verdict.Fails, Judge(Loop(43, 0.5, 1000, minimum: 40)).Verdict);

    /// <summary>Heating conductors are found by bisection, with the same answer where they do not heat.</summary>
    [Fact]
    public void Bisection_and_closed_form_agree() => Gen.Select(Gen.Double[10, 60], Gen.Double[0.01, 1], Gen.Double[1, 500]).Sample((volts, ohms, watts) =>
    {
        var wire = new Wire { Resistance = ohms.Ohms(), Ampacity = 1.Kiloamperes(), TemperatureLimit = 20.00001.Celsius() };
        var rail = Loop(volts, 0, watts) with { Path = [wire], Surroundings = new() { Ambient = 20.Celsius() } };
        var (closed, found) = (Judge(Loop(volts, ohms, watts)), Judge(rail));
        Assert.Equal(closed.Capacity!.Value.Value, found.Capacity!.Value.Value, 1e-6 * closed.Capacity.Value.Value);
    });

    [Fact]
    public void Constant_current_and_conductance_take_their_share()
    {
        // 48 V behind 1 Ω with 8 A: 40 V behind 1 Ω; with 4 Ω across: 32 V behind 0.8 Ω; 32²/3.2 = 320 W.
        var rail = Loop(48, 1, 100);
        rail = rail with { Loads = [rail.Loads[0], new() { Current = 8.Amperes() }, new() { Resistance = 4.Ohms() }] };
        Assert.Equal(320, Judge(rail).Capacity!.Value.Value, 1e-6);
    }

    [Fact]
    public void One_cause_is_found_where_it_lies()
    {
        var bus = Loop(48, 0.01, 1);
        bus = bus with { Loads = [] };
        Rail Branch(string name, double ohms) => new(name) { From = bus, Path = [new SenseResistor { Resistance = ohms.Ohms() }], Return = Apply.NoReturn, Loads = [new() { Power = 600.Watts() }] };
        var (good, bad) = (Branch("Good", 0.01), Branch("Bad", 2));
        var checks = Apply.Rule<NoOperatingPoint>(bus, good, bad);
        Assert.Equal([("Good", Verdict.Holds), ("Bad", Verdict.Fails)], checks.Select(check => (check.Rail!.Name, check.Verdict)));
    }

    [Fact]
    public void It_silences_current_and_voltage_of_its_rail()
    {
        var rail = Loop(43, 0.5, 1200, minimum: 40);
        rail = rail with { Path = [.. rail.Path, new Fuse { Name = "F1", RatedCurrent = 5.Amperes(), ColdResistance = 0.Ohms() }] };
        var rules = Engine.Check([rail]).Where(check => check.Verdict == Verdict.Fails).Select(check => check.Rule).ToList();
        Assert.Contains("RAIL0504", rules);
        Assert.DoesNotContain("RAIL0201", rules);
        Assert.DoesNotContain("RAIL0501", rules);
    }

    [Fact]
    public void An_unknown_resistance_is_undecided_unless_bounds_decide()
    {
        Assert.Equal([nameof(Rail.Return)], Judge(Loop(43, 0.1, 100) with { Return = null }).Names());
        Assert.Equal(Verdict.Fails, Judge(Loop(43, 0.5, 1000) with { Return = null }).Verdict);
        var fuse = Loop(43, 0, 100) with { Path = [new Fuse { Name = "F1", RatedCurrent = 10.Amperes() }] };
        Assert.Equal(Verdict.Holds, Judge(fuse).Verdict);
    }

    [Fact]
    public void No_constant_power_is_no_check() => Assert.Empty(Apply.Rule<NoOperatingPoint>(Loop(43, 1, 1) with { Loads = [new() { Current = 100.Amperes() }] }));

    /// <summary>Feeders and trees at shares of the greatest power they can carry: whether there is a solution is what the simulator found.</summary>
    [Fact]
    public void Collapse_is_where_the_simulator_finds_it()
    {
        var cases = Cases.RootElement.GetProperty("cases").EnumerateArray().Where(one => one.GetProperty("kind").GetString() == "loadflow.collapse").ToList();
        Assert.Equal(6, cases.Count);
        foreach (var one in cases)
        {
            var derived = one.GetProperty("derived");
            var solves = one.GetProperty("outputs").EnumerateArray().First(output => output.GetProperty("quantity").GetString() == "has_solution").GetProperty("ngspice").GetBoolean();
            var checks = Apply.Rule<NoOperatingPoint>(TreeOf(one.GetProperty("inputs")));
            Assert.Equal(solves, checks.All(check => check.Verdict == Verdict.Holds));
            var loads = one.GetProperty("inputs").GetProperty("loads").GetArrayLength();
            var most = derived.TryGetProperty("maximum_power", out var alone) ? alone.GetDouble() : loads * derived.GetProperty("maximum_power_per_leaf").GetDouble();
            Assert.Equal(most, checks.Single(check => check.Rail!.From is Supply).Capacity!.Value.Value, 1e-6 * most);
        }
    }

    /// <summary>Whenever bounds give a verdict, each completion gives the same.</summary>
    [Fact]
    public void Verdicts_by_bounds_are_those_of_every_completion() => Boards.Incomplete.Sample(
        board =>
        {
            var bounded = Apply.Rule<NoOperatingPoint>([.. board.Rails(null)]);
            var complete = Apply.Rule<NoOperatingPoint>([.. board.Rails(board.Completion)]);
            foreach (var check in bounded)
            {
                if (complete.SingleOrDefault(one => one.Rail!.Name == check.Rail!.Name) is { } other)
                    Assert.True(check.Verdict is Verdict.Undecided || check.Verdict == other.Verdict, $"{check.Message} | {other.Message}");
            }
        },
        iter: 200);

    private static Rail[] TreeOf(JsonElement inputs)
    {
        var supply = new Supply { Name = "SRC", Voltage = inputs.GetProperty("source_voltage").GetDouble().Volts() };
        var rails = new Dictionary<string, Rail>();
        foreach (var branch in inputs.GetProperty("branches").EnumerateArray())
        {
            var (from, to) = (branch.GetProperty("from").GetString()!, branch.GetProperty("to").GetString()!);
            var loads = inputs.GetProperty("loads").EnumerateArray().Where(load => load.GetProperty("node").GetString() == to);
            rails.Add(to, new Rail(to)
            {
                From = from == "SRC" ? supply : rails[from],
                Path = [new SenseResistor { Resistance = branch.GetProperty("resistance").GetDouble().Ohms() }],
                Return = Apply.NoReturn,
                Loads = [.. loads.Select(load => new Load { Power = load.GetProperty("power").GetDouble().Watts() })],
            });
        }

        return [.. rails.Values];
    }
}
