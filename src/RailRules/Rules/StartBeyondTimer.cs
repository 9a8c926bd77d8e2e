using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules.Rules;

/// <summary>RAIL0402: an electronic fuse that cannot bring up its load before its timer.</summary>
public sealed class StartBeyondTimer : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0402",
        "An electronic fuse that cannot bring up its load before its timer",
        RuleSeverity.Error,
        "At its lowest start current an electronic fuse or hot-swap switch needs longer to charge the capacitors behind it, with the loads that are on, than its start timer lasts; or the loads take all that it gives, and the start never ends.")
    {
        Basis = "Charge balance of the capacitor, dt = C dv / (I_start − I_load): circuit theory",
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
                if (place.Part is ElectronicFuse electronic && Judge(network, place, electronic) is { } check)
                {
                    yield return check;
                }
            }
        }
    }

    private Check? Judge(Network network, Network.PartPlace place, ElectronicFuse electronic)
    {
        var behind = network.BringUpOf(place.Rail);
        if (behind.IsNothing)
        {
            return null;
        }

        var margins = network.PolicyAt(place.Rail, electronic.Policy, electronic);
        var high = network.VoltagesOf(place.Rail).High;
        var weakest = network.WeakestLimit(place.Rail);
        var missing = new List<MissingDatum>([.. high.Missing, .. behind.CapacitorGaps, .. behind.LoadGaps]);
        var current = Lowest(nameof(ElectronicFuse.StartCurrent), electronic.StartCurrent?.Min.Amperes, isNone: false);
        var power = Lowest(nameof(ElectronicFuse.StartPower), (double?)electronic.StartPower?.Min.Watts, isNone: true);
        var slow = new StartLimits(Math.Min(current.Low, weakest.Level), power.Low);
        var fast = new StartLimits(Math.Min(current.High, weakest.Level), power.High);
        var demand = high.IsKnown
            ? new Range(TimeTo(high.Value, behind.Capacitance, fast, behind.Least, fastest: true), TimeTo(high.Value, behind.Capacitance, slow, behind.Most, fastest: false))
            : new Range(0, double.PositiveInfinity);

        var subject = Subject.Of(Description, place, nameof(ElectronicFuse.StartTimer));
        if (network.UnknownMargin(margins, nameof(DesignPolicy.StartTimeFactor)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var timer = electronic.StartTimer?.Min.Seconds;
        var hasNone = timer is null && !network.IsUnknown(electronic, nameof(ElectronicFuse.StartTimer));
        if (hasNone && demand.High < double.PositiveInfinity)
        {
            // It ends; how hot the switch gets meanwhile RAIL0403 judges.
            return null;
        }

        if (timer is null)
        {
            missing.AddRange(hasNone ? [] : [new MissingDatum(new DatumPlace(electronic, nameof(ElectronicFuse.StartTimer)), place.Label)]);
        }

        var factor = margins.Policy.StartTimeFactor;
        var end = timer is { } seconds ? Range.Exactly(seconds / factor) : new Range(hasNone ? double.MaxValue : 0, double.MaxValue);
        var weighing = Weighing.Of(demand, end);
        var fails = weighing.Verdict == Verdict.Fails;
        var start = fails ? fast : slow;
        var loads = fails ? behind.Least : behind.Most;
        var working = new List<WorkingStep> { high.Step("highest steady voltage") };
        working.AddRange(behind.Working);
        if (electronic.StartCurrent is { } stated)
        {
            working.Add(new WorkingStep("lowest start current", "", "", new Figure(stated.Min.Amperes, "A"), "data of the part", new DatumPlace(electronic, nameof(ElectronicFuse.StartCurrent))));
        }

        if (electronic.StartPower is { } limited)
        {
            working.Add(new WorkingStep("lowest start power", "", "", new Figure((double)limited.Min.Watts, "W"), "data of the part", new DatumPlace(electronic, nameof(ElectronicFuse.StartPower))));
        }

        if (weakest.Level < current.Low && weakest.Step is { } step)
        {
            working.Add(step);
        }

        var draws = DrawOf(high.Value, start, loads);
        if (draws is { } on)
        {
            working.Add(new WorkingStep("load while it starts, largest", "", "", new Figure(on.Load, "A"), $"at {Figures.Text(on.Voltage, "V")}, where the switch gives {Figures.Text(on.Switch, "A")}"));
        }

        if (weighing.Demand is > 0 and < double.PositiveInfinity)
        {
            var numbers = loads.IsEmpty && double.IsInfinity(start.Power) ? $"{Figures.Text(behind.Capacitance, "F")} × {Figures.Text(high.Value, "V")} / {Figures.Text(start.Current, "A")}" : "";
            working.Add(new WorkingStep("time to bring the load up", Formula(start, loads.IsEmpty), numbers, new Figure(weighing.Demand, "s"), "charge balance of the capacitor"));
        }

        if (timer is { } lasts)
        {
            working.Add(new WorkingStep("start timer, shortest", "", "", new Figure(lasts, "s"), "data of the part", new DatumPlace(electronic, nameof(ElectronicFuse.StartTimer))));
            if (factor != 1)
            {
                working.Add(new WorkingStep("times the computed time it must last", "", "", new Figure(factor, ""), Network.PolicySource(margins.Policy, nameof(DesignPolicy.StartTimeFactor)), new DatumPlace(margins.Policy, nameof(DesignPolicy.StartTimeFactor))));
            }
        }

        var needs = double.IsInfinity(weighing.Demand) ? "for ever" : Figures.Text(weighing.Demand, "s");
        var with = draws is { } drawn ? $"with {Figures.Text(drawn.Load, "A")} on" : "with no load on";
        var ends = hasNone ? "it has no timer to give up" : factor == 1 ? $"its timer ends at {Figures.Text(weighing.Capacity, "s")}" : $"its timer leaves it {Figures.Text(weighing.Capacity, "s")}";
        var message = $"{subject.Where} needs {needs} to bring up {Figures.Text(double.IsInfinity(behind.Capacitance) ? 0 : behind.Capacitance, "F")} {with}; {ends}";
        var check = weighing.ToCheck(subject, "s", message, working, missing) with
        {
            Corner = "highest voltage, largest capacitance, lowest start current, largest load",
            UsesOperatingPoint = true,
        };
        return timer is null ? check with { Capacity = null } : check;

        Range Lowest(string datum, double? value, bool isNone)
        {
            if (value is { } number && !double.IsNaN(number))
            {
                return Range.Exactly(number);
            }

            if (isNone && !network.IsUnknown(electronic, datum))
            {
                return Range.Exactly(double.PositiveInfinity);
            }

            missing.Add(new MissingDatum(new DatumPlace(electronic, datum), place.Label));
            return new Range(0, double.PositiveInfinity);
        }
    }

    /// <summary>Time (s) until the capacitance has come from 0 to a voltage; infinite: never.</summary>
    private static double TimeTo(double voltage, double capacitance, StartLimits limits, ImmutableArray<StartLoad> loads, bool fastest)
    {
        if (fastest && double.IsInfinity(capacitance))
        {
            capacitance = 0;
        }

        if (!(limits.Current > 0 && limits.Power > 0) || double.IsInfinity(capacitance))
        {
            return double.PositiveInfinity;
        }

        // Time goes with the capacitance, so that one of 1 F gives it for all, for none too.
        return SwitchedStart.Of(voltage, 1, limits, loads) is { } start
            ? start.Until(voltage) is { } state ? state.Time * capacitance : double.PositiveInfinity
            : 0;
    }

    /// <summary>Where the loads leave the switch least: its voltage, what they draw and what it gives. Null: no load is on.</summary>
    private static (double Voltage, double Load, double Switch)? DrawOf(double voltage, StartLimits limits, ImmutableArray<StartLoad> loads)
    {
        if (SwitchedStart.Of(voltage, 1, limits, loads) is not { } start)
        {
            return null;
        }

        var at = loads.Where(load => load.From < voltage).Select(load => load.From).Append(voltage * (1 - 1e-12)).OrderBy(v => start.CurrentAt(v) - start.LoadAt(v));
        var v = start.Stall(voltage) ?? at.First();
        return start.LoadAt(v) is > 0 and var load ? (v, load, start.CurrentAt(v)) : null;
    }

    private static string Formula(StartLimits limits, bool isFree) =>
        double.IsInfinity(limits.Power) ? isFree ? "C V / I_start" : "∫ C dv / (I_start − I_load)" : isFree ? "∫ C dv / min(I_start, P/(V − v))" : "∫ C dv / (min(I_start, P/(V − v)) − I_load)";
}
