using System.Collections.Immutable;

namespace RailRules.Rules;

/// <summary>RAIL0308: uninterrupted currents: a range that harms something and that nothing interrupts.</summary>
public sealed class UninterruptedCurrents : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0308",
        "Currents that nothing interrupts before they harm",
        RuleSeverity.Error,
        "Between the current that opens its device for certain and the largest fault, there is a range in which an element is harmed before any device above it has interrupted the current.")
    {
        Basis = "Every overcurrent broken before the conductor is harmed: IEC 60364-4-43, 431 and 434.5 (from memory); partial-range fuses: IEC 60269-1 (from memory)",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (place.Branches.IsEmpty && Protection.GuardsOf(network, place) is { Count: > 0 } guards && network.EnduranceOf(place) is { JudgesTime: true } endurance)
                {
                    yield return Judge(network, place, guards, endurance);
                }
            }
        }
    }

    private static string DatumOf(Element part) => part switch
    {
        Trace => nameof(Trace.Width),
        ParallelGroup => nameof(ParallelGroup.Branches),
        Wire or Busbar => nameof(Wire.Ampacity),
        _ => nameof(Element.Withstand),
    };

    private Check Judge(Network network, Network.PartPlace place, List<Protection.Guarding> guards, Network.Endurance endurance)
    {
        var subject = Subject.Of(Description, place, DatumOf(place.Part));
        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        if (network.UnknownMargin(
            margins, nameof(DesignPolicy.SingleFault), nameof(DesignPolicy.ConventionalTime), nameof(DesignPolicy.OverloadFactor), nameof(DesignPolicy.WithstandLimit), nameof(DesignPolicy.TraceRise),
            nameof(DesignPolicy.CreditFirmwareLimits), nameof(DesignPolicy.PersistentFaultPower)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        Func<Network.DeviceOpening, bool>? skip = margins.Policy.SingleFault ? device => device.Place.Part is ElectronicFuse : null;
        var guard = Guard.Above(network, place);
        var sure = guard.Begins(skip);
        var (_, settled, largest) = Protection.LargestFault(network, place, guards);
        const string corner = "highest settled fault current; latest edges; from its running temperature";
        var bears = new WorkingStep("continuous capability", "", "", new Figure(endurance.ForEver.Low, "A"), "I_z");
        if (Lasting(network, place, guards, guard.SureWithout(skip)).ToList() is var lasting && lasting.All(one => one.Holds == true))
        {
            return subject.ToStructural(true, $"{subject.Where} bears for ever what can last", bears, lasting[0].Step) with { Corner = corner, Assumptions = [lasting[0].Step.Source], UsesOperatingPoint = true };
        }

        if (Protection.IsProtectedByRating(network, place, guards, endurance))
        {
            return subject.ToStructural(true, $"{subject.Where} is protected by the rating of '{guards[0].Device.Label}'", bears) with { Corner = corner, Assumptions = [Protection.ByRating], UsesOperatingPoint = true };
        }

        // Above the interrupting rating of the device itself RAIL0301 has said it.
        var rated = guards.Select(one => InterruptingDuty.RatingsOf(one.Device.Part) is { Length: > 0 } ratings ? ratings.Max(rating => rating.Current!.Value.Amperes) : double.PositiveInfinity).Min();
        var high = Math.Min(Math.Min(settled.High, rated), 1e9);
        var low = Math.Min(sure.Low, high);
        if (double.IsInfinity(sure.Low) || sure.Low >= high)
        {
            return subject.ToStructural(true, $"{subject.Where} meets no current above the {Figures.Text(sure.Low, "A")} that opens its device for certain", bears) with { Corner = corner, UsesOperatingPoint = true };
        }

        var conventional = Math.Max(margins.Policy.ConventionalTime.Seconds, guard.ConventionalTime);
        bool Fails(double current) => Certain(current) && guard.Longest(current, skip).Low > endurance.Harmed(current, conventional).High * (1 + Weighing.Tolerance);
        bool MayFail(double current) => guard.Longest(current, skip).High > endurance.Harmed(current, conventional).Low * (1 + Weighing.Tolerance);
        bool Certain(double current) => current >= sure.High * (1 - 1e-6) && current <= settled.Low * (1 + 1e-6);
        var grid = guard.Grid(low, high, [endurance.ForEver.Low, endurance.ForEver.High, sure.High, settled.Low], steps: 48);
        var failing = Ranges(grid, Fails);
        if (failing.Count > 0)
        {
            var (from, to) = failing[0];
            var harmed = endurance.Harmed((from + to) / 2, conventional).High;
            return subject.ToStructural(
                false,
                $"between {Figures.Text(from, "A")} and {Figures.Text(to, "A")} nothing interrupts the current in {subject.Where}, which bears {Figures.Text(endurance.ForEver.High, "A")}",
                [
                    bears,
                    new WorkingStep("current that opens the device for certain", "", "", new Figure(sure.High, "A"), guards[0].Device.Label),
                    new WorkingStep("largest settled fault current", "", "", new Figure(settled.High, "A"), "highest voltage, all feeds"),
                    new WorkingStep($"longest time at {Figures.Text(Math.Sqrt(from * to), "A")}", "", "", new Figure(guard.Longest(Math.Sqrt(from * to), skip).Low, "s"), string.Join(", ", guard.Devices.Select(device => device.Basis).Distinct())),
                    new WorkingStep($"time that it bears {Figures.Text(Math.Sqrt(from * to), "A")}", "", "", new Figure(endurance.Harmed(Math.Sqrt(from * to), conventional).High, "s"), "from its running to its short-time temperature"),
                    .. failing.Skip(1).Select(more => new WorkingStep("further range, up to", "", $"from {Figures.Text(more.From, "A")}", new Figure(more.To, "A"))),
                ]) with
            {
                Demand = new Figure(to, "A"),
                Capacity = new Figure(from, "A"),
                Corner = corner,
                UsesOperatingPoint = true,
                Named = [new NamedCurrents(place.Place, place.Part, new Range(from, failing[failing.Count - 1].To))],
            };
        }

        if (Ranges(grid, MayFail).Count > 0)
        {
            var at = grid.First(MayFail);
            ImmutableArray<MissingDatum> lacking =
            [
                .. guard.Longest(at, skip).IsExact ? [] : guard.Missing,
                .. endurance.Harmed(at, conventional).IsExact ? [] : endurance.Missing,
                .. sure.IsExact ? [] : guards.SelectMany(one => network.OpeningOf(one.Device)!.SureMissing),
                .. settled.IsExact ? [] : largest.Gaps,
            ];
            return subject.ToUndecided(lacking) with { Corner = corner, UsesOperatingPoint = true };
        }

        return subject.ToStructural(true, $"every current from {Figures.Text(sure.Low, "A")} to {Figures.Text(high, "A")} in {subject.Where} is interrupted before it harms", bears) with
        {
            Corner = corner,
            Assumptions = [.. guard.Assumptions.Concat(largest.Assumptions).Distinct()],
            UsesOperatingPoint = true,
        };
    }

    private static IEnumerable<(bool? Holds, ImmutableArray<MissingDatum> Missing, WorkingStep Step)> Lasting(Network network, Network.PartPlace place, List<Protection.Guarding> guards, Range sure) =>
        guards.Select(one => Protection.Harmless(network, one.Device, one.End with { Elements = [place] }, latches: false, sure, []));

    /// <summary>Contiguous ranges of the grid in which something is so, their edges refined.</summary>
    private static List<(double From, double To)> Ranges(List<double> grid, Func<double, bool> isSo)
    {
        var result = new List<(double From, double To)>();
        double? from = null;
        for (var k = 0; k < grid.Count; k++)
        {
            var now = isSo(grid[k]);
            if (now && from is null)
            {
                from = k == 0 ? grid[0] : Edge(grid[k - 1], grid[k], false);
            }
            else if (!now && from is { } begun)
            {
                result.Add((begun, Edge(grid[k - 1], grid[k], true)));
                from = null;
            }
        }

        if (from is { } open)
        {
            result.Add((open, grid[grid.Count - 1]));
        }

        return result;

        double Edge(double low, double high, bool first)
        {
            for (var round = 0; round < 40 && high / low > 1 + 1e-9; round++)
            {
                var middle = Math.Sqrt(low * high);
                if (isSo(middle) == first)
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }

            return first ? low : high;
        }
    }
}
