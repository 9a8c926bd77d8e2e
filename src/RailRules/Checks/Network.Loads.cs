using RailRules.Physics;

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
