using CsCheck;
using RailRules.Physics;

namespace RailRules.Tests.Physics;

/// <summary>The operating point of circuits, against the simulated cases of tests/Reference/spice (ngspice 39) and closed forms of circuit theory.</summary>
public sealed class OperatingPointTests
{
    public static TheoryData<string> Trees => [.. LoadFlow.Ids.Where(id => LoadFlow.Inputs(id).TryGetProperty("branches", out _))];

    public static TheoryData<string> Feeds => [.. LoadFlow.Ids.Where(id => LoadFlow.Kind(id) == "loadflow.oring" && !LoadFlow.Inputs(id).TryGetProperty("junction", out _))];

    [Theory]
    [MemberData(nameof(Trees))]
    public void Trees_agree_with_the_simulator(string id)
    {
        var inputs = LoadFlow.Inputs(id);
        var volts = inputs.Number("source_voltage");
        var circuit = new Circuit();
        var nodes = new Dictionary<string, int> { ["SRC"] = circuit.AddSource(volts) };
        var branches = new Dictionary<string, int>();
        foreach (var branch in inputs.GetProperty("branches").EnumerateArray())
        {
            var (from, to) = (nodes[branch.GetProperty("from").GetString()!], branch.GetProperty("to").GetString()!);
            nodes[to] = circuit.AddNode();
            branches[to] = circuit.AddBranch(from, branch.Number("resistance"));
        }

        foreach (var load in inputs.GetProperty("loads").EnumerateArray())
        {
            var node = nodes[load.GetProperty("node").GetString()!];
            circuit.AddLoad(node, load.Number("current"), load.Number("conductance"));
            circuit.AddPower(node, load.Number("power"), 0);
        }

        var solution = OperatingPoint.Solve(circuit);
        Assert.Equal(LoadFlow.HasSolution(id), solution is not null);
        if (solution is null)
        {
            return;
        }

        foreach (var branch in branches)
        {
            LoadFlow.Check(id, branch.Key, "node_voltage", solution.Voltages[nodes[branch.Key]]);
            LoadFlow.Check(id, branch.Key, "branch_current", solution.Currents[branch.Value]);
        }

        var given = inputs.GetProperty("branches").EnumerateArray().Where(branch => branch.GetProperty("from").GetString() == "SRC")
            .Sum(branch => solution.Currents[branches[branch.GetProperty("to").GetString()!]]);
        LoadFlow.Check(id, "SRC", "source_power", volts * given);
    }

    [Theory]
    [MemberData(nameof(Feeds))]
    public void Redundant_feeds_agree_with_the_simulator(string id)
    {
        var inputs = LoadFlow.Inputs(id);
        var circuit = new Circuit();
        var feeds = inputs.GetProperty("feeds").EnumerateArray().ToList();
        var sources = feeds.Select(feed => circuit.AddSource(feed.Number("voltage"))).ToList();
        var bus = circuit.AddNode();
        var branches = feeds.Select((feed, k) =>
            circuit.AddBranch(sources[k], feed.Number("resistance") + feed.Number("diode_resistance"), feed.Number("forward_drop"), oneWay: true)).ToList();
        var load = inputs.GetProperty("bus_load");
        circuit.AddLoad(bus, load.Number("current"), load.Number("conductance"));
        circuit.AddPower(bus, load.Number("power"), 0);
        var solution = OperatingPoint.Solve(circuit)!;
        LoadFlow.Check(id, "BUS", "node_voltage", solution.Voltages[bus]);
        for (var k = 0; k < branches.Count; k++)
        {
            LoadFlow.Check(id, $"FEED_{k + 1}", "branch_current", solution.Currents[branches[k]]);
        }
    }

    /// <summary>A loop of one resistance: V²/(4R) is the greatest power (circuit theory); the upper solution counts.</summary>
    [Fact]
    public void A_single_loop_follows_its_closed_form() => Gen.Select(Gen.Double[1, 1000], Gen.Double[1e-4, 10], Gen.Double[1e-6, 1.5]).Sample((volts, ohms, share) =>
    {
        var power = share * volts * volts / (4 * ohms);
        var solution = Loop(volts, ohms, power, 0);
        if (share > 1 + 1e-9)
        {
            return solution is null;
        }

        if (share > 1 - 1e-9)
        {
            return true;
        }

        var expected = volts * (1 + Math.Sqrt(1 - share)) / 2;
        return solution is not null && Math.Abs(solution.Voltages[1] - expected) < 1e-6 * volts && Math.Abs(solution.Currents[0] - (power / expected)) < 1e-5 * power / expected;
    });

    /// <summary>A load that may not go below its lowest voltage draws power / that voltage there, and the solution is the highest one.</summary>
    [Fact]
    public void A_load_never_runs_below_its_lowest_voltage() => Gen.Select(Gen.Double[10, 100], Gen.Double[1e-3, 1], Gen.Double[0.01, 3], Gen.Double[0.1, 1.2]).Sample((volts, ohms, share, floor) =>
    {
        var power = share * volts * volts / (4 * ohms);
        var least = floor * volts;
        var upper = share < 1 ? volts * (1 + Math.Sqrt(1 - share)) / 2 : 0;
        var expected = upper >= least ? upper : volts - (ohms * power / least);
        var solution = Loop(volts, ohms, power, least);
        return Math.Abs(share - 1) < 1e-6 || Math.Abs(expected) < 1e-6 * volts || (expected <= 0 ? solution is null : solution is not null && Math.Abs(solution.Voltages[1] - expected) < 1e-6 * volts);
    });

    /// <summary>Kirchhoff: what enters a node leaves it; each load draws what its law says; random trees and meshes of feeds.</summary>
    [Fact]
    public void Solutions_obey_Kirchhoff_and_the_laws_of_the_loads() =>
        Gen.Select(Gen.Int[1, 1 << 30], Gen.Int[2, 40], Gen.Double[0.01, 60]).Sample((seed, size, watts) =>
        {
            var random = new Random(seed);
            var circuit = new Circuit();
            var count = random.Next(1, 4);
            for (var s = 0; s < count; s++)
            {
                circuit.AddSource(48 + random.NextDouble());
            }

            var power = new double[size + count];
            for (var n = count; n < size + count; n++)
            {
                circuit.AddNode();
                var feeds = random.Next(6) == 0 ? 2 : 1;
                for (var f = 0; f < feeds; f++)
                {
                    circuit.AddBranch(random.Next(n), 0.001 + (0.01 * random.NextDouble()), feeds > 1 ? 0.3 * random.NextDouble() : 0, oneWay: feeds > 1);
                }

                circuit.AddPower(n, power[n] = watts * random.NextDouble(), 30);
                circuit.AddLoad(n, random.NextDouble(), 0.01 * random.NextDouble());
            }

            var solution = OperatingPoint.Solve(circuit);
            if (solution is null)
            {
                return;
            }

            for (var n = count; n < size + count; n++)
            {
                var balance = -circuit.NodeAt(n).Current - (circuit.NodeAt(n).Conductance * solution.Voltages[n]) - (power[n] / Math.Max(30, solution.Voltages[n]));
                for (var b = 0; b < circuit.BranchCount; b++)
                {
                    var branch = circuit.BranchAt(b);
                    balance += branch.To == n ? solution.Currents[b] : branch.From == n ? -solution.Currents[b] : 0;
                    if (branch.To == n)
                    {
                        var drive = solution.Voltages[branch.From] - branch.Drop - solution.Voltages[n];
                        Assert.True(branch.OneWay && solution.Currents[b] == 0 ? drive < 1e-9 : Math.Abs(drive - (branch.Resistance * solution.Currents[b])) < 1e-8);
                        Assert.True(!branch.OneWay || solution.Currents[b] > -1e-9);
                    }
                }

                Assert.True(Math.Abs(balance) < 1e-6, $"{balance}");
            }
        }, iter: 300);

    /// <summary>Chains of any depth neither recurse nor take more than linear time and space.</summary>
    [Fact]
    public void A_chain_of_a_hundred_thousand_nodes_is_solved()
    {
        var circuit = new Circuit();
        var node = circuit.AddSource(400);
        for (var n = 0; n < 100_000; n++)
        {
            var next = circuit.AddNode();
            circuit.AddBranch(node, 1e-8);
            circuit.AddPower(next, 0.01, 0);
            node = next;
        }

        var solution = OperatingPoint.Solve(circuit)!;
        Assert.Equal(1000, solution.Currents[0] * 400, 1.0);
    }

    /// <summary>Sharing of unequal branches: I R2/(R1 + R2). Check values PF-01; simulated cases lf_fuses_equal and lf_fuses_unequal.</summary>
    [Theory]
    [InlineData(100, 1.0e-3, 1.2e-3, 54.54545)]
    [InlineData(40, 0.002, 0.002, 20)]
    public void Parallel_branches_share(double total, double first, double second, double expected)
    {
        var currents = new double[2];
        Sharing.Share([(first, 0), (second, 0)], total, currents);
        Assert.Equal(expected, currents[0], 1e-4);
        Assert.Equal(total, currents.Sum(), 1e-9);
    }

    private static Solution? Loop(double volts, double ohms, double power, double least)
    {
        var circuit = new Circuit();
        var source = circuit.AddSource(volts);
        var end = circuit.AddNode();
        circuit.AddBranch(source, ohms);
        circuit.AddPower(end, power, least);
        return OperatingPoint.Solve(circuit);
    }
}
