using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>What a switch has to bring up when it starts: the capacitors behind it, and the loads that draw meanwhile.</content>
public sealed partial class Network
{
    private readonly Dictionary<Rail, BringUp> bringUps = [];

    /// <summary>What is behind a switch when it starts.</summary>
    /// <param name="Capacitance">Largest capacitance (F); positive infinity: written, but it could not be worked out.</param>
    /// <param name="Most">Loads that draw meanwhile, absent data at the end that draws most.</param>
    /// <param name="Least">The same at the end that draws least.</param>
    /// <param name="CapacitorGaps">The data without which the capacitance is not known.</param>
    /// <param name="LoadGaps">The data without which the loads are not known.</param>
    /// <param name="Working">The capacitors, for the working.</param>
    internal sealed record BringUp(
        double Capacitance,
        ImmutableArray<StartLoad> Most,
        ImmutableArray<StartLoad> Least,
        ImmutableArray<MissingDatum> CapacitorGaps,
        ImmutableArray<MissingDatum> LoadGaps,
        ImmutableArray<WorkingStep> Working)
    {
        /// <summary>Whether there is nothing to bring up and nothing that could hinder it.</summary>
        internal bool IsNothing => Capacitance <= 0 && Most.IsEmpty && CapacitorGaps.IsEmpty;
    }

    /// <summary>
    /// What is behind the end of a rail: its capacitors, loads and converter inputs, and those of the rails below without a converter between. What stands behind a
    /// further electronic fuse is charged by the same current, now or later, and counts.
    /// </summary>
    internal BringUp BringUpOf(Rail rail)
    {
        if (!bringUps.TryGetValue(rail, out var known))
        {
            bringUps.Add(rail, known = MakeBringUp(rail));
        }

        return known;
    }

    private BringUp MakeBringUp(Rail first)
    {
        const int MostListed = 6;
        double capacitance = 0;
        var working = new List<WorkingStep>();
        var (most, least) = (ImmutableArray.CreateBuilder<StartLoad>(), ImmutableArray.CreateBuilder<StartLoad>());
        var (capacitorGaps, loadGaps) = (new List<MissingDatum>(), new List<MissingDatum>());
        var count = 0;
        foreach (var rail in WithBelow(first))
        {
            var label = Label(rail);
            if (Unworkable(rail, label, nameof(Rail.Capacitors)) is { } hidden)
            {
                capacitorGaps.Add(hidden);
            }

            if (Unworkable(rail, label, nameof(Rail.Loads)) is { } unseen)
            {
                capacitorGaps.Add(unseen);
                loadGaps.Add(unseen);
                most.Add(new StartLoad(double.PositiveInfinity));
            }

            var capacitors = Items(rail.Capacitors);
            for (var i = 0; i < capacitors.Length; i++)
            {
                if (capacitors[i] is { } one)
                {
                    Charge(one, nameof(Capacitor.Capacitance), Label(one, rail, i), one.Capacitance?.Max.Farads);
                }
            }

            var loads = Items(rail.Loads);
            for (var i = 0; i < loads.Length; i++)
            {
                if (loads[i] is { } load)
                {
                    Charge(load, nameof(Load.InputCapacitance), Label(load, rail, i), load.InputCapacitance?.Max.Farads);
                    Draw(load, rail, i);
                }
            }

            foreach (var converter in ConvertersOn(rail))
            {
                Charge(converter, nameof(Converter.InputCapacitance), Label(converter), converter.InputCapacitance?.Max.Farads);
                DrawInput(converter);
            }
        }

        if (count > 1)
        {
            working.Add(new WorkingStep("capacitance behind it, largest", "sum", "", new Figure(capacitance, "F"), $"{count} capacitors and inputs"));
        }

        return new BringUp(
            capacitorGaps.Count > 0 ? double.PositiveInfinity : capacitance, most.ToImmutable(), least.ToImmutable(), [.. capacitorGaps], [.. Rules.Subject.Distinct(loadGaps)], [.. working]);

        void Charge(object owner, string datum, string label, double? farads)
        {
            if (farads is null && IsUnknown(owner, datum))
            {
                capacitorGaps.Add(new MissingDatum(new DatumPlace(owner, datum), label));
            }
            else if (farads is > 0 and var stated)
            {
                capacitance += Finite(stated);
                if (++count <= MostListed)
                {
                    working.Add(new WorkingStep($"capacitance of '{label}', largest", "", "", new Figure(Finite(stated), "F"), "data of the part", new DatumPlace(owner, datum)));
                }
            }
        }

        void Draw(Load load, Rail rail, int position)
        {
            var label = Label(load, rail, position);
            if (load.EnablesAt is { AfterPowerGood: true })
            {
                return;
            }

            var demand = DemandOf(load, rail, position);
            var from = Finite(load.EnablesAt?.Threshold?.Volts ?? 0);
            var draws = new StartLoad(demand.Constant(peak: false), demand.Conductance, demand.Power, from);
            if (draws is { Current: 0, Conductance: 0, Power: 0 } && demand.Unstated <= 0)
            {
                return;
            }

            loadGaps.AddRange(demand.Gaps.Select(gap => gap.Datum));
            most.Add(draws with { Current = draws.Current + demand.Unstated });
            if (load.EnablesAt is null)
            {
                loadGaps.Add(new MissingDatum(new DatumPlace(load, nameof(Load.EnablesAt)), label));
            }
            else
            {
                least.Add(draws);
            }
        }

        // A converter runs from its lowest input voltage on, if nothing holds it off.
        void DrawInput(Converter converter)
        {
            var flow = CurrentOf(converter);
            if (converter.EnablesAt is { AfterPowerGood: true } || flow is { Reason: FlowReason.Solved, High: <= 0 })
            {
                return;
            }

            var label = Label(converter);
            if (flow.Reason != FlowReason.Solved || double.IsInfinity(flow.High))
            {
                var gaps = flow.Reason == FlowReason.Solved ? MissingFor(FedBy(converter)) : [];
                loadGaps.AddRange(gaps.IsEmpty ? [new MissingDatum(new DatumPlace(converter, nameof(Converter.Output)), label)] : gaps);
            }

            // Input power for each ampere of the output; efficiency and output voltage absent: without bound.
            var perAmpere = Required(nameof(Converter.Output), converter.Output?.Max.Volts) / Required(nameof(Converter.Efficiency), converter.Efficiency?.Min.DecimalFractions);
            var from = Finite((converter.EnablesAt?.Threshold?.Volts ?? Required(nameof(Converter.InputMinVoltage), converter.InputMinVoltage?.Volts)) is var volts && double.IsNaN(volts) ? 0 : volts);
            var power = flow.Reason == FlowReason.Solved ? flow.High * perAmpere : double.NaN;
            most.Add(power < double.PositiveInfinity ? new StartLoad(Power: power, From: from) : new StartLoad(double.PositiveInfinity, From: from));
            if (converter.EnablesAt is null)
            {
                loadGaps.Add(new MissingDatum(new DatumPlace(converter, nameof(Converter.EnablesAt)), label));
            }
            else if (flow.Reason == FlowReason.Solved && flow.Low * perAmpere is > 0 and < double.PositiveInfinity and var surely)
            {
                least.Add(new StartLoad(Power: surely, From: from));
            }

            double Required(string datum, double? value)
            {
                if (value is null)
                {
                    loadGaps.Add(new MissingDatum(new DatumPlace(converter, datum), label));
                }

                return value ?? double.NaN;
            }
        }
    }

    /// <summary>A rail and those below it without a converter between, each once.</summary>
    internal List<Rail> WithBelow(Rail rail)
    {
        var result = new List<Rail> { rail };
        var seen = new HashSet<Rail> { rail };
        for (var k = 0; k < result.Count; k++)
        {
            foreach (var child in Children(result[k]))
            {
                if (seen.Add(child))
                {
                    result.Add(child);
                }
            }
        }

        return result;
    }

    /// <summary>The least that the sources of a rail, each by itself, surely give by their own limits (A), and whose limit that is; infinite: none states one.</summary>
    internal (double Level, WorkingStep? Step) WeakestLimit(Rail rail)
    {
        double level = double.PositiveInfinity;
        WorkingStep? step = null;
        foreach (var source in SourcesAbove(rail))
        {
            var limit = source switch { Supply supply => supply.CurrentLimit, Converter converter => converter.CurrentLimit, _ => null };
            if (limit?.Level is { } band && Finite(band.Min.Amperes) < level)
            {
                level = Finite(band.Min.Amperes);
                step = new WorkingStep($"lowest limit of '{Label(source)}'", "", "", new Figure(level, "A"), "data of the source", new DatumPlace(limit, nameof(CurrentLimit.Level)));
            }
        }

        return (level, step);
    }
}
