namespace RailRules.Rules;

/// <summary>RAIL0603: a joint unsuited to the vibration or thermal cycling stated.</summary>
public sealed class JointUnsuited : Rule
{
    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0603",
        "Joint unsuited to the vibration or thermal cycling stated",
        RuleSeverity.Warning,
        "A part is held by a kind of joint that the policy does not trust with the vibration or the thermal cycles that its surroundings state.")
    {
        Basis = "Limits for each kind of joint: starting values of the policy, common practice, no source",
    };

    /// <inheritdoc/>
    public override IEnumerable<Check> Apply(Network network)
    {
        foreach (var rail in network.JudgedRails)
        {
            foreach (var hidden in Subject.Hidden(Description, network, rail).Where(_ => Asks(network, rail)))
            {
                yield return hidden;
            }

            foreach (var place in network.Parts(rail))
            {
                if (Network.MakeOf(place.Part) is not { } make)
                {
                    continue;
                }

                foreach (var check in Judge(network, place, make))
                {
                    yield return check;
                }
            }
        }
    }

    /// <summary>Whether the surroundings of a rail state anything that its parts would be judged by.</summary>
    private static bool Asks(Network network, Rail rail)
    {
        var (stated, hidden) = network.SurroundingsOf(rail);
        return hidden is not null || stated.Any(one =>
            one.Surroundings.Vibration is not null || one.Surroundings.ThermalCyclesPerDay is not null
            || network.IsUnknown(one.Surroundings, nameof(Surroundings.Vibration)) || network.IsUnknown(one.Surroundings, nameof(Surroundings.ThermalCyclesPerDay)));
    }

    private IEnumerable<Check> Judge(Network network, Network.PartPlace place, Network.Make make)
    {
        var (stated, hidden) = network.SurroundingsOf(place);
        var subject = Subject.Of(Description, place, nameof(Fuse.Joint));
        var asked = false;
        foreach (var (datum, unit) in new[] { (nameof(Surroundings.Vibration), "m/s²"), (nameof(Surroundings.ThermalCyclesPerDay), "/day") })
        {
            foreach (var (surroundings, label) in stated)
            {
                var of = new DatumPlace(surroundings, datum);
                if (network.IsUnknown(surroundings, datum))
                {
                    asked = true;
                    yield return subject.ToUndecided([new MissingDatum(of, label)]);
                    break;
                }

                var value = datum == nameof(Surroundings.Vibration) ? surroundings.Vibration?.MetersPerSecondSquared : surroundings.ThermalCyclesPerDay;
                if (value is { } demand)
                {
                    asked = true;
                    yield return Judge(network, place, make, subject, demand, unit, of, label);
                    break;
                }
            }
        }

        if (!asked && hidden is not null)
        {
            yield return subject.ToUndecided([hidden]);
        }
    }

    private static Check Judge(Network network, Network.PartPlace place, Network.Make make, Subject subject, double demand, string unit, DatumPlace asks, string surroundings)
    {
        if (make.Joint is not { } joint)
        {
            return subject.ToUndecided([new MissingDatum(new DatumPlace(place.Part, nameof(Fuse.Joint)), place.Label)]);
        }

        var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
        var limits = new DatumPlace(margins.Policy, nameof(DesignPolicy.JointLimits));
        var limit = Network.Items(margins.Policy.JointLimits).FirstOrDefault(one => one is not null && one.Joint == joint);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.JointLimits)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var missing = new List<MissingDatum>();
        var vibrates = asks.Datum == nameof(Surroundings.Vibration);
        var bears = (vibrates ? limit?.Vibration?.MetersPerSecondSquared : limit?.ThermalCyclesPerDay) ?? double.PositiveInfinity;
        var capacity = Range.Exactly(bears);
        if (!vibrates && limit?.CyclesFromLength is { } from && !double.IsInfinity(bears))
        {
            if (place.Part.BodyLength is not { } length)
            {
                capacity = new Range(bears, double.PositiveInfinity);
                missing.Add(new MissingDatum(new DatumPlace(place.Part, nameof(Element.BodyLength)), place.Label));
            }
            else if (length <= from)
            {
                capacity = Range.Exactly(double.PositiveInfinity);
            }
        }

        var weighing = Weighing.Of(Range.Exactly(demand), capacity);
        var message = $"{subject.Where} is held by {Name(joint)}, good for {Text(weighing.Capacity, unit)}; the surroundings of '{surroundings}' state {Text(demand, unit)}";
        WorkingStep[] working =
        [
            new WorkingStep(vibrates ? "vibration, r.m.s." : "thermal cycles a day", "", "", new Figure(demand, unit), "surroundings", asks),
            new WorkingStep($"limit for {Name(joint)}", "", "", new Figure(capacity.Low, unit), Network.PolicySource(margins.Policy, nameof(DesignPolicy.JointLimits)), limits),
        ];
        var check = weighing.ToCheck(subject, unit, message, working, missing);
        return check with
        {
            Corner = "surroundings stated nearest to the part",
            Places = check.Places.Add(asks),
            Assumptions = double.IsInfinity(bears) ? [$"the policy sets no limit of {(vibrates ? "vibration" : "thermal cycling")} for {Name(joint)}"] : [],
        };
    }

    private static string Text(double value, string unit) => unit != "/day" && double.IsInfinity(value) ? "any vibration by this policy" : unit == "/day" ? (double.IsInfinity(value) ? "any number of cycles by this policy" : $"{Figures.Digits(value)} cycles a day") : Figures.Text(value, unit) + " r.m.s.";

    private static string Name(Joint joint) => joint switch
    {
        Joint.Soldered => "solder on laminate",
        Joint.Bolted => "bolts without locking",
        Joint.BoltedLocked => "locked bolts",
        Joint.SpringContact => "spring contacts",
        Joint.Clip => "a clip",
        Joint.Welded => "welding",
        Joint.Crimped => "crimping",
        _ => "its joint",
    };
}
