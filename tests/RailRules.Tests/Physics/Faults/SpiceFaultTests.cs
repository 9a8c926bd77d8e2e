using System.Globalization;
using System.Text.Json;
using RailRules.Physics;

namespace RailRules.Tests.Physics.Faults;

/// <summary>
/// Every fault case of tests/Reference/spice/faults.json: run in ngspice 39 and checked by a closed form there; each output within the case's own tolerance
/// of the simulator, and within a tenth of it of the closed form.
/// </summary>
public class SpiceFaultTests
{
    private static readonly JsonDocument Document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Reference", "spice", "faults.json")));

    public static TheoryData<string> FaultCases() =>
        [.. Document.RootElement.GetProperty("cases").EnumerateArray().Select(one => one.GetProperty("id").GetString()!).Where(id => id.StartsWith("fault_", StringComparison.Ordinal))];

    [Fact]
    public void EveryKindIsThere() => Assert.Equal(50, FaultCases().Count);

    [Theory]
    [MemberData(nameof(FaultCases))]
    public void AgreesWithTheSimulator(string id)
    {
        var one = Document.RootElement.GetProperty("cases").EnumerateArray().Single(item => item.GetProperty("id").GetString() == id);
        var input = one.GetProperty("inputs");
        var kind = one.GetProperty("kind").GetString();
        var models = kind == "fault.tree_steady" ? [] : Models(kind!, input).ToArray();
        var checks = 0;
        foreach (var output in one.GetProperty("outputs").EnumerateArray())
        {
            var signal = output.GetProperty("signal").GetString()!;
            var quantity = output.GetProperty("quantity").GetString()!;
            var argument = output.GetProperty("argument") is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : double.NaN;
            var values = kind == "fault.tree_steady"
                ? [SteadyAt(input, signal)]
                : models.Select(model => Quantity(model(signal), signal, quantity, argument, input)).ToArray();
            foreach (var value in values)
            {
                Near(output, "ngspice", output.GetProperty("tolerance").GetDouble(), value);
                if (quantity != "time_of_peak")
                    Near(output, "closed_form", Math.Max(1e-6 * Math.Abs(output.GetProperty("closed_form").GetDouble()), output.GetProperty("tolerance").GetDouble() / 10), value);

                checks++;
            }

            void Near(JsonElement of, string reference, double tolerance, double value)
            {
                var expected = of.GetProperty(reference).GetDouble();
                Assert.True(
                    Math.Abs(value - expected) <= tolerance,
                    string.Create(CultureInfo.InvariantCulture, $"{id}: {signal} {quantity}({argument}) is {value:R}, {reference} {expected:R} ± {tolerance:G3}"));
            }
        }

        Assert.True(checks > 0);
    }

    /// <summary>Each case is built in every way in which the library can: as a single loop, and as a network.</summary>
    private static IEnumerable<Func<string, Waveform>> Models(string kind, JsonElement input)
    {
        double Of(string name) => input.GetProperty(name).GetDouble();
        switch (kind)
        {
            case "fault.rl":
                yield return _ => Waveform.Inductive(Of("source_voltage"), Of("resistance"), Of("inductance"), Of("initial_current"));
                yield return _ => Loop(net => net.AddBranch(0, 1, Of("resistance"), Of("inductance"), Of("source_voltage"), Of("initial_current")));
                break;
            case "fault.arc":
                var voltage = Of("source_voltage") - Of("arc_voltage");
                yield return _ => Waveform.Inductive(voltage, Of("resistance") + Of("fault_resistance"), Of("inductance"));
                yield return _ => Loop(net => net.AddBranch(0, 1, Of("resistance") + Of("fault_resistance"), Of("inductance"), voltage));
                break;
            case "fault.capacitor":
                yield return _ => Waveform.Capacitive(Of("capacitor_voltage"), Of("resistance"), Of("inductance"), Of("capacitance"));
                yield return _ => Loop(net => net.AddCapacitor(0, 1, Of("capacitance"), Of("capacitor_voltage"), Of("resistance"), Of("inductance")));
                break;
            case "fault.fuse_clearing":
                yield return _ => ArcInterruption.Of(Of("source_voltage"), Of("resistance"), Of("inductance"), Of("melting_i2t"), Of("arc_voltage"))!.Current;
                break;
            case "fault.tree":
                var (resistance, inductance) = Along(input, input.GetProperty("fault_node").GetString()!);
                yield return _ => Waveform.Inductive(Of("source_voltage"), resistance, inductance);
                yield return _ => InTree(input);
                break;
            case "fault.source_capacitor":
                yield return signal => Combined(input)[signal switch { "fault" => 2, "source" => 0, _ => 1 }];
                break;
            case "fault.two_feeds" when input.TryGetProperty("feeds", out var feeds):
                yield return signal => TwoFeeds(feeds, Of("fault_resistance"), Of("fault_inductance"))[signal switch { "fault" => 2, "feed_1" => 0, _ => 1 }];
                break;
            case "fault.two_feeds":
                yield return signal => Backfeed(input)[signal == "feed_1" ? 0 : 1];
                break;
            case "fault.limited" when input.TryGetProperty("on_time", out _):
                yield return _ => LimitedSource.Hiccup(Of("current_limit"), Of("on_time"), Of("off_time"), 4);
                break;
            case "fault.limited" when input.TryGetProperty("capacitance", out _):
                yield return _ => LimitedWithCapacitor(input);
                break;
            case "fault.limited":
                var how = input.GetProperty("after_delay").GetString()!;
                var approach = how.StartsWith("exp", StringComparison.Ordinal) ? LimitApproach.Exponential
                    : how.StartsWith("source", StringComparison.Ordinal) ? LimitApproach.Freewheel : LimitApproach.Step;
                yield return _ => LimitedSource.Into(Of("source_voltage"), Of("resistance"), Of("inductance"), Of("current_limit"), Of("response_delay"), approach: approach);
                if (approach == LimitApproach.Step)
                {
                    yield return _ => Loop(net =>
                    {
                        net.AddBranch(0, 1, Of("resistance"), Of("inductance"), Of("source_voltage"));
                        net.LimitSource(0, Of("response_delay"), double.PositiveInfinity, Of("current_limit"));
                    });
                }

                break;
            default:
                throw new InvalidOperationException(kind);
        }
    }

    private static double Quantity(Waveform current, string signal, string quantity, double argument, JsonElement input) => quantity switch
    {
        "current_at" => current.At(argument),
        "i2t_at" => current.SquareIntegral(argument),
        "melting_time" => current.TimeToIntegral(argument)!.Value,
        "let_through_peak" => current.LetThroughPeak(current.TimeToIntegral(argument)!.Value),
        "peak_current" => current.PeakCurrent,
        "time_of_peak" => current.Peak().Time,
        "clearing_time" => current.Pieces[^1].Start,
        "clearing_i2t" => current.SquareIntegral(current.Pieces[^1].Start),
        "peak_voltage" when signal == "fuse" => input.GetProperty("arc_voltage").GetDouble(),
        _ => throw new InvalidOperationException(quantity),
    };

    private static Waveform Loop(Action<FaultNetwork> build)
    {
        var network = new FaultNetwork();
        network.AddNode();
        build(network);
        network.AddBranch(1, 0, 0, 0);
        return network.Solve()!.Value[0];
    }

    private static Waveform InTree(JsonElement input)
    {
        var network = new FaultNetwork();
        var nodes = new Dictionary<string, int>();
        int Node(string name) => nodes.TryGetValue(name, out var known) ? known : nodes[name] = network.AddNode();
        network.AddBranch(0, Node("SRC"), 0, 0, input.GetProperty("source_voltage").GetDouble());
        foreach (var branch in input.GetProperty("branches").EnumerateArray())
            network.AddBranch(Node(branch.GetProperty("from").GetString()!), Node(branch.GetProperty("to").GetString()!), branch.GetProperty("resistance").GetDouble(), branch.GetProperty("inductance").GetDouble());

        var fault = network.AddBranch(Node(input.GetProperty("fault_node").GetString()!), 0, 0, 0);
        return network.Solve()!.Value[fault];
    }

    private static Waveform[] Combined(JsonElement input)
    {
        double Of(string name) => input.GetProperty(name).GetDouble();
        var network = new FaultNetwork();
        network.AddNode();
        network.AddBranch(0, 1, Of("source_resistance"), Of("source_inductance"), Of("source_voltage"));
        network.AddCapacitor(0, 1, Of("capacitance"), Of("source_voltage"), Of("capacitor_resistance"), Of("capacitor_inductance"));
        network.AddBranch(1, 0, Of("fault_resistance"), Of("fault_inductance"));
        return [.. network.Solve()!.Value];
    }

    private static Waveform[] TwoFeeds(JsonElement feeds, double resistance, double inductance)
    {
        var network = new FaultNetwork();
        network.AddNode();
        foreach (var feed in feeds.EnumerateArray())
            network.AddBranch(0, 1, feed.GetProperty("resistance").GetDouble(), feed.GetProperty("inductance").GetDouble(), feed.GetProperty("voltage").GetDouble(), oneWay: true);

        network.AddBranch(1, 0, resistance, inductance);
        return [.. network.Solve()!.Value];
    }

    private static Waveform[] Backfeed(JsonElement input)
    {
        var network = new FaultNetwork();
        network.AddNode();
        var own = input.GetProperty("feed_1");
        var back = input.GetProperty("back");
        double Of(JsonElement element, string name) => element.GetProperty(name).GetDouble();
        network.AddBranch(0, 1, Of(own, "resistance"), Of(own, "inductance"), Of(own, "voltage"));
        if (back.TryGetProperty("capacitance", out var capacitance))
            network.AddCapacitor(0, 1, capacitance.GetDouble(), Of(back, "voltage"), Of(back, "resistance"), Of(back, "inductance"));
        else
            network.AddBranch(0, 1, Of(back, "resistance"), Of(back, "inductance"), Of(back, "voltage"));

        network.AddBranch(1, 0, 0, 0);
        return [.. network.Solve()!.Value];
    }

    private static Waveform LimitedWithCapacitor(JsonElement input)
    {
        double Of(string name) => input.GetProperty(name).GetDouble();
        var network = new FaultNetwork();
        network.AddNode();
        network.AddCurrentSource(0, 1, Of("current_limit"));
        network.AddCapacitor(0, 1, Of("capacitance"), Of("capacitor_voltage"), 0, 0);
        var fault = network.AddBranch(1, 0, Of("resistance"), Of("inductance"));
        return network.Solve()!.Value[fault];
    }

    private static (double Resistance, double Inductance) Along(JsonElement input, string node)
    {
        double resistance = 0, inductance = 0;
        while (node != "SRC")
        {
            var branch = input.GetProperty("branches").EnumerateArray().Single(item => item.GetProperty("to").GetString() == node);
            resistance += branch.GetProperty("resistance").GetDouble();
            inductance += branch.GetProperty("inductance").GetDouble();
            node = branch.GetProperty("from").GetString()!;
        }

        return (resistance, inductance);
    }

    private static double SteadyAt(JsonElement input, string node)
    {
        var tree = new SteadyTree(input.GetProperty("source_voltage").GetDouble(), 0);
        var places = new Dictionary<string, int> { ["SRC"] = 0 };
        foreach (var branch in input.GetProperty("branches").EnumerateArray())
        {
            var to = branch.GetProperty("to").GetString()!;
            var load = input.GetProperty("loads").EnumerateArray().Where(item => item.GetProperty("node").GetString() == to).Sum(item => item.GetProperty("conductance").GetDouble());
            places[to] = tree.Add(places[branch.GetProperty("from").GetString()!], branch.GetProperty("resistance").GetDouble(), load);
        }

        return tree.FaultCurrents(input.GetProperty("fault_resistance").GetDouble())[places[node]];
    }
}
