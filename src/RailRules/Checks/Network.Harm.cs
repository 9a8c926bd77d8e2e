using System.Collections.Immutable;
using RailRules.Physics;

namespace RailRules;

/// <content>What elements bear: for how long a current, and which Joule integral.</content>
public sealed partial class Network
{
    /// <summary>Bounds (°C) of the highest service temperature of a wire or busbar that states none: the classes of insulation. IEC 60364-4-43, Table 43A (from memory).</summary>
    private static readonly Range UnstatedLimit = new(60, UnstatedTemperatureLimit);

    /// <summary>Bounds (°C) of the short-time limit of a wire or busbar that states none: thermoplastic to thermosetting insulation. IEC 60364-4-43, Table 43A (from memory).</summary>
    private static readonly Range UnstatedShortTimeLimit = new(160, 250);

    /// <summary>Section (mm²) above which thermoplastic insulation bears 140 °C only. IEC 60364-4-43, Table 43A (from memory).</summary>
    private const double LargeSection = 300;

    private const double LargeShortTimeLimit = 140;

    /// <summary>Short-time limit (°C) of boards that state none. Common practice, no source.</summary>
    private const double BoardShortTimeLimit = 200;

    private readonly Dictionary<(DatumPlace Place, Element Element), Endurance?> endurances = [];

    /// <summary>What an element bears where it stands; null: nothing is asked of it.</summary>
    internal Endurance? EnduranceOf(PartPlace place)
    {
        var key = (place.Place, place.Part);
        if (!endurances.TryGetValue(key, out var known))
        {
            endurances.Add(key, known = FindEndurance(place, CurrentOf(place)));
        }

        return known;
    }

    private Endurance? FindEndurance(PartPlace place, Flow running)
    {
        var (rail, element, label) = (place.Rail, place.Part, place.Label);
        if (BearsForEver(rail, element, label) is not { } forEver)
        {
            return null;
        }

        var policy = PolicyAt(rail, element.Policy, element).Policy;
        if (element is ParallelGroup group)
        {
            return OfGroup(place, group, running, policy);
        }

        var stated = element.Withstand?.AmpereSquaredSeconds;
        if (element is Wire or Trace or Busbar)
        {
            return OfConductor(place, forEver, running, policy, stated);
        }

        var missing = forEver.Missing.ToBuilder();
        var (integral, datum) = element switch
        {
            Switch contact => (contact.SurgeIntegral?.AmpereSquaredSeconds * policy.SemiconductorShare, nameof(Switch.SurgeIntegral)),
            BlockingDiode diode => (diode.SurgeIntegral?.AmpereSquaredSeconds * policy.SemiconductorShare, nameof(BlockingDiode.SurgeIntegral)),
            _ => (stated, nameof(Element.Withstand)),
        };
        integral ??= stated;
        if (integral is null && element is Switch or BlockingDiode || IsUnknown(element, datum))
        {
            missing.Add(new MissingDatum(new DatumPlace(element, datum), label));
        }

        var range = integral is { } known ? Range.Exactly(known) : new Range(0, double.PositiveInfinity);
        var working = integral is { } shown
            ? ImmutableArray.Create(new WorkingStep($"withstand of '{label}'", "", element is Switch or BlockingDiode ? $"{Figures.Digits(policy.SemiconductorShare)} of its surge I²t" : "", new Figure(shown, "A²s"), "data of the part", new DatumPlace(element, datum)))
            : [];
        return new Endurance(forEver.Range, range, missing.ToImmutable(), working)
        {
            ForEverMissing = forEver.Missing,
            Overload = policy.OverloadFactor,
            WithstandLimit = policy.WithstandLimit.Seconds,
            JudgesTime = integral is not null,
            JudgesIntegral = integral is not null || element is Switch or BlockingDiode,
        };
    }

    private Endurance OfConductor(PartPlace place, Continuous forEver, Flow running, DesignPolicy policy, double? stated)
    {
        var (rail, element, label) = (place.Rail, place.Part, place.Label);
        var missing = forEver.Missing.ToBuilder();
        var air = AirAt(rail, element.Surroundings, element);
        var ambient = air.Hottest.High is var hottest && double.IsInfinity(hottest) ? air.Hottest with { High = HighestAmbient } : air.Hottest;
        var (section, material, limit, shortTime) = element switch
        {
            Wire wire => (SectionOf(wire.Section?.SquareMillimeters, wire.Length?.Meters, wire.Resistance?.Max.Ohms, wire.Material, wire.Ampacity?.Amperes), wire.Material, wire.TemperatureLimit, wire.ShortTimeLimit),
            Busbar bar => (SectionOf(bar.Section?.SquareMillimeters, bar.Length?.Meters, bar.Resistance?.Max.Ohms, bar.Material, bar.Ampacity?.Amperes), bar.Material, bar.TemperatureLimit, bar.ShortTimeLimit),
            Trace trace => (SectionOf(trace), null, trace.TemperatureLimit, trace.ShortTimeLimit),
            _ => throw new ArgumentOutOfRangeException(nameof(place)),
        };

        // Limit in service, and the rise at which the continuous current holds.
        Range highest, rise, final;
        if (element is Trace board)
        {
            var at = TraceRiseAt(rail, board) ?? policy.TraceRise.Kelvins;
            rise = Range.Exactly(Math.Max(at, 1e-3));
            highest = limit is { } laminate ? Range.Exactly(laminate.DegreesCelsius) : new Range(ambient.Low + rise.Low, ambient.High + rise.High);
            final = Range.Exactly(shortTime?.DegreesCelsius ?? Math.Max(BoardShortTimeLimit, highest.High));
        }
        else
        {
            highest = limit is { } insulation ? Range.Exactly(insulation.DegreesCelsius) : UnstatedLimit;
            rise = new Range(Math.Max(1e-3, highest.Low - ambient.High), Math.Max(1e-3, highest.High - ambient.High));
            var least = section.High > LargeSection ? LargeShortTimeLimit : UnstatedShortTimeLimit.Low;
            final = shortTime is { } insulated ? Range.Exactly(insulated.DegreesCelsius)
                : new Range(Math.Max(highest.High, least), Math.Max(highest.High, UnstatedShortTimeLimit.High));
            if (limit is null)
            {
                missing.Add(new MissingDatum(new DatumPlace(element, nameof(Wire.TemperatureLimit)), label));
            }

            if (shortTime is null)
            {
                missing.Add(new MissingDatum(new DatumPlace(element, nameof(Wire.ShortTimeLimit)), label));
            }
        }

        var hot = running.Reason == FlowReason.Solved && !double.IsInfinity(running.High) && forEver.Range.Low > 0
            ? Conductors.RunningTemperature(ambient.High, rise.High, running.High, forEver.Range.Low)
            : Math.Max(highest.High, ambient.High + rise.High);
        var start = new Range(Math.Min(ambient.Low, hot), hot);
        if (forEver.Range.IsExact && forEver.Range.Low > 0 && air.Ambient is not null && limit is not null && running is { Reason: FlowReason.Solved } && running.Low == running.High)
        {
            start = Range.Exactly(hot);
        }

        Range integral;
        WorkingStep step;
        if (stated is { } known)
        {
            integral = Range.Exactly(known);
            step = new WorkingStep($"withstand of '{label}'", "", "", new Figure(known, "A²s"), "data of the part", new DatumPlace(element, nameof(Element.Withstand)));
        }
        else
        {
            integral = new Range(
                Withstand.Integral(material ?? ConductorMaterial.Copper, section.Low, start.High, final.Low),
                double.IsInfinity(section.High) ? double.PositiveInfinity : Withstand.Integral(material ?? ConductorMaterial.Copper, section.High, start.Low, final.High));
            var factor = Withstand.Factor(material ?? ConductorMaterial.Copper, start.High, final.Low);
            step = new WorkingStep(
                $"withstand of '{label}'", "k² S²", $"({Figures.Digits(factor)} A√s/mm² × {Figures.Digits(section.Low)} mm²)²", new Figure(integral.Low, "A²s"),
                $"from {Figures.Text(start.High, "°C")} to {Figures.Text(final.Low, "°C")}", new DatumPlace(element, element is Trace ? nameof(Trace.Width) : nameof(Wire.Section)));
            if (!section.IsExact)
            {
                missing.Add(new MissingDatum(new DatumPlace(element, element is Trace ? nameof(Trace.Width) : nameof(Wire.Section)), label));
            }
        }

        var conventional = policy.ConventionalTime.Seconds;
        var limitTime = policy.WithstandLimit.Seconds;
        HarmTime? worst = forEver.Range.Low > 0
            ? new HarmTime(forEver.Range.Low, ambient.High, ambient.High + rise.High, Math.Max(final.Low, ambient.High + rise.High), start.High, integral.Low, conventional, limitTime) : null;
        HarmTime? best = forEver.Range.High > 0 && !double.IsInfinity(forEver.Range.High)
            ? new HarmTime(forEver.Range.High, ambient.High, ambient.High + rise.Low, Math.Max(final.High, ambient.High + rise.Low), start.Low, integral.High, conventional, limitTime) : null;
        return new Endurance(forEver.Range, integral, missing.ToImmutable(), [step]) { ForEverMissing = forEver.Missing, Worst = worst, Best = best, WithstandLimit = limitTime, ConventionalTime = conventional, JudgesTime = true, JudgesIntegral = true };
    }

    /// <summary>Bounds of a section (mm²): as stated, else from length and resistance, else at least what the continuous current needs.</summary>
    private static Range SectionOf(double? section, double? length, double? resistance, ConductorMaterial? material, double? ampacity)
    {
        if (section is { } known)
        {
            return Range.Exactly(Finite(known));
        }

        if (length is > 0 and var meters && resistance is > 0 and var ohms)
        {
            return Range.Exactly(Finite(Conductors.Resistance(material == ConductorMaterial.Aluminium ? Conductors.AluminiumResistivity : Conductors.CopperResistivity, meters, ohms) * 1e6));
        }

        return new Range(ampacity is { } amperes ? Finite(amperes / (Conductors.HighestDensity * 1e-6)) : 0, double.PositiveInfinity);
    }

    private Range SectionOf(Trace trace)
    {
        if (trace.Width?.Millimeters * trace.Thickness?.Millimeters is { } known)
        {
            return Range.Exactly(Finite(known));
        }

        if (trace is { Length.Meters: > 0, Resistance.Max.Ohms: > 0 })
        {
            return SectionOf(null, trace.Length?.Meters, trace.Resistance?.Max.Ohms, null, null);
        }

        // By the law of outer layers, which needs less copper.
        var rise = DesignPolicy.Default.TraceRise.Kelvins;
        return new Range(trace.Ampacity is { Amperes: > 0 } ampacity ? Conductors.TraceSection(ampacity.Amperes, rise, inner: false) * 1e6 : 0, double.PositiveInfinity);
    }

    /// <summary>Conductors side by side: each bears its largest share.</summary>
    private Endurance OfGroup(PartPlace place, ParallelGroup group, Flow running, DesignPolicy policy)
    {
        var branches = Items(group.Branches);
        var conductances = branches.Select(branch =>
        {
            var inner = new FaultSeries();
            var parts = Items(branch);
            for (var i = 0; i < parts.Length; i++)
            {
                if (parts[i] is { } part)
                {
                    inner.Add(ColdElement(place.Rail, part, Label(part, place.Rail, i), loop: false));
                }
            }

            return new Range(1 / Math.Max(inner.Resistance.High, 1e-9), 1 / Math.Max(inner.Resistance.Low, 1e-9));
        }).ToList();
        var members = new List<(Endurance Endurance, double Share)>();
        for (var b = 0; b < branches.Length; b++)
        {
            var most = conductances[b].High / (conductances[b].High + conductances.Where((_, other) => other != b).Sum(one => one.Low));
            var parts = Items(branches[b]);
            for (var i = 0; i < parts.Length; i++)
            {
                if (parts[i] is { } part)
                {
                    var inner = place with { Part = part, Label = Label(part, place.Rail, i), Branches = place.Branches.Add((group, b)) };
                    if (FindEndurance(inner, running with { Low = 0, High = running.High * most }) is { } one)
                    {
                        members.Add((one, most));
                    }
                }
            }
        }

        if (members.Count == 0)
        {
            return new Endurance(Anything, Anything, [new MissingDatum(new DatumPlace(group, nameof(ParallelGroup.Branches)), place.Label)], [])
            {
                ForEverMissing = [new MissingDatum(new DatumPlace(group, nameof(ParallelGroup.Branches)), place.Label)],
            };
        }

        return new Endurance(
            new Range(members.Min(one => one.Endurance.ForEver.Low / one.Share), members.Min(one => one.Endurance.ForEver.High / one.Share)),
            new Range(members.Min(one => one.Endurance.Integral.Low / (one.Share * one.Share)), members.Min(one => one.Endurance.Integral.High / (one.Share * one.Share))),
            [.. members.SelectMany(one => one.Endurance.Missing).Distinct()],
            [.. members.SelectMany(one => one.Endurance.Working)])
        {
            ForEverMissing = [.. members.SelectMany(one => one.Endurance.ForEverMissing).Distinct()],
            Members = [.. members],
            WithstandLimit = policy.WithstandLimit.Seconds,
            JudgesTime = members.Any(one => one.Endurance.JudgesTime),
            JudgesIntegral = members.Any(one => one.Endurance.JudgesIntegral),
        };
    }

    /// <summary>What an element bears, between bounds where data are absent.</summary>
    /// <param name="ForEver">Continuous capability I_z (A).</param>
    /// <param name="Integral">Joule integral that it withstands adiabatically from its running temperature (A²s).</param>
    /// <param name="Missing">The data that were bounded.</param>
    /// <param name="Working">How the integral comes about, at its worst.</param>
    internal sealed record Endurance(Range ForEver, Range Integral, ImmutableArray<MissingDatum> Missing, ImmutableArray<WorkingStep> Working)
    {
        /// <summary>The data that bound I_z alone.</summary>
        internal ImmutableArray<MissingDatum> ForEverMissing { get; init; } = [];

        internal HarmTime? Worst { get; init; }

        internal HarmTime? Best { get; init; }

        internal double Overload { get; init; } = 1;

        internal double ConventionalTime { get; init; }

        internal double WithstandLimit { get; init; }

        internal ImmutableArray<(Endurance Endurance, double Share)> Members { get; init; } = [];

        /// <summary>Whether it is known for how long it bears more than I_z. A contact without a stated withstand is judged by its continuous rating alone.</summary>
        internal bool JudgesTime { get; init; }

        /// <summary>Whether a Joule integral is asked of it.</summary>
        internal bool JudgesIntegral { get; init; }

        /// <summary>Bounds of the time (s) after which a current harms it; infinite: never.</summary>
        /// <param name="current">The current (A).</param>
        /// <param name="conventional">The conventional time (s) of the device that protects it.</param>
        internal Range Harmed(double current, double conventional)
        {
            if (!Members.IsEmpty)
            {
                var each = Members.Where(one => one.Endurance.JudgesTime).Select(one => one.Endurance.Harmed(current * one.Share, conventional)).ToList();
                return each.Count == 0 ? Range.Exactly(double.PositiveInfinity) : new Range(each.Min(one => one.Low), each.Min(one => one.High));
            }

            if (!JudgesTime || current <= ForEver.Low * (1 + 1e-9))
            {
                return Range.Exactly(double.PositiveInfinity);
            }

            if (Worst is null && Best is null && Overload > 1)
            {
                // A contact or semiconductor: the conventional time up to the overload factor, then what it withstands.
                return new Range(Contact(ForEver.Low, Integral.Low), Contact(ForEver.High, Integral.High));
            }

            var worst = Worst is { } bad ? (bad with { ConventionalTime = conventional }).At(current) : Math.Min(conventional, Integral.Low / (current * current));
            var best = Best is { } good ? (good with { ConventionalTime = conventional }).At(current) : double.PositiveInfinity;
            return new Range(Math.Min(worst, best), Math.Max(worst, best));

            double Contact(double carries, double withstands) => current <= carries * (1 + 1e-9) ? double.PositiveInfinity
                : current <= carries * Overload * (1 + 1e-9) ? conventional
                : Math.Min(conventional, withstands / (current * current));
        }
    }
}
