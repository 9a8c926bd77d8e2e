using System.Collections.Immutable;
using RailRules.Physics;
using UnitsNet;

namespace RailRules.Rules;

/// <summary>RAIL0503: a conductor above its temperature limit.</summary>
public sealed class ConductorTooHot : Rule
{
    private const double WidestTrace = 10e-3;
    private const double LargestCurrent = 35;
    private const double LargestRise = 100;

    /// <inheritdoc/>
    public override RuleDescription Description { get; } = new(
        "RAIL0503",
        "A conductor above its temperature limit",
        RuleSeverity.Error,
        "The steady current warms a trace, wire or busbar by more than its limit, or the policy's rise for traces, leaves above the hottest air.")
    {
        Basis = "Rise of traces: IPC-2221A, 6.2; rise in proportion to the square of the current: heat balance, common practice",
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
                if (place.Part is Trace or Wire or Busbar)
                {
                    yield return Judge(network, place);
                }
            }
        }
    }

    private Check Judge(Network network, Network.PartPlace place)
    {
        var flow = network.CurrentOf(place);
        var subject = Subject.Of(Description, place, place.Part is Trace { Ampacity: null } ? nameof(Trace.Width) : nameof(Wire.Ampacity));
        if (flow.Reason != Network.FlowReason.Solved)
        {
            return subject.ToUndecided(network.DoubtsAbout(flow, place.Rail)) with { UsesOperatingPoint = true };
        }

        var current = new Range(flow.Low, flow.High);
        var missing = network.DoubtsAbout(flow, place.Rail).ToList();
        return (place.Part is Trace trace ? OfTrace(network, place, trace, subject, current, missing) : OfWire(network, place, subject, current, missing)) with
        {
            UsesOperatingPoint = true,
            Corner = $"{(flow.AtHighVoltage ? "highest" : "lowest")} source voltage, hottest air{(flow.State.Length > 0 ? ", " + flow.State : "")}",
        };
    }

    private static Check OfTrace(Network network, Network.PartPlace place, Trace trace, Subject subject, Range current, List<MissingDatum> missing)
    {
        var margins = network.PolicyAt(place.Rail, trace.Policy, trace);
        if (network.UnknownMargin(margins, nameof(DesignPolicy.TraceRise)) is { } unknown)
        {
            return subject.ToUndecided([new MissingDatum(unknown, margins.Policy.Name)]);
        }

        var air = network.AirAt(place.Rail, trace.Surroundings, trace);
        var allowed = margins.Policy.TraceRise.Kelvins;
        var capacity = Range.Exactly(allowed);
        if (trace.TemperatureLimit is { } limit)
        {
            capacity = Left(limit, air, allowed);
            AddAir(air, place, missing);
        }
        else if (network.IsUnknown(trace, nameof(Trace.TemperatureLimit)))
        {
            capacity = new Range(0, allowed);
            missing.Add(new MissingDatum(new DatumPlace(trace, nameof(Trace.TemperatureLimit)), place.Label));
        }

        var working = new List<WorkingStep>();
        var assumptions = new List<string>();
        Range rise;
        if (trace.Ampacity is { } known)
        {
            working.Add(new WorkingStep("continuous current, tested", "", "", new Figure(known.Amperes, "A"), "data of the part", new DatumPlace(trace, nameof(Trace.Ampacity))));
            rise = new Range(Square(current.Low, known.Amperes) * allowed, Square(current.High, known.Amperes) * allowed);
            assumptions.Add($"the tested current of '{place.Label}' is taken to be that of a rise of {Figures.Text(allowed, "K")}");
        }
        else if (trace.Width?.Meters * trace.Thickness?.Meters is > 0 and var section)
        {
            working.Add(new WorkingStep("section of finished copper", "width × thickness", "", new Figure(section * 1e6, "mm²"), "data of the trace", new DatumPlace(trace, nameof(Trace.Width))));
            rise = new Range(Conductors.TraceRise(current.Low, section, trace.Inner ?? false), Conductors.TraceRise(current.High, section, trace.Inner ?? true));
            if (trace.Inner is null)
            {
                missing.Add(new MissingDatum(new DatumPlace(trace, nameof(Trace.Inner)), place.Label));
            }

            if (current.High > LargestCurrent || trace.Width?.Meters > WidestTrace || rise.Low > LargestRise)
            {
                assumptions.Add("extrapolated: the formula of IPC-2221 was drawn for up to 35 A, 10 mm and 100 K");
            }
        }
        else
        {
            rise = new Range(0, current.High > 0 ? double.PositiveInfinity : 0);
            missing.Clear();
            missing.Add(new MissingDatum(new DatumPlace(trace, trace.Width is null ? nameof(Trace.Width) : nameof(Trace.Thickness)), place.Label));
        }

        return Weigh(place, subject, current, new Range(rise.Low + air.Heat, rise.High + air.Heat), capacity, air, working, missing) is var check && assumptions.Count > 0
            ? check with { Assumptions = [.. check.Assumptions, .. assumptions] }
            : check;
    }

    private static Check OfWire(Network network, Network.PartPlace place, Subject subject, Range current, List<MissingDatum> missing)
    {
        var air = network.AirAt(place.Rail, place.Part.Surroundings, place.Part);
        var bears = network.ContinuousCurrent(place.Rail, place.Part, place.Label)!;
        if (double.IsInfinity(bears.Range.High))
        {
            missing.Clear();
        }

        missing.AddRange(bears.Missing);
        var working = new List<WorkingStep>
        {
            new("continuous current as installed", "", "", new Figure(bears.Range.IsExact ? bears.Range.Low : double.IsInfinity(bears.Range.High) ? 0 : bears.Range.High, "A"), bears.Range.IsExact ? "data of the part" : "at most, from its section at 40 A/mm²", new DatumPlace(place.Part, nameof(Wire.Ampacity))),
        };
        var limit = place.Part switch { Wire wire => wire.TemperatureLimit, Busbar bar => bar.TemperatureLimit, _ => null };
        if (limit is not { } highest || !bears.Range.IsExact)
        {
            // At its continuous current as installed a conductor reaches its limit, whatever that is: the ratio of rises is that of the squares.
            var squares = new Range(Square(current.Low, bears.Range.High), Square(current.High, bears.Range.Low));
            var share = air.Heat > 0 && limit is null ? new Range(0, 1) : Range.Exactly(1);
            if (!share.IsExact)
            {
                missing.Add(new MissingDatum(new DatumPlace(place.Part, nameof(Wire.TemperatureLimit)), place.Label));
            }

            var weighing = Weighing.Of(squares, share);
            var shown = weighing.Verdict == Verdict.Holds ? current.High : current.Low;
            return weighing.ToCheck(
                subject,
                "",
                $"{subject.Where} carries {Figures.Text(shown, "A")}, {Figures.Digits(weighing.Demand)} of its rise at its continuous current",
                [.. working, new WorkingStep("share of its rise", "(current / continuous current)²", "", new Figure(weighing.Demand, ""), "heat balance")],
                missing);
        }

        var left = Left(highest, air, double.PositiveInfinity);
        AddAir(air, place, missing);
        if (left.IsExact)
        {
            var rise = new Range((Square(current.Low, bears.Range.Low) * left.High) + air.Heat, (Square(current.High, bears.Range.Low) * left.High) + air.Heat);
            return Weigh(place, subject, current, rise, left, air, working, missing);
        }

        // The air is not known: with the heat of neighbours apart, the ratio is that of the squares in any air.
        var ratio = new Range(Square(current.Low, bears.Range.Low), Square(current.High, bears.Range.Low));
        var one = Weighing.Of(ratio, Range.Exactly(1));
        return one.ToCheck(
            subject, "", $"{subject.Where} carries {Figures.Text(one.Verdict == Verdict.Holds ? current.High : current.Low, "A")}, {Figures.Digits(one.Demand)} of its rise at its continuous current", working, missing);
    }

    private static Check Weigh(Network.PartPlace place, Subject subject, Range current, Range rise, Range capacity, Network.Air air, List<WorkingStep> working, List<MissingDatum> missing)
    {
        var weighing = Weighing.Of(rise, capacity);
        var shown = weighing.Verdict == Verdict.Holds ? current.High : current.Low;
        var above = air.Missing is null ? Figures.Text(air.Hottest.High - air.Heat, "°C") : "the air";
        working.Insert(0, new WorkingStep("steady current", "", "", new Figure(shown, "A"), "operating point, r.m.s."));
        working.Add(new WorkingStep("rise", "", "", new Figure(weighing.Demand, "K"), air.Heat > 0 ? $"heat of neighbours, {Figures.Text(air.Heat, "K")}, included" : place.Part is Trace { Ampacity: null } ? "IPC-2221A, 6.2" : "(current / continuous current)² × rise at it"));
        return weighing.ToCheck(subject, "K", $"{subject.Where} warms by {Figures.Text(weighing.Demand, "K")} at {Figures.Text(shown, "A")}; {Figures.Text(weighing.Capacity, "K")} is left above {above}", working, missing);
    }

    /// <summary>What a limit leaves above the hottest air, the heat of neighbours not counted, at most what is allowed.</summary>
    private static Range Left(Temperature limit, Network.Air air, double allowed)
    {
        double Of(double celsius) => Math.Max(0, Math.Min(allowed, limit.DegreesCelsius - (celsius - air.Heat)));
        return new Range(Of(air.Hottest.High), Of(air.Hottest.Low));
    }

    private static void AddAir(Network.Air air, Network.PartPlace place, List<MissingDatum> missing)
    {
        if (air.Missing is { } lacks)
        {
            missing.Add(new MissingDatum(lacks, lacks.Owner is Rail rail ? Network.Label(rail) : place.Label));
        }
    }

    private static double Square(double current, double continuous) =>
        current <= 0 ? 0 : continuous <= 0 ? double.PositiveInfinity : double.IsInfinity(continuous) ? 0 : current / continuous * (current / continuous);
}
