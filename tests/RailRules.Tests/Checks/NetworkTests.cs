using System.Collections.Immutable;
using CsCheck;
using RailRules.Tests.Physics;
using UnitsNet;

namespace RailRules.Tests.Checks;

/// <summary>The network of a board: order, inheritance, voltages, labels; and its operating point against the simulated cases (ngspice 39), built as rails.</summary>
public sealed class NetworkTests
{
    private static readonly Return NoReturn = Return.OfResistance(0.Ohms());

    public static TheoryData<string> Trees => [.. LoadFlow.Ids.Where(id => LoadFlow.Inputs(id).TryGetProperty("branches", out _))];

    public static TheoryData<string> Feeds => [.. LoadFlow.Ids.Where(id => LoadFlow.Kind(id) == "loadflow.oring" && !LoadFlow.Inputs(id).TryGetProperty("junction", out _))];

    public static TheoryData<string> Fuses => ["lf_fuses_equal", "lf_fuses_unequal"];

    [Theory]
    [MemberData(nameof(Trees))]
    public void Trees_of_rails_agree_with_the_simulator(string id)
    {
        var inputs = LoadFlow.Inputs(id);
        var supply = new Supply { Voltage = inputs.Number("source_voltage").Volts() };
        var rails = new Dictionary<string, Rail>();
        foreach (var branch in inputs.GetProperty("branches").EnumerateArray())
        {
            var name = branch.GetProperty("to").GetString()!;
            var from = branch.GetProperty("from").GetString()!;
            var loads = inputs.GetProperty("loads").EnumerateArray().Where(load => load.GetProperty("node").GetString() == name).Select(load => new Load
            {
                Power = load.Number("power") > 0 ? load.Number("power").Watts() : null,
                Current = load.Number("current") > 0 ? load.Number("current").Amperes() : null,
                Resistance = load.Number("conductance") > 0 ? (1 / load.Number("conductance")).Ohms() : null,
            });
            Element series = inputs.TryGetProperty("temperature_C", out var celsius)
                ? new Wire { Resistance = inputs.Number("resistance_at_20C").Ohms(), TemperatureLimit = celsius.GetDouble().Celsius() }
                : new SenseResistor { Resistance = branch.Number("resistance").Ohms() };
            rails[name] = new Rail { Name = name, From = from == "SRC" ? supply : rails[from], Path = [series], Return = NoReturn, Loads = [.. loads] };
        }

        var network = new Network(rails.Values);
        foreach (var (name, rail) in rails)
        {
            var flow = network.CurrentOf(rail);
            Assert.Equal(LoadFlow.HasSolution(id) ? Network.FlowReason.Solved : Network.FlowReason.Collapse, flow.Reason);
            if (LoadFlow.HasSolution(id))
            {
                Assert.True(flow.IsExact);
                LoadFlow.Check(id, name, "branch_current", flow.High);
                LoadFlow.Check(id, name, "node_voltage", flow.HighVoltage);
            }
        }

        if (LoadFlow.HasSolution(id))
        {
            LoadFlow.Check(id, "SRC", "source_power", inputs.Number("source_voltage") * network.CurrentOf(supply).High);
        }
    }

    [Theory]
    [MemberData(nameof(Feeds))]
    public void Redundant_feeds_agree_with_the_simulator(string id)
    {
        var inputs = LoadFlow.Inputs(id);
        var load = inputs.GetProperty("bus_load");
        var rail = new Rail
        {
            Feeds =
            [
                .. inputs.GetProperty("feeds").EnumerateArray().Select(feed => new Feed
                {
                    From = new Supply { Voltage = feed.Number("voltage").Volts() },
                    Path =
                    [
                        new SenseResistor { Resistance = feed.Number("resistance").Ohms() },
                        new BlockingDiode { ForwardDrop = feed.Number("forward_drop").Volts(), Resistance = feed.Number("diode_resistance").Ohms() },
                    ],
                    Return = NoReturn,
                }),
            ],
            Loads =
            [
                new()
                {
                    Power = load.Number("power") > 0 ? load.Number("power").Watts() : null,
                    Current = load.Number("current") > 0 ? load.Number("current").Amperes() : null,
                    Resistance = load.Number("conductance") > 0 ? (1 / load.Number("conductance")).Ohms() : null,
                },
            ],
        };
        rail = new Rail { Feeds = rail.Feeds, Loads = rail.Loads, FeedsNeeded = rail.Feeds.Length };
        var network = new Network([rail]);
        LoadFlow.Check(id, "BUS", "node_voltage", network.CurrentOf(rail).HighVoltage);
        foreach (var part in network.Parts(rail).Where(part => part.Part is BlockingDiode))
        {
            LoadFlow.Check(id, $"FEED_{part.Supplier + 1}", "branch_current", network.CurrentOf(part).High);
        }
    }

    [Theory]
    [MemberData(nameof(Fuses))]
    public void Parallel_fuses_agree_with_the_simulator(string id)
    {
        var inputs = LoadFlow.Inputs(id);
        var rail = new Rail
        {
            From = new Supply { Voltage = 12.Volts() },
            Path =
            [
                new ParallelGroup
                {
                    Branches = [.. inputs.GetProperty("fuses").EnumerateArray().Select(fuse => ImmutableArray.Create<Element>(new Fuse { ColdResistance = fuse.Number("resistance_cold").Ohms() }))],
                },
            ],
            Return = NoReturn,
            Loads = [new() { Current = inputs.Number("total_current").Amperes() }],
        };
        var network = new Network([rail]);
        var fuses = network.Parts(rail).Where(part => part.Part is Fuse).ToList();
        for (var k = 0; k < fuses.Count; k++)
        {
            LoadFlow.Check(id, $"FUSE_{k + 1}", "branch_current", network.CurrentOf(fuses[k]).High);
        }

        LoadFlow.Check(id, "PAIR", "voltage_drop", 12 - network.CurrentOf(rail).HighVoltage);
    }

    [Fact]
    public void Everything_that_feeds_a_rail_belongs_to_the_network_once()
    {
        var supply = new Supply { Voltage = 48.Volts() };
        var bus = new Rail { Name = "Bus", From = supply };
        var converter = new Converter { Input = bus, Output = 12.Volts() };
        var low = new Rail { Name = "Low", From = converter };
        var other = new Rail { Name = "Other", Feeds = [new() { From = low }, new() { From = bus }] };
        var network = new Network([other, other, low]);
        Assert.Equal(["Other", "Low", "Bus"], network.Rails.Select(rail => rail.Name));
        Assert.Equal<Source>([converter, supply], network.Sources);
        Assert.Equal(["Other"], network.Children(bus).Select(rail => rail.Name));
        Assert.Same(converter, Assert.Single(network.ConvertersOn(bus)));
    }

    [Fact]
    public void Labels_prefer_what_people_wrote()
    {
        var rail = new Rail("Bus")
        {
            Path = [Shared, Shared with { PartNumber = "W-200" }, new Fuse("Bus") { Designator = "F7" }, new Trace("Bus"), new Wire("Bus") { Name = "feeder" }],
            Loads = [new("Bus"), new("Bus") { Name = "pump" }],
        };
        Assert.Equal(["Shared", "W-200", "F7", "trace 4", "feeder"], new Network([rail]).Parts(rail).Select(part => part.Label));
        Assert.Equal(["load 1", "pump"], rail.Loads.Select((load, i) => Network.Label(load, rail, i)));
    }

    private static Fuse Shared { get; } = new() { Designator = "F1" };

    [Fact]
    public void Surroundings_are_inherited_datum_by_datum()
    {
        var top = new Rail { Surroundings = new() { Ambient = Band.Of((-5).Celsius(), 55.Celsius()), Altitude = 850.Meters() } };
        var below = new Rail { From = new Converter { Input = top }, Surroundings = new() { HeatOfNeighbours = TemperatureDelta.FromKelvins(7) } };
        var last = new Rail { From = below };
        var network = new Network([last]);
        Assert.Equal(new Range(-5, 62), network.AirAt(last).Ambient);
        Assert.Equal(850, network.AirAt(last).Altitude);
        Assert.Equal(new Range(0, 40), network.AirAt(last, new() { Ambient = Band.Of(0.Celsius(), 40.Celsius()) }, new Fuse()).Ambient);
    }

    /// <summary>Voltages of a place: no drop from a maximum; a battery counts its charging voltage; transients of supply and rail.</summary>
    [Fact]
    public void Voltages_follow_their_definition()
    {
        var plant = new Supply { Voltage = Band.Of(43.Volts(), 57.Volts()), TransientMax = 60.Volts() };
        var battery = new Battery { OpenCircuitVoltage = Band.Of(42.Volts(), 52.Volts()), ChargeVoltage = Band.Of(53.Volts(), 58.Volts()) };
        var bus = new Rail { Feeds = [new() { From = plant }, new() { From = battery }] };
        var drive = new Rail { From = bus, TransientMax = 75.Volts() };
        var network = new Network([drive]);
        var (low, high, peak) = network.VoltagesOf(bus);
        Assert.Equal((42.0, 58.0, 60.0), (low.Value, high.Value, peak.Value));
        Assert.Equal((42.0, 58.0, 75.0), (network.VoltagesOf(drive).Low.Value, network.VoltagesOf(drive).High.Value, network.VoltagesOf(drive).Peak.Value));
        Assert.Contains(peak.Assumptions, text => text.Contains("transient"));
    }

    [Fact]
    public void A_voltage_that_is_not_stated_is_named()
    {
        var rail = new Rail { From = new Supply() };
        var missing = Assert.Single(new Network([rail]).VoltagesOf(rail).High.Missing);
        Assert.Equal(nameof(Supply.Voltage), missing.Place.Datum);
    }

    /// <summary>One feed lost, the other carries all: I = P/V over the feed that is left.</summary>
    [Fact]
    public void The_worst_feed_state_counts()
    {
        var (a, b) = (new Supply { Voltage = 50.Volts() }, new Supply { Voltage = 50.Volts() });
        var rail = new Rail
        {
            Feeds = [new() { From = a, Return = NoReturn, Path = [Series(0.01)] }, new() { From = b, Return = NoReturn, Path = [Series(0.01)] }],
            Loads = [new() { Current = 20.Amperes() }],
        };
        var network = new Network([rail]);
        Assert.All(network.Parts(rail), part => Assert.Equal(20, network.CurrentOf(part).High, 1e-9));
        Assert.Equal(20, network.CurrentOf(a).High, 1e-9);
        Assert.Contains("without", network.CurrentOf(a).State);
        var both = new Rail { FeedsNeeded = 2, Feeds = rail.Feeds, Loads = rail.Loads };
        network = new Network([both]);
        Assert.All(network.Parts(both), part => Assert.Equal(10, network.CurrentOf(part).High, 1e-9));
    }

    /// <summary>A supply that charges a battery carries its charging current besides the load; alone, the battery carries the load.</summary>
    [Fact]
    public void Charging_adds_to_the_feed_that_charges()
    {
        var plant = new Supply { Voltage = 54.Volts() };
        var battery = new Battery { OpenCircuitVoltage = 50.Volts(), InternalResistance = 0.Ohms(), ChargeCurrent = 15.Amperes() };
        var rail = new Rail { Feeds = [new() { From = plant, Path = [Series(0)], Return = NoReturn }, new() { From = battery, Path = [Series(0)], Return = NoReturn }], Loads = [new() { Current = 20.Amperes() }] };
        var network = new Network([rail]);
        Assert.Equal(35, network.CurrentOf(plant).High, 1e-9);
        Assert.Equal(20, network.CurrentOf(rail).High, 1e-9);
        Assert.Equal([35, 20], network.Parts(rail).Select(part => Math.Round(network.CurrentOf(part).High, 9)));
    }

    /// <summary>Input power = output power / least efficiency, over any number of converters; one that backs another up does not add to it.</summary>
    [Fact]
    public void Converters_hand_power_on()
    {
        var bus = new Rail { From = new Supply { Voltage = Band.Of(40.Volts(), 60.Volts()) } };
        Converter Unit() => new() { Input = bus, Output = 12.Volts(), Efficiency = Band.Of(0.8.DecimalFractions(), 0.95.DecimalFractions()) };
        var (a, b) = (Unit(), Unit());
        var low = new Rail { Feeds = [new() { From = a }, new() { From = b }], Loads = [new() { Power = 96.Watts() }] };
        var network = new Network([low]);
        Assert.Equal(96 / 0.8 / 40, network.CurrentOf(bus).High, 1e-8);
        Assert.Equal(8, network.CurrentOf(a).High, 1e-9);
    }

    /// <summary>RAIL0007 reports a cycle; here it has no value, and neither hangs nor throws.</summary>
    [Fact]
    public void Cycles_have_no_value()
    {
        var a = new Rail { Name = "A", From = new Supply { Voltage = 12.Volts() } };
        var b = new Rail { Name = "B", From = a, Loads = [new() { Current = 1.Amperes() }] };
        Close(a, b);
        var child = new Rail { From = b };
        var network = new Network([child]);
        Assert.All(network.Rails, rail => Assert.True(network.IsCyclic(rail)));
        Assert.All(network.Rails, rail => Assert.Equal(Network.FlowReason.Cycle, network.CurrentOf(rail).Reason));
        Assert.False(network.VoltagesOf(child).High.IsKnown);
    }

    [Fact]
    public void Odd_objects_do_no_harm()
    {
        var rail = new Rail
        {
            From = null!,
            Path = [null!, new ParallelGroup { Branches = [default, [null!]] }, new ParallelGroup { Branches = default }],
            Feeds = default,
            Loads = [null!, new() { Pulses = default }],
            Clamps = default,
            Capacitors = default,
            Return = Return.Of(default(ImmutableArray<Element>)),
        };
        var other = new Rail { Feeds = [null!, new()], Loads = default, Path = default, Name = null! };
        var network = new Network([rail, null!, other]);
        Assert.All(network.Rails, one =>
        {
            _ = network.CurrentOf(one);
            _ = network.Parts(one).Count();
            Assert.False(network.VoltagesOf(one).Low.IsKnown);
        });
    }

    /// <summary>Whatever value inside its bounds an absent resistance or drop has, the current lies between the two bounds.</summary>
    [Fact]
    public void Bounds_hold_the_current_of_every_completion() => Boards.Incomplete.Sample(board =>
    {
        var bounded = new Network(board.Rails(null));
        var completed = new Network(board.Rails(board.Completion));
        for (var i = 0; i < bounded.Rails.Length; i++)
        {
            var (between, exact) = (bounded.CurrentOf(bounded.Rails[i]), completed.CurrentOf(completed.Rails[i]));
            if (exact.Reason == Network.FlowReason.Solved)
            {
                Assert.True(exact.IsExact);
                Assert.Equal(Network.FlowReason.Solved, between.Reason);
                Assert.True(between.Low <= exact.High * (1 + 1e-9), $"rail {i}: least {between.Low}, {exact.High}");
                Assert.True(between.High >= exact.High * (1 - 1e-9), $"rail {i}: most {between.High}, {exact.High}");
                Assert.True(between.IsExact || NamesData(bounded, i));
            }
        }

        static bool NamesData(Network network, int i) => network.MissingFor([network.Rails[i]]).Length > 0;
    }, iter: 400);

    private static SenseResistor Series(double ohms) => new() { Resistance = ohms.Ohms() };

    /// <summary>Closes a loop, which object initialisers cannot; the analyzer meets them in half-typed code.</summary>
    private static void Close(Rail rail, Source from) => typeof(Rail).GetProperty(nameof(Rail.From))!.SetValue(rail, from);
}
