using System.Collections.Immutable;

namespace RailRules;

/// <content>What loads draw.</content>
public sealed partial class Network
{
    /// <summary>A burst of pulses that lasts at least this long (s) counts as steady; a shorter one is no continuous current. Common practice ("minutes or longer"), no source.</summary>
    private const double SteadyBurst = 60;

    /// <summary>Root-mean-square value (A) of a pulse train that goes on, and its peak and width (s); null where it is no train.</summary>
    internal static (double Low, double High)? RootMeanSquare(Pulse pulse)
    {
        if (pulse.Period is not { } period || pulse.Current is not { } current || period.Seconds <= 0 || pulse.Count * period.Seconds < SteadyBurst)
        {
            return null;
        }

        var peak = Finite(current.Amperes);
        if (pulse.Width is not { } width)
        {
            return (0, peak);
        }

        var duty = Math.Min(1, Finite(width.Seconds) / period.Seconds);
        var share = pulse.Shape switch
        {
            PulseShape.Triangle => duty / 3,
            PulseShape.HalfSine or PulseShape.Exponential => duty / 2,
            _ => duty,
        };
        var value = peak * Math.Sqrt(share);
        return (value, value);
    }

    /// <summary>The pulses of the loads of a rail and of the rails below; behind converters their number alone counts, with no current of their own.</summary>
    internal List<(Load Load, double Current, double? Width)> PulsesBelow(Rail rail)
    {
        var result = new List<(Load, double, double?)>();
        var seen = new HashSet<int>();
        var pending = new Stack<(int Rail, bool Converted)>();
        pending.Push((indexOf[rail], false));
        while (pending.Count > 0)
        {
            var (i, converted) = pending.Pop();
            if (!seen.Add(i))
            {
                continue;
            }

            foreach (var load in Items(Rails[i].Loads))
            {
                foreach (var pulse in load is null ? [] : Items(load.Pulses))
                {
                    if (pulse is not null)
                    {
                        result.Add((load!, converted ? 0 : Finite(pulse.Current?.Amperes ?? 0), pulse.Width?.Seconds));
                    }
                }
            }

            children[i].ForEach(child => pending.Push((child, converted)));
            foreach (var child in convertersOn[i].SelectMany(FedByIndex))
            {
                pending.Push((child, true));
            }
        }

        return result;
    }

    /// <summary>Loads and converters of the rail and below whose power has no lowest voltage, which alone would bound their current where the path cannot deliver it.</summary>
    internal ImmutableArray<MissingDatum> LoadsWithoutMinVoltage(Rail rail)
    {
        var result = ImmutableArray.CreateBuilder<MissingDatum>();
        var seen = new HashSet<int>();
        var pending = new Stack<int>([indexOf[rail]]);
        while (pending.Count > 0)
        {
            var i = pending.Pop();
            if (!seen.Add(i))
            {
                continue;
            }

            var loads = Items(Rails[i].Loads);
            for (var k = 0; k < loads.Length; k++)
            {
                if (loads[k] is { Power: not null, MinVoltage: null } load)
                {
                    result.Add(new MissingDatum(new DatumPlace(load, nameof(Load.MinVoltage)), Label(load, Rails[i], k)));
                }
            }

            foreach (var converter in convertersOn[i])
            {
                if (converter.InputMinVoltage is null)
                {
                    result.Add(new MissingDatum(new DatumPlace(converter, nameof(Converter.InputMinVoltage)), Label(converter)));
                }
            }

            children[i].ForEach(pending.Push);
        }

        if (result.Count == 0)
        {
            result.Add(new MissingDatum(new DatumPlace(rail, nameof(Rail.Loads)), Label(rail)));
        }

        return result.ToImmutable();
    }

    /// <summary>What the operating point of a rail takes for granted.</summary>
    internal IEnumerable<string> OperatingAssumptions(Rail rail)
    {
        if (partialStates.Contains(indexOf[rail]))
        {
            yield return "of the many feed states, each feed alone and some combinations were tried, not all";
        }

        if (rail.Return is { } back && Sharers(back).Count > 1)
        {
            yield return $"the drop in the return that rail '{Label(rail)}' shares is worked out with this rail's current alone";
        }

        foreach (var place in Parts(rail))
        {
            if (place.Part is Fuse { VoltageDrop: null, ColdResistance: not null })
            {
                yield return $"the resistance of '{place.Label}' is its cold maximum; no voltage drop at rated current is stated";
            }
        }

        foreach (var load in Items(rail.Loads))
        {
            if (load is not null && Items(load.Pulses).Any(pulse => pulse is { Count: not null } && RootMeanSquare(pulse) is null))
            {
                yield return "bursts of pulses shorter than a minute are no continuous current";
                break;
            }
        }
    }

    private Demand DemandOf(Load load, Rail rail, int position)
    {
        var demand = new Demand { MinVoltage = Finite(load.MinVoltage?.Volts ?? 0), Label = Label(load, rail, position) };
        demand.Power = Finite((double?)load.Power?.Max.Watts ?? 0);
        demand.Current = Finite(load.Current?.Max.Amperes ?? 0);
        var pulses = Items(load.Pulses);
        var unlimited = load.OverloadLimit is { } limit ? Finite(limit.Amperes) : double.PositiveInfinity;
        if (load.Resistance is { } resistance)
        {
            if (resistance.Min.Ohms > 0)
            {
                demand.Conductance = Finite(1 / resistance.Min.Ohms);
            }
            else
            {
                Gap(nameof(Load.Resistance), unlimited);
            }
        }

        if (load is { Power: null, Current: null, Resistance: null } && pulses.Length == 0)
        {
            Gap(nameof(Load.Power), unlimited);
        }

        if (isUnknown is not null)
        {
            foreach (var datum in (string[])[nameof(Load.Power), nameof(Load.Current), nameof(Load.Resistance), nameof(Load.Pulses)])
            {
                if (IsUnknown(load, datum))
                {
                    Gap(datum, unlimited);
                }
            }
        }

        foreach (var pulse in pulses)
        {
            if (pulse is null)
            {
                continue;
            }

            if (pulse is { Current: null, Period: not null })
            {
                Gap(nameof(Load.Pulses), unlimited);
                continue;
            }

            demand.Peaks.Add((Finite(pulse.Current?.Amperes ?? 0), pulse.Width?.Seconds));
            if (RootMeanSquare(pulse) is { } rms)
            {
                demand.PulseCurrent += rms.Low;
                if (rms.High > rms.Low)
                {
                    Gap(nameof(Load.Pulses), rms.High - rms.Low);
                }
            }
        }

        return demand;

        void Gap(string datum, double most)
        {
            demand.Unstated += most;
            demand.Gaps.Add((new MissingDatum(new DatumPlace(load, datum), demand.Label), double.IsInfinity(most)));
        }
    }

    /// <summary>The steady demand of a load, in SI units.</summary>
    private sealed class Demand
    {
        internal string Label = "";
        internal double Power;
        internal double Current;
        internal double PulseCurrent;
        internal double Conductance;
        internal double MinVoltage;

        /// <summary>The most that unstated data may add (A).</summary>
        internal double Unstated;

        internal List<(double Current, double? Width)> Peaks { get; } = [];

        internal List<(MissingDatum Datum, bool Unbounded)> Gaps { get; } = [];

        /// <summary>Steady current besides power and resistance (A): root mean square of pulses, or their peaks.</summary>
        internal double Constant(bool peak) => Current + (peak ? Peaks.Sum(pulse => pulse.Current) : PulseCurrent);
    }
}
