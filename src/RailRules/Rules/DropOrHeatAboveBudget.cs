using System.Collections.Immutable;
using RailRules.Physics;
using UnitsNet;

namespace RailRules.Rules;

/// <summary>RAIL0502: drop or dissipation above budget, of a rail, a fuse body, a fuse holder or a sense resistor.</summary>
public sealed class DropOrHeatAboveBudget : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0502",
        "Drop or dissipation above budget",
        RuleSeverity.Warning,
        "A rail drops more voltage or turns more power into heat than its budget allows, or a fuse body, fuse holder or sense resistor gets hotter, or takes more power, than its limit.")
    {
        Basis = "Circuit theory; heat of a fuse by its drop at rated current, rise in proportion to heat: common practice, no source; accepted power of holders: IEC 60127-6 (from memory)",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.Rails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail))
            {
                yield return hidden;
            }

            foreach (var check in OfRail(network, rail).Concat(OfParts(network, rail)))
            {
                yield return check;
            }
        }
    }

    private IEnumerable<Check> OfRail(Network network, Rail rail)
    {
        var place = new DatumPlace(rail, nameof(Rail.Budgets));
        if (network.IsUnknown(rail, nameof(Rail.Budgets)))
        {
            yield return Subject.Of(Description, rail, place).ToUndecided([new MissingDatum(place, Network.Label(rail))]);
        }

        if (rail.Budgets is not { } budgets)
        {
            yield break;
        }

        var flow = network.CurrentOf(rail);
        var low = network.VoltagesOf(rail).Low;
        if (budgets.Drop is { } volts || network.IsUnknown(budgets, nameof(Budgets.Drop)))
        {
            yield return Weigh(nameof(Budgets.Drop), flow.Drop, budgets.Drop?.Volts, "V", "drops", [new WorkingStep("drop from the source to the end of the path", "sum over the network", "", default, "largest over both source voltages and all feed states, hot resistances, return, contacts, fuses and diodes included")]);
        }

        if (budgets.DropShare is { } share || network.IsUnknown(budgets, nameof(Budgets.DropShare)))
        {
            var percent = low.IsKnown && low.Value > 0 ? 100 / low.Value : double.NaN;
            var demand = double.IsNaN(percent) ? new Range(0, flow.DropAtLowVoltage.High > 0 || !low.IsKnown ? double.PositiveInfinity : 0) : new Range(Times(flow.DropAtLowVoltage.Low, percent), Times(flow.DropAtLowVoltage.High, percent));
            yield return Weigh(
                nameof(Budgets.DropShare), demand, budgets.DropShare?.Percent, "%", "drops",
                [low.Step("lowest source voltage"), new WorkingStep("drop at the lowest source voltage, as a share of it", "drop / V", "", default, "hot resistances, return, contacts, fuses and diodes included")]);
        }

        if (budgets.Dissipation is { } watts || network.IsUnknown(budgets, nameof(Budgets.Dissipation)))
        {
            yield return Weigh(nameof(Budgets.Dissipation), flow.Heat, (double?)budgets.Dissipation?.Watts, "W", "turns", [new WorkingStep("heat of path, return and feeds", "sum of I × drop", "", default, "largest over both source voltages and all feed states, hot resistances")]);
        }

        Check Weigh(string datum, Range demand, double? budget, string unit, string verb, List<WorkingStep> steps)
        {
            var own = new DatumPlace(budgets, datum);
            var subject = Subject.Of(Description, rail, place, own);
            if (budget is not { } allowed)
            {
                return subject.ToUndecided([new MissingDatum(own, Network.Label(rail))]);
            }

            if (flow.Reason != Network.FlowReason.Solved)
            {
                return subject.ToUndecided(network.DoubtsAbout(flow, rail)) with { UsesOperatingPoint = true };
            }

            var weighing = Weighing.Of(demand, Range.Exactly(allowed));
            steps[^1] = steps[^1] with { Result = new Figure(weighing.Demand, unit) };
            var message = $"{subject.Where} {verb} {Figures.Text(weighing.Demand, unit)}{(verb == "turns" ? " into heat" : "")}; its budget is {Figures.Text(allowed, unit)}";
            return weighing.ToCheck(subject, unit, message, [.. steps, new WorkingStep("budget", "", "", new Figure(allowed, unit), "data of the rail", own)], network.MissingFor([rail])) with
            {
                UsesOperatingPoint = true,
                Corner = $"{(unit == "%" ? "lowest source voltage" : "largest current")}, hot resistances{(flow.State.Length > 0 ? ", worst feed state" : "")}",
                Assumptions = [.. network.OperatingAssumptions(rail)],
            };
        }
    }

    private IEnumerable<Check> OfParts(Network network, Rail rail)
    {
        foreach (var place in network.Parts(rail))
        {
            if (place.Part is Fuse fuse && (fuse.BodyTemperatureLimit is not null || network.IsUnknown(fuse, nameof(Fuse.BodyTemperatureLimit))))
            {
                yield return Body(network, place, nameof(Fuse.BodyTemperatureLimit), fuse.BodyTemperatureLimit, [place]);
            }
            else if (place.Part is SenseResistor resistor && (resistor.RatedPower is not null || network.IsUnknown(resistor, nameof(SenseResistor.RatedPower))))
            {
                yield return Power(network, place, nameof(SenseResistor.RatedPower), resistor.RatedPower, resistor.Derating, flow => OfResistor(place, resistor, flow), "turns", " into heat", "it may take");
            }
        }

        foreach (var (place, fuses) in network.HoldersOf(rail))
        {
            var holder = (FuseHolder)place.Part;
            if (fuses.Length > 0 && (holder.AcceptedPower is not null || network.IsUnknown(holder, nameof(FuseHolder.AcceptedPower))))
            {
                yield return Power(network, place, nameof(FuseHolder.AcceptedPower), holder.AcceptedPower, holder.Derating, flow => OfFuses(place, fuses, flow), "takes", $" of '{string.Join("' or '", fuses.Select(one => one.Label))}'", "it accepts");
            }

            if (fuses.Length > 0 && (holder.TemperatureLimit is not null || network.IsUnknown(holder, nameof(FuseHolder.TemperatureLimit))))
            {
                yield return Body(network, place, nameof(FuseHolder.TemperatureLimit), holder.TemperatureLimit, fuses);
            }
        }
    }

    private static (Range Heat, ImmutableArray<MissingDatum> Missing) OfResistor(Network.PartPlace place, SenseResistor resistor, Range current)
    {
        var missing = ImmutableArray.Create(new MissingDatum(new DatumPlace(resistor, nameof(SenseResistor.Resistance)), place.Label));
        return resistor.Resistance is { } band
            ? (new Range(band.Max.Ohms * current.Low * current.Low, band.Max.Ohms * current.High * current.High), [])
            : (new Range(0, current.High > 0 ? double.PositiveInfinity : 0), missing);
    }

    /// <summary>Of two fuses beside the holder one stands in it.</summary>
    private static (Range Heat, ImmutableArray<MissingDatum> Missing) OfFuses(Network.PartPlace holder, ImmutableArray<Network.PartPlace> fuses, Range current)
    {
        var all = fuses.Select(place => Network.HeatOf(place, (Fuse)place.Part, current)).ToList();
        var range = new Range(all.Min(one => one.Heat.Low), all.Max(one => one.Heat.High));
        return (range, [.. all.SelectMany(one => one.Missing), .. Which(holder, fuses)]);
    }

    private static IEnumerable<MissingDatum> Which(Network.PartPlace holder, ImmutableArray<Network.PartPlace> fuses) =>
        fuses.Length > 1 ? [new MissingDatum(holder.Place with { Index = null }, Network.Label(holder.Rail))] : [];

    private Check Power(
        Network network, Network.PartPlace place, string datum, Power? limit, ImmutableArray<DeratingPoint> derating, Func<Range, (Range Heat, ImmutableArray<MissingDatum> Missing)> heat, string verb, string what, string may)
    {
        var subject = Subject.Of(Description, place, datum);
        var flow = network.CurrentOf(place);
        if (limit is null || flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(limit is null ? [new MissingDatum(new DatumPlace(place.Part, datum), place.Label)] : network.DoubtsAbout(flow, place.Rail)) with { UsesOperatingPoint = true };
        }

        var rating = network.PowerOf(place, datum, limit, derating);
        var (power, missing) = heat(new Range(flow.Low, flow.High));
        var weighing = Weighing.Of(power, rating.Capacity);
        var message = $"{subject.Where} {verb} {Figures.Text(weighing.Demand, "W")}{what}; {may} {Figures.Text(weighing.Capacity, "W")}{(rating.Hottest.IsExact ? $" at {Figures.Text(rating.Hottest.High, "°C")}" : "")}";
        WorkingStep[] working =
        [
            Current(flow, weighing),
            new WorkingStep("heat", place.Part is SenseResistor ? "I² R" : "U I² / I_n", "", new Figure(weighing.Demand, "W"), place.Part is SenseResistor ? "largest resistance" : "largest drop at rated current"),
            .. rating.Working,
        ];
        return weighing.ToCheck(subject, "W", message, working, [.. missing, .. network.DoubtsAbout(flow, place.Rail), .. rating.Missing]) with
        {
            UsesOperatingPoint = true,
            Corner = Corner(flow),
            Assumptions = [.. rating.Assumptions],
        };
    }

    /// <summary>The temperature of a fuse's body, against its own limit or that of the holder around it.</summary>
    private Check Body(Network network, Network.PartPlace place, string datum, Temperature? limit, ImmutableArray<Network.PartPlace> fuses)
    {
        var subject = Subject.Of(Description, place, datum);
        var flow = network.CurrentOf(place);
        if (limit is not { } highest || flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(limit is null ? [new MissingDatum(new DatumPlace(place.Part, datum), place.Label)] : network.DoubtsAbout(flow, place.Rail)) with { UsesOperatingPoint = true };
        }

        var missing = new List<MissingDatum>();
        var rises = fuses.Select(one => RiseOf(one, (Fuse)one.Part, flow, missing)).ToList();
        var rise = new Range(rises.Min(one => one.Low), rises.Max(one => one.High));
        missing.AddRange(Which(place, fuses));
        missing.AddRange(network.DoubtsAbout(flow, place.Rail));
        var air = network.AirAt(place.Rail, place.Part.Surroundings, place.Part);
        if (air.Missing is { } lacks)
        {
            missing.Add(new MissingDatum(lacks, lacks.Owner is Rail rail ? Network.Label(rail) : place.Label));
        }

        var left = new Range(highest.DegreesCelsius - air.Hottest.High, highest.DegreesCelsius - air.Hottest.Low);
        var weighing = Weighing.Of(rise, left);
        if (left.High < 0)
        {
            return subject.ToStructural(false, $"{subject.Where} stands in {Figures.Text(air.Hottest.Low, "°C")}; its limit is {Figures.Text(highest.DegreesCelsius, "°C")}", new WorkingStep("hottest air", "", "", new Figure(air.Hottest.Low, "°C"), "surroundings", air.AmbientPlace)) with { UsesOperatingPoint = true };
        }

        if (left.Low < 0 && weighing.Verdict == Verdict.Holds)
        {
            return subject.ToUndecided(missing) with { UsesOperatingPoint = true };
        }

        var ambient = weighing.Verdict == Verdict.Holds ? air.Hottest.High : air.Hottest.Low;
        var temperature = ambient + weighing.Demand;
        WorkingStep[] working =
        [
            Current(flow, weighing),
            new("hottest air", "", "", new Figure(ambient, "°C"), air.Missing is null ? "surroundings, heat of neighbours included" : "unstated: -40 to 85 °C (common practice)", air.AmbientPlace),
            new("rise of the body", "rise at rated current × (I / I_n)²", "", new Figure(weighing.Demand, "K"), "heat in proportion to the square of the current", new DatumPlace(fuses[0].Part, nameof(Fuse.TemperatureRise))),
            new("body", "air + rise", "", new Figure(temperature, "°C"), ""),
            new("left above the air", "limit - air", $"{Figures.Text(highest.DegreesCelsius, "°C")} - {Figures.Text(ambient, "°C")}", new Figure(weighing.Capacity, "K"), "data of the part", new DatumPlace(place.Part, datum)),
        ];
        var by = place.Part is FuseHolder ? $" by '{string.Join("' or '", fuses.Select(one => one.Label))}'" : "";
        return weighing.ToCheck(subject, "K", $"{subject.Where} reaches {Figures.Text(temperature, "°C")}{by}; its limit is {Figures.Text(highest.DegreesCelsius, "°C")}", working, missing) with
        {
            UsesOperatingPoint = true,
            Corner = Corner(flow),
        };
    }

    private static Range RiseOf(Network.PartPlace place, Fuse fuse, Network.Flow flow, List<MissingDatum> missing)
    {
        if (fuse.TemperatureRise is { } rise && fuse.RatedCurrent?.Amperes is > 0 and var rated)
        {
            return new Range(DeviceHeat.BodyTemperature(0, rise.Kelvins, Square(flow.Low / rated)), flow.High > 0 ? DeviceHeat.BodyTemperature(0, rise.Kelvins, Square(flow.High / rated)) : 0);
        }

        missing.Add(new MissingDatum(new DatumPlace(fuse, fuse.TemperatureRise is null ? nameof(Fuse.TemperatureRise) : nameof(Fuse.RatedCurrent)), place.Label));
        return new Range(0, flow.High > 0 ? double.PositiveInfinity : 0);
    }

    private static WorkingStep Current(Network.Flow flow, Weighing weighing) =>
        new("steady current", "", "", new Figure(weighing.Verdict == Verdict.Holds ? flow.High : flow.Low, "A"), "operating point, r.m.s.");

    private static string Corner(Network.Flow flow) => $"largest current, hottest air{(flow.State.Length > 0 ? ", " + flow.State : "")}";

    private static double Square(double value) => value * value;

    private static double Times(double a, double b) => a == 0 || b == 0 ? 0 : a * b;
}
