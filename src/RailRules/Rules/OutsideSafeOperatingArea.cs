using System.Collections.Immutable;
using RailRules.Physics;
using UnitsNet;

namespace RailRules.Rules;

/// <summary>RAIL0403: a switch outside its safe operating area at start-up or on a fault, or a contact that makes or breaks more than it may.</summary>
public sealed partial class OutsideSafeOperatingArea : Rule
{
    /// <summary>What a diagram is divided by beyond the knee of thermal instability where nothing is stated at temperature. Common practice, no source.</summary>
    private const double InstabilityFactor = 1.5;

    private const string StartUp = "start-up";

    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0403",
        "A switch outside its safe operating area at start-up or on a fault",
        RuleSeverity.Error,
        "While it starts, starts into a short circuit, meets one while running, or retries, a transistor bears voltage and current at once for longer than its safe operating area at that temperature allows; or it takes more avalanche energy when it opens, or a contact makes or breaks more current, than is stated for it.")
    {
        Basis = "Safe operating area of the part, scaled by (T_max − T_case)/(T_max − 25 °C): linear heat balance, textbooks of power semiconductors (from memory); a falling power as its peak for half its time: common practice, no source; energy of an interrupted inductance: circuit theory",
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
                var checks = place.Part switch
                {
                    ElectronicFuse electronic => Electronic(network, place, electronic),
                    Switch contact => Contact(network, place, contact),
                    _ => [],
                };
                foreach (var check in checks)
                {
                    yield return check;
                }
            }
        }
    }

    private IEnumerable<Check> Electronic(Network network, Network.PartPlace place, ElectronicFuse part)
    {
        var high = network.VoltagesOf(place.Rail).High;
        if (!high.IsKnown)
        {
            yield return Subject.Of(Description, place, nameof(ElectronicFuse.SafeOperatingArea)).ToUndecided(high.Missing);
            yield break;
        }

        var (most, least) = (network.LargestFault(place, place.Place.Index ?? 0, reverse: false, least: false), network.LargestFault(place, place.Place.Index ?? 0, reverse: false, least: true));
        var starting = new Limits(network, place, part, high.Value);

        // A source that gives no more than the lowest start current leaves the switch fully on.
        var regulates = !(part is { StartCurrent: { } lowest, StartPower: null } && most.Peak <= lowest.Min.Amperes * (1 + Weighing.Tolerance));
        if (regulates && Start(network, place, starting) is { } start)
        {
            yield return Judge(network, place, part, high, start);
        }

        if (regulates)
        {
            yield return Judge(network, place, part, high, StartIntoShort(place, part, starting));
        }

        if (ShortWhileRunning(place, part, high.Value, most, least) is { } running)
        {
            yield return Judge(network, place, part, high, running);
        }

        if (regulates && RetryAverage(network, place, part, high, starting) is { } average)
        {
            yield return average;
        }

        if (part.AvalancheEnergy is { } energy && TurnOff(network, place, energy, nameof(ElectronicFuse.AvalancheEnergy), part.MaxVoltage, nameof(ElectronicFuse.MaxVoltage), most.Peak) is { } turnOff)
        {
            yield return turnOff;
        }
    }

    /// <summary>What a transistor bears: voltages with the currents at them, all for one time.</summary>
    /// <param name="Event">In words.</param>
    /// <param name="Datum">The datum of the part that decides how hard or how long.</param>
    /// <param name="Points">Voltages across it (V), with currents between bounds (A).</param>
    /// <param name="Width">For how long (s).</param>
    private sealed record Stress(string Event, string Datum, ImmutableArray<(double Voltage, Range Current)> Points, Range Width)
    {
        internal List<MissingDatum> Missing { get; } = [];

        internal List<WorkingStep> Working { get; } = [];
    }

    /// <summary>What an electronic fuse lets flow at most while it starts.</summary>
    private sealed class Limits
    {
        private readonly double voltage;

        internal Limits(Network network, Network.PartPlace place, ElectronicFuse part, double voltage)
        {
            this.voltage = voltage;
            Current = part.StartCurrent?.Max.Amperes ?? double.PositiveInfinity;
            Power = (double?)part.StartPower?.Max.Watts ?? double.PositiveInfinity;
            if (part.StartCurrent is { } stated)
            {
                Working.Add(new WorkingStep("highest start current", "", "", new Figure(stated.Max.Amperes, "A"), "data of the part", new DatumPlace(part, nameof(ElectronicFuse.StartCurrent))));
            }
            else
            {
                Missing.Add(new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.StartCurrent)), place.Label));
            }

            if (part.StartPower is { } limited)
            {
                Working.Add(new WorkingStep("highest start power", "", "", new Figure((double)limited.Max.Watts, "W"), "data of the part", new DatumPlace(part, nameof(ElectronicFuse.StartPower))));
            }
            else if (network.IsUnknown(part, nameof(ElectronicFuse.StartPower)))
            {
                Missing.Add(new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.StartPower)), place.Label));
            }

            if (part.StartTimer is { } timer)
            {
                Timer = timer.Max.Seconds;
            }
        }

        internal double Current { get; }

        internal double Power { get; }

        /// <summary>The longest start timer (s); null: none is stated.</summary>
        internal double? Timer { get; }

        /// <summary>Whether a datum is missing without which current or power may be anything less.</summary>
        internal bool IsOpen => Missing.Count > 0;

        internal List<MissingDatum> Missing { get; } = [];

        internal List<WorkingStep> Working { get; } = [];

        /// <summary>The current at a voltage across the switch (A).</summary>
        internal Range At(double across)
        {
            var current = Math.Min(Current, Power / across);
            return new Range(IsOpen ? 0 : current, current);
        }

        /// <summary>Voltages across the switch to look at: the highest; where the power limit ends; those of the diagram between.</summary>
        internal IEnumerable<double> Voltages(SafeArea? area) => double.IsInfinity(Power) || Power / voltage >= Current
            ? [voltage]
            : [voltage, .. (area?.Voltages ?? []).Append(Power / Current).Where(v => v < voltage && v >= Power / Current && v > 0)];
    }

    /// <summary>The start proper: at constant current a power that falls from V I to nothing; null: nothing is charged, or no end that this rule judges.</summary>
    private static Stress? Start(Network network, Network.PartPlace place, Limits limits)
    {
        var behind = network.BringUpOf(place.Rail);
        var part = (ElectronicFuse)place.Part;
        var voltage = network.VoltagesOf(place.Rail).High.Value;
        if (!(behind.Capacitance > 0) || voltage <= 0)
        {
            return null;
        }

        var longest = limits.Timer ?? double.PositiveInfinity;
        var (shortTime, longTime) = limits.IsOpen ? (0, double.PositiveInfinity) : (Effective(behind.Least), Effective(behind.Most));
        if (double.IsInfinity(shortTime) && !double.IsInfinity(behind.Capacitance))
        {
            // It never ends: RAIL0402 says so, and the start into a short is worse.
            return null;
        }

        if (double.IsInfinity(behind.Capacitance))
        {
            (shortTime, longTime) = (0, double.PositiveInfinity);
        }

        var stress = new Stress(
            StartUp, nameof(ElectronicFuse.StartCurrent), [.. limits.Voltages(AreaOf(part.SafeOperatingArea)).Select(v => (v, limits.At(v)))], new Range(Math.Min(shortTime, longest), Math.Min(longTime, longest)));
        stress.Missing.AddRange([.. limits.Missing, .. behind.CapacitorGaps, .. behind.LoadGaps]);
        stress.Working.AddRange(behind.Working);
        stress.Working.AddRange(limits.Working);
        if (!double.IsInfinity(behind.Capacitance))
        {
            stress.Working.Add(new WorkingStep("energy of the charge", "C V²/2", $"{Figures.Text(behind.Capacitance, "F")} × ({Figures.Text(voltage, "V")})² / 2", new Figure(behind.Capacitance * voltage * voltage / 2, "J"), "lost in the switch without loads, more with them"));
        }

        return stress;

        // A falling power counts as its peak for half its time, a limited one for all of it.
        double Effective(ImmutableArray<StartLoad> loads)
        {
            if (SwitchedStart.Of(voltage, 1, new StartLimits(limits.Current, limits.Power), loads) is not { } start || start.Until(voltage) is not { } end)
            {
                return double.PositiveInfinity;
            }

            var flat = voltage - (limits.Power / limits.Current) is > 0 and var knee && start.Until(knee) is { } before ? before.Time : 0;
            return behind.Capacitance * (flat + ((end.Time - flat) / 2));
        }
    }

    private static Stress StartIntoShort(Network.PartPlace place, ElectronicFuse part, Limits limits)
    {
        var voltage = limits.Voltages(null).First();
        var stress = new Stress("a start into a short circuit", nameof(ElectronicFuse.StartTimer), [(voltage, limits.At(voltage))], limits.Timer is { } seconds ? Range.Exactly(seconds) : new Range(0, double.PositiveInfinity));
        stress.Missing.AddRange(limits.Missing);
        stress.Working.AddRange(limits.Working);
        if (part.StartTimer is { } timer)
        {
            stress.Working.Add(new WorkingStep("start timer, longest", "", "", new Figure(timer.Max.Seconds, "s"), "data of the part", new DatumPlace(part, nameof(ElectronicFuse.StartTimer))));
        }
        else
        {
            stress.Missing.Add(new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.StartTimer)), place.Label));
        }

        return stress;
    }

    /// <summary>A short circuit at its output: the current goes on to rise for the response after it has passed the fast level. Null: the fault stays within what it carries, or never reaches the level.</summary>
    private static Stress? ShortWhileRunning(Network.PartPlace place, ElectronicFuse part, double voltage, Network.FaultCurrent most, Network.FaultCurrent least)
    {
        if (part.TripLevel is { } carries && most.Peak <= carries.Min.Amperes * (1 + Weighing.Tolerance))
        {
            return null;
        }

        Range current, width;
        List<MissingDatum> missing = [];
        if (part is { ShortCircuitLevel: { } level, ShortCircuitResponse: { } response })
        {
            var seconds = response.Max.Seconds;
            var (largest, smallest) = (Passed(most.Current, level.Max.Amperes, seconds), Passed(least.Current, level.Max.Amperes, seconds));
            if (largest <= 0)
            {
                return null;
            }

            (current, width) = (new Range(Math.Min(smallest, largest), largest), Range.Exactly(seconds));
            missing.AddRange([.. most.Gaps, .. most.SlowGaps]);

            // Between the bounds lies the inductance of the path, which alone slows what capacitors give.
            if (!current.IsExact)
            {
                var path = Network.Items(place.Rail.Path);
                missing.AddRange(path.Select((element, index) => (Element: element, Index: index)).Where(one => one.Element is { Inductance: null }).Select(one => new MissingDatum(new DatumPlace(one.Element, nameof(Element.Inductance)), Network.Label(one.Element, place.Rail, one.Index))));
            }
        }
        else
        {
            (current, width) = (new Range(0, most.Peak), part.ShortCircuitResponse is { } stated ? Range.Exactly(stated.Max.Seconds) : new Range(0, double.PositiveInfinity));
            missing.Add(new MissingDatum(new DatumPlace(part, part.ShortCircuitLevel is null ? nameof(ElectronicFuse.ShortCircuitLevel) : nameof(ElectronicFuse.ShortCircuitResponse)), place.Label));
        }

        var stress = new Stress("a short circuit while running", nameof(ElectronicFuse.ShortCircuitResponse), [(voltage, current)], width);
        stress.Missing.AddRange(missing);
        if (part.ShortCircuitLevel is { } fast)
        {
            stress.Working.Add(new WorkingStep("highest fast level", "", "", new Figure(fast.Max.Amperes, "A"), "data of the part", new DatumPlace(part, nameof(ElectronicFuse.ShortCircuitLevel))));
        }

        if (part.ShortCircuitResponse is { } slowest)
        {
            stress.Working.Add(new WorkingStep("longest response", "", "", new Figure(slowest.Max.Seconds, "s"), "data of the part", new DatumPlace(part, nameof(ElectronicFuse.ShortCircuitResponse))));
        }

        if (!double.IsInfinity(current.High))
        {
            stress.Working.Add(new WorkingStep("current when it opens", "level + V/L × response", "", new Figure(current.High, "A"), "fault just behind it, all feeds, cold; never above the prospective peak"));
        }

        return stress;

        static double Passed(Waveform? waveform, double level, double response) =>
            waveform is null ? double.PositiveInfinity : Openings.ElectronicLetThrough(waveform, level, response) is { } passed ? passed.Peak : 0;
    }

    /// <summary>Weighs a stress against the safe operating area.</summary>
    private Check Judge(Network network, Network.PartPlace place, ElectronicFuse part, Network.Voltage high, Stress stress)
    {
        var subject = Subject.Of(Description, place, stress.Datum, new DatumPlace(part, nameof(ElectronicFuse.SafeOperatingArea)));
        var bears = new Bearing(network, place, part.SafeOperatingArea, part.JunctionTemperatureLimit, part.CaseTemperature);
        if (bears.Unknown is { } unknown)
        {
            return subject.ToUndecided([unknown]);
        }

        // The point with least to spare.
        Range demand = default, capacity = default;
        var (worst, at) = (double.PositiveInfinity, 0.0);
        var unstable = false;
        foreach (var (voltage, current) in stress.Points)
        {
            var (allowed, isUnstable) = bears.Current(voltage, stress.Width);
            var spare = current.High <= 0 ? double.MaxValue : double.IsInfinity(current.High) ? 0 : allowed.Low / current.High;
            if (spare < worst)
            {
                (worst, at, unstable) = (spare, voltage, isUnstable);
                (demand, capacity) = (new Range(voltage * current.Low, voltage * current.High), new Range(voltage * allowed.Low, voltage * allowed.High));
            }
        }

        var weighing = Weighing.Of(demand, capacity);
        var time = weighing.Verdict == Verdict.Holds ? stress.Width.High : stress.Width.Low;
        var lasts = double.IsInfinity(time) ? "for ever" : "for " + Figures.Text(time, "s");
        var working = new List<WorkingStep> { high.Step("highest steady voltage") };
        working.AddRange(stress.Working);
        if (!double.IsInfinity(weighing.Demand))
        {
            working.Add(new WorkingStep("power in the switch", "V_DS × I", $"{Figures.Text(at, "V")} × {Figures.Text(weighing.Demand / Math.Max(at, double.Epsilon), "A")}", new Figure(weighing.Demand, "W")));
        }

        if (!double.IsInfinity(time))
        {
            working.Add(new WorkingStep("for a time of", "", "", new Figure(time, "s"), stress.Event == StartUp ? "a falling power counts as its peak for half its time" : ""));
        }

        working.AddRange(bears.Working(at, time, unstable));
        var message = $"{subject.Where} bears {Figures.Text(weighing.Demand, "W")} {lasts} at {stress.Event}; its safe area at {bears.CaseText} allows {Figures.Text(weighing.Capacity, "W")}";
        return weighing.ToCheck(subject, "W", message, working, [.. stress.Missing, .. bears.Missing(stress.Points.Select(point => point.Voltage), stress.Width)]) with
        {
            Corner = "highest voltage, highest limit, longest time, hottest case",
            Assumptions = bears.Assumptions,
            UsesOperatingPoint = true,
        };
    }

    /// <summary>Average over tries into a short circuit for ever, against what it dissipates for ever. Null: it stays off.</summary>
    private Check? RetryAverage(Network network, Network.PartPlace place, ElectronicFuse part, Network.Voltage high, Limits limits)
    {
        var unstated = part.Retry is null;
        if (part.Retry == Retry.LatchOff)
        {
            return null;
        }

        var subject = Subject.Of(Description, place, nameof(ElectronicFuse.RetryInterval), new DatumPlace(part, nameof(ElectronicFuse.Retry)));
        var bears = new Bearing(network, place, part.SafeOperatingArea, part.JunctionTemperatureLimit, part.CaseTemperature);
        if (bears.Unknown is { } unknown)
        {
            return subject.ToUndecided([unknown]);
        }

        var missing = new List<MissingDatum>(limits.Missing);
        var peak = new Range(high.Value * limits.At(high.Value).Low, high.Value * limits.At(high.Value).High);
        double least = 0, most = 1;
        if (limits.Timer is { } on && part.RetryInterval is { } interval)
        {
            least = most = on <= 0 ? 0 : on / (on + Math.Max(0, interval.Min.Seconds));
        }
        else
        {
            missing.Add(new MissingDatum(new DatumPlace(part, part.RetryInterval is null ? nameof(ElectronicFuse.RetryInterval) : nameof(ElectronicFuse.StartTimer)), place.Label));
        }

        if (unstated)
        {
            least = 0;
            missing.Add(new MissingDatum(new DatumPlace(part, nameof(ElectronicFuse.Retry)), place.Label));
        }

        var (capacity, steps) = bears.ForEver(high.Value, part.MaxDissipation, missing);
        var weighing = Weighing.Of(new Range(peak.Low * least, most <= 0 ? 0 : peak.High * most), capacity);
        var working = new List<WorkingStep> { high.Step("highest steady voltage") };
        working.AddRange(limits.Working);
        if (!double.IsInfinity(peak.High))
        {
            working.Add(new WorkingStep("power of a try into a short circuit", "V × I", $"{Figures.Text(high.Value, "V")} × {Figures.Text(peak.High / Math.Max(high.Value, double.Epsilon), "A")}", new Figure(peak.High, "W"), "for the longest start timer"));
        }

        if (most < 1)
        {
            working.Add(new WorkingStep("share of the time", "t_on / (t_on + t_off)", $"{Figures.Text(limits.Timer ?? 0, "s")} / ({Figures.Text(limits.Timer ?? 0, "s")} + {Figures.Text(part.RetryInterval!.Value.Min.Seconds, "s")})", new Figure(most, ""), "longest timer, shortest interval", new DatumPlace(part, nameof(ElectronicFuse.RetryInterval))));
        }

        working.AddRange(steps);
        var message = $"{subject.Where} bears {Figures.Text(weighing.Demand, "W")} on average at retries into a short circuit; at {bears.CaseText} it dissipates {Figures.Text(weighing.Capacity, "W")} for ever";
        return weighing.ToCheck(subject, "W", message, working, missing) with
        {
            Corner = "highest voltage, highest limit, longest try, shortest interval, hottest case",
            Assumptions = bears.Assumptions,
        };
    }

    /// <summary>The energy that the inductance before the switch drives through it when it opens. Null: it does not come to its avalanche voltage.</summary>
    private Check? TurnOff(Network network, Network.PartPlace place, Energy rated, string datum, ElectricPotential? rating, string ratingDatum, double prospective)
    {
        if (SwitchOpening.Of(network, place) is not { } opening)
        {
            return null;
        }

        var high = network.VoltagesOf(place.Rail).High.Value;
        var avalanche = rating?.Volts;
        if (avalanche <= high || opening.Voltage.High <= avalanche)
        {
            // Below the steady voltage RAIL0101 fails; below the rating nothing breaks down.
            return null;
        }

        var subject = Subject.Of(Description, place, datum);
        var missing = opening.Missing.Where(one => !(ReferenceEquals(one.Place.Owner, place.Part) && one.Place.Datum == datum)).ToList();
        var current = new Range(Math.Min(opening.Current.Low, prospective), Math.Min(opening.Current.High, prospective));
        var demand = new Range(0, double.PositiveInfinity);
        if (avalanche is { } volts)
        {
            // The lowest voltage at which it can break down is its rating; the nearer to the source's, the longer it takes.
            var breaksDown = !opening.IsClamped || opening.Voltage.Low > volts;
            demand = new Range(breaksDown ? EnergyOf(opening.Inductance.Low, current.Low, volts, high) : 0, EnergyOf(opening.Inductance.High, current.High, volts, high));
        }
        else
        {
            missing.Add(new MissingDatum(new DatumPlace(place.Part, ratingDatum), place.Label));
        }

        var weighing = Weighing.Of(demand, Range.Exactly(rated.Joules));
        var working = new List<WorkingStep> { network.VoltagesOf(place.Rail).High.Step("highest steady voltage") };
        if (!double.IsInfinity(current.High) && !double.IsInfinity(opening.Inductance.High))
        {
            working.Add(new WorkingStep("current that is opened", "", "", new Figure(current.High, "A"), "trip level, and what flows until it has opened; never above the prospective peak"));
            working.Add(new WorkingStep("inductance up to the switch", "", "", new Figure(opening.Inductance.High, "H"), "source and path above the switch"));
            if (avalanche is { } breaks && !double.IsInfinity(demand.High))
            {
                working.Add(new WorkingStep(
                    "energy of the avalanche", "L I²/2 × V_c/(V_c − V)", $"{Figures.Text(opening.Inductance.High, "H")} × ({Figures.Text(current.High, "A")})² / 2 × {Figures.Text(breaks, "V")} / ({Figures.Text(breaks, "V")} − {Figures.Text(high, "V")})", new Figure(demand.High, "J"), "circuit theory; avalanche no lower than the voltage rating", new DatumPlace(place.Part, ratingDatum)));
            }
        }

        working.Add(new WorkingStep("avalanche energy", "", "", new Figure(rated.Joules, "J"), "data of the part", new DatumPlace(place.Part, datum)));
        return weighing.ToCheck(subject, "J", $"{subject.Where} takes {Figures.Text(weighing.Demand, "J")} when it opens; it may take {Figures.Text(weighing.Capacity, "J")} in one avalanche", working, missing) with
        {
            Corner = "largest inductance, largest current, lowest avalanche voltage",
            UsesOperatingPoint = true,
        };

        static double EnergyOf(double inductance, double current, double clamping, double source) =>
            inductance <= 0 || current <= 0 ? 0 : double.IsInfinity(inductance) || double.IsInfinity(current) ? double.PositiveInfinity : Clamp.InductiveEnergy(inductance, current, clamping, source) ?? double.PositiveInfinity;
    }

    /// <summary>The diagram of a part; null: none is stated.</summary>
    private static SafeArea? AreaOf(SafeOperatingArea? stated) => stated is null ? null : SafeArea.Of(
        Network.Items(stated.Points).Where(point => point is not null).Select(point => new SafeAreaPoint(point.Voltage.Volts, point.Current.Amperes, point.Width.Seconds, point.CaseTemperature?.DegreesCelsius ?? 25)));
}
