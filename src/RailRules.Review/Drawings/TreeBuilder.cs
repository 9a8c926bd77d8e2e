using System.Collections.Immutable;
using RailRules.Rules;
using Far = RailRules.Rules.Protection;

namespace RailRules.Review.Drawings;

/// <summary>Reads a board into the branches of its supply tree: sources first, each rail with its parts, and what hangs on it.</summary>
internal sealed class TreeBuilder
{
    /// <summary>Rails below each other that are followed; beyond, the drawing refers to the table of rails.</summary>
    private const int MostLevels = 150;

    private readonly Network network;
    private readonly HashSet<Source> seen = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<(DatumPlace Place, object Part), ReviewedCheck> tightest = [];
    private readonly Dictionary<object, ReviewedCheck> tightestOf = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<Rail, ReviewedCheck> tightestOfRail = new(ReferenceEqualityComparer.Instance);

    internal TreeBuilder(BoardReview review)
    {
        network = review.Network;
        foreach (var check in review.Checks)
        {
            if (check.Check.Part is { } part)
            {
                Note(tightestOf, part, check);
                foreach (var place in check.Check.Places)
                {
                    if (place.Owner is not null)
                    {
                        Note(tightest, (place, part), check);
                    }
                }
            }

            if (check.Check.Rail is { } rail)
            {
                Note(tightestOfRail, rail, check);
            }
        }
    }

    /// <summary>The branches that begin at a source, in the order of the board.</summary>
    internal ImmutableArray<TreeBranch> Roots()
    {
        var roots = ImmutableArray.CreateBuilder<TreeBranch>();
        foreach (var source in network.Sources.Where(source => source is not Converter { Input: not null }))
        {
            roots.Add(new TreeBranch([Item(source)], [.. network.FedBy(source).Select(rail => Branch(rail, source, 0))]));
        }

        // What no source feeds: rails without one, and rails that feed themselves.
        foreach (var rail in network.Rails.Where(rail => network.Suppliers(rail).All(one => one.From is null)).Concat(network.Rails))
        {
            if (!seen.Contains(rail))
            {
                var name = network.IsCyclic(rail) ? "feeds itself" : "no source stated";
                roots.Add(new TreeBranch([new TreeItem { Symbol = TreeSymbol.Reference, Name = name }], [Branch(rail, null, 0)]));
            }
        }

        return roots.ToImmutable();
    }

    private static void Note<T>(Dictionary<T, ReviewedCheck> known, T key, ReviewedCheck check)
        where T : notnull
    {
        if (!known.TryGetValue(key, out var before) || check.Outcome < before.Outcome
            || (check.Outcome == before.Outcome && (check.Check.Margin ?? double.PositiveInfinity) < (before.Check.Margin ?? double.PositiveInfinity)))
        {
            known[key] = check;
        }
    }

    private TreeBranch Branch(Rail rail, Source? from, int level)
    {
        var label = Network.Label(rail);
        var head = new TreeItem { Symbol = TreeSymbol.Rail, Name = label, Rail = label };
        var suppliers = network.Suppliers(rail);
        var own = from is null ? [] : suppliers.Where(one => one.Feed is not null && ReferenceEquals(one.From, from)).ToList();
        var parts = own.SelectMany(one => network.Parts(rail).Where(part => ReferenceEquals(part.Feed, one.Feed))).ToList();
        if (!seen.Add(rail))
        {
            return new TreeBranch([head with { Sort = "one of its feeds" }, .. Items(rail, parts), new TreeItem { Symbol = TreeSymbol.Reference, Name = $"joins rail '{label}'", Rail = label, Sort = "drawn where it comes first" }], []);
        }

        parts.AddRange(network.Parts(rail).Where(part => part.Feed is null));
        var items = Items(rail, parts);
        if (items.All(item => item.Symbol == TreeSymbol.Conductors))
        {
            head = WithRail(head, rail);
        }

        if (suppliers.Length > 1)
        {
            head = head with { Sort = $"fed by {suppliers.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)} sources" };
        }

        return new TreeBranch([head, .. items], level >= MostLevels ? Rest(rail) : Below(rail, level));
    }

    private ImmutableArray<TreeBranch> Rest(Rail rail) => !network.Children(rail).Any() && network.ConvertersOn(rail).Count == 0
        ? []
        : [new TreeBranch([TreeFolding.GoesOn], [])];

    private ImmutableArray<TreeBranch> Below(Rail rail, int level)
    {
        var label = Network.Label(rail);
        var result = ImmutableArray.CreateBuilder<TreeBranch>();
        var clamps = Network.Items(rail.Clamps);
        for (var i = 0; i < clamps.Length; i++)
        {
            if (clamps[i] is { } clamp)
            {
                Leaf(TreeSymbol.Clamp, Network.Label(clamp, rail, i), clamp.StandOffVoltage is { } stands ? $"clamp, stand-off {Figures.Text(stands.Volts, "V")}" : "clamp", Tightest(new DatumPlace(rail, nameof(Rail.Clamps), i), clamp));
            }
        }

        var capacitors = Network.Items(rail.Capacitors);
        for (var i = 0; i < capacitors.Length; i++)
        {
            if (capacitors[i] is { } capacitor)
            {
                Leaf(TreeSymbol.Capacitor, Network.Label(capacitor, rail, i), capacitor.Capacitance is { } farads ? $"capacitor {Span(farads.Min.Farads, farads.Max.Farads, "F")}" : "capacitor", Tightest(new DatumPlace(rail, nameof(Rail.Capacitors), i), capacitor));
            }
        }

        var loads = Network.Items(rail.Loads);
        for (var i = 0; i < loads.Length; i++)
        {
            if (loads[i] is { } load)
            {
                var (demand, unit, words) = DemandOf(load);
                Leaf(TreeSymbol.Load, Network.Label(load, rail, i), words, Tightest(new DatumPlace(rail, nameof(Rail.Loads), i), load), demand, unit);
            }
        }

        foreach (var converter in network.ConvertersOn(rail))
        {
            result.Add(new TreeBranch([Item(converter)], [.. network.FedBy(converter).Select(fed => Branch(fed, converter, level + 1))]));
        }

        result.AddRange(network.Children(rail).Select(child => Branch(child, rail, level + 1)));
        return result.ToImmutable();

        void Leaf(TreeSymbol symbol, string name, string sort, ReviewedCheck? check, Bounds? demand = null, string unit = "") =>
            result.Add(new TreeBranch([new TreeItem { Symbol = symbol, Name = name, Sort = sort, Rail = label, Tightest = check, Demand = demand ?? Bounds.None, DemandUnit = unit }], []));
    }

    private static (Bounds Demand, string Unit, string Words) DemandOf(Load load)
    {
        var parts = new List<(Bounds Demand, string Unit)>();
        if (load.Power is { } power)
        {
            parts.Add((new Bounds((double)power.Min.Watts, (double)power.Max.Watts), "W"));
        }

        if (load.Current is { } current)
        {
            parts.Add((new Bounds(current.Min.Amperes, current.Max.Amperes), "A"));
        }

        if (load.Resistance is { } resistance)
        {
            parts.Add((new Bounds(resistance.Min.Ohms, resistance.Max.Ohms), "Ω"));
        }

        return parts.Count == 1
            ? (parts[0].Demand, parts[0].Unit, "load")
            : (Bounds.None, "", ("load " + string.Join(" + ", parts.Select(part => Span(part.Demand.Low, part.Demand.High, part.Unit)))).TrimEnd());
    }

    private static string Span(double low, double high, string unit) => low == high ? Figures.Text(low, unit) : $"{Figures.Text(low, unit)} to {Figures.Text(high, unit)}";

    private TreeItem Item(Source source)
    {
        var voltages = network.VoltagesOf(source, new DatumPlace(source), "");
        var flow = network.CurrentOf(source);
        var item = new TreeItem
        {
            Symbol = source switch { Battery => TreeSymbol.Battery, Converter => TreeSymbol.Converter, _ => TreeSymbol.Supply },
            Name = Network.Label(source),
            Sort = source switch { Battery => "battery", Converter => "converter", _ => "supply" },
        };
        return WithFlow(item, flow) with
        {
            Voltage = VoltageOf(voltages),
            Peak = voltages.Peak.IsKnown ? voltages.Peak.Value : double.NaN,
            Tightest = tightestOf.GetValueOrDefault(source),
        };
    }

    private static Bounds VoltageOf(Network.RailVoltages voltages) =>
        voltages.Low.IsKnown && voltages.High.IsKnown ? new Bounds(voltages.Low.Value, voltages.High.Value) : Bounds.None;

    private static TreeItem WithFlow(TreeItem item, Network.Flow flow) => flow.Reason switch
    {
        Network.FlowReason.Solved => item with { Current = new Bounds(flow.Low, flow.High) },
        Network.FlowReason.Collapse => item with { NoCurrent = "no operating point" },
        _ => item with { NoCurrent = "not known" },
    };

    private TreeItem WithRail(TreeItem item, Rail rail)
    {
        var voltages = network.VoltagesOf(rail);
        return WithFlow(item, network.CurrentOf(rail)) with
        {
            Voltage = VoltageOf(voltages),
            Peak = voltages.Peak.IsKnown ? voltages.Peak.Value : double.NaN,
            Tightest = tightestOfRail.GetValueOrDefault(rail),
        };
    }

    /// <summary>The parts of a path in order; what stands between two devices is one item.</summary>
    private List<TreeItem> Items(Rail rail, List<Network.PartPlace> parts)
    {
        var label = Network.Label(rail);
        var result = new List<TreeItem>();
        var between = new List<Network.PartPlace>();
        foreach (var part in parts)
        {
            if (IsDevice(part.Part))
            {
                Flush();
                result.Add(Device(part, label));
            }
            else if (part.Part is not ParallelGroup)
            {
                between.Add(part);
            }
        }

        Flush();
        return result;

        void Flush()
        {
            if (between.Count > 0)
            {
                var kinds = between.Select(part => $"{Network.Kind(part.Part)}{(part.InReturn ? " in the return" : "")}").Distinct();
                result.Add(new TreeItem
                {
                    Symbol = TreeSymbol.Conductors,
                    Name = string.Join(", ", between.Select(part => part.Label)),
                    Sort = string.Join(", ", kinds),
                    Rail = label,
                    Tightest = between.Select(part => Tightest(part.Place, part.Part)).OfType<ReviewedCheck>().OrderBy(check => check.Outcome).ThenBy(check => check.Check.Margin ?? double.PositiveInfinity).FirstOrDefault(),
                });
                between.Clear();
            }
        }
    }

    private static bool IsDevice(Element part) => part is Fuse or CircuitBreaker or ElectronicFuse or ResettableFuse;

    private ReviewedCheck? Tightest(DatumPlace place, object part) => tightest.GetValueOrDefault((place, part));

    private TreeItem Device(Network.PartPlace place, string rail)
    {
        var voltages = network.VoltagesOf(place.Rail);
        var designator = place.Part.Designator;
        var item = new TreeItem
        {
            Symbol = place.Part switch { Fuse => TreeSymbol.Fuse, CircuitBreaker => TreeSymbol.Breaker, ResettableFuse => TreeSymbol.Resettable, _ => TreeSymbol.Electronic },
            Name = string.IsNullOrWhiteSpace(designator) ? place.Label : designator,
            Sort = $"{(string.IsNullOrWhiteSpace(designator) || designator == place.Label ? "" : place.Label + ", ")}{Rating(place.Part)}{Network.Kind(place.Part)}{(place.InReturn ? " in the return" : "")}{(place.Branches.IsEmpty ? "" : ", in parallel")}",
            Rail = rail,
            Voltage = VoltageOf(voltages),
            Peak = voltages.Peak.IsKnown ? voltages.Peak.Value : double.NaN,
            Tightest = Tightest(place.Place, place.Part),
        };
        var (smallest, largest) = FaultsAt(network, place);
        return WithFlow(item, network.CurrentOf(place)) with { SmallestFault = smallest, LargestFault = largest };
    }

    /// <summary>The smallest fault at the far ends of what a device protects, and the largest just behind it; none for a device in the return.</summary>
    internal static (Bounds Smallest, Bounds Largest) FaultsAt(Network network, Network.PartPlace place)
    {
        if (place.InReturn || network.IsCyclic(place.Rail))
        {
            return (Bounds.None, Bounds.None);
        }

        var smallest = Bounds.None;
        foreach (var end in Far.FarEnds(network, place))
        {
            var current = network.SmallestFault(end.Rail, end.Supplier, end.Behind, place).Current;
            smallest = smallest.IsNone ? new Bounds(current.Low, current.High) : new Bounds(Math.Min(smallest.Low, current.Low), Math.Min(smallest.High, current.High));
        }

        var index = place.Place.Index ?? 0;
        var most = network.LargestFault(place, index, reverse: false, least: false).Peak;
        var least = network.LargestFault(place, index, reverse: false, least: true).Peak;
        return (smallest, new Bounds(Math.Min(least, most), most));
    }

    private static string Rating(Element part) => (part switch
    {
        Fuse fuse => fuse.RatedCurrent,
        CircuitBreaker breaker => breaker.RatedCurrent,
        ResettableFuse resettable => resettable.HoldCurrent,
        ElectronicFuse electronic => electronic.TripLevel?.Min,
        _ => null,
    }) is { } current ? Figures.Text(current.Amperes, "A") + " " : "";
}
