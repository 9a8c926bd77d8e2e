using System.Collections.Immutable;
using RailRules.Physics;
using UnitsNet;

namespace RailRules.Rules;

public sealed partial class OutsideSafeOperatingArea
{
    /// <summary>What a transistor bears where it stands: its diagram at the hottest case, with the factors of the policy.</summary>
    private sealed class Bearing
    {
        private readonly Network network;
        private readonly Network.PartPlace place;
        private readonly SafeOperatingArea? stated;
        private readonly SafeArea? area;
        private readonly Temperature? junction;
        private readonly DesignPolicy policy;
        private readonly Range temperature;
        private readonly MissingDatum? noTemperature;
        private readonly bool isOwnCase;
        private readonly Range factor;

        internal Bearing(Network network, Network.PartPlace place, SafeOperatingArea? stated, Temperature? junction, Temperature? ownCase)
        {
            (this.network, this.place, this.stated, this.junction) = (network, place, stated, junction);
            area = AreaOf(stated);
            var margins = network.PolicyAt(place.Rail, place.Part.Policy, place.Part);
            policy = margins.Policy;
            Unknown = network.UnknownMargin(margins, nameof(DesignPolicy.SoaFactor), nameof(DesignPolicy.SoaFactorTypical)) is { } unknown ? new MissingDatum(unknown, policy.Name) : null;
            factor = stated?.Guaranteed switch
            {
                true => Range.Exactly(policy.SoaFactor),
                false => Range.Exactly(policy.SoaFactorTypical),
                _ => new Range(Math.Min(policy.SoaFactor, policy.SoaFactorTypical), Math.Max(policy.SoaFactor, policy.SoaFactorTypical)),
            };
            if (ownCase is { } hot)
            {
                (temperature, isOwnCase) = (Range.Exactly(hot.DegreesCelsius), true);
                return;
            }

            var air = network.AirAt(place.Rail, place.Part.Surroundings, place.Part);
            temperature = air.Hottest;
            noTemperature = air.Missing is { } missing ? new MissingDatum(missing, missing.Owner is Rail rail ? Network.Label(rail) : missing.Owner is Surroundings ? "surroundings" : place.Label) : null;
        }

        /// <summary>A margin of the policy that could not be worked out.</summary>
        internal MissingDatum? Unknown { get; }

        internal string CaseText => temperature.IsExact ? Figures.Text(temperature.High, "°C") : "an unstated temperature";

        internal ImmutableArray<string> Assumptions => isOwnCase ? [] : [$"the case of '{place.Label}' is as hot as the hottest air around it; its own heat while running is not added (CaseTemperature is not stated)"];

        private double Limit => junction?.DegreesCelsius ?? double.NaN;

        /// <summary>Current that it bears at a voltage for a time, and whether that lies beyond the knee.</summary>
        internal (Range Allowed, bool IsUnstable) Current(double voltage, Range width)
        {
            if (area is null)
            {
                return (new Range(0, double.PositiveInfinity), false);
            }

            var worst = double.IsInfinity(temperature.High) ? new SafeAreaCurrent(0, 0, 0, false) : area.Current(voltage, width.High, temperature.High, Limit);
            var best = area.Current(voltage, width.Low, temperature.Low, Limit);
            double Divided(double current, double by, bool unstable) => current / (by * (unstable ? InstabilityFactor : 1));
            var low = Divided(worst.Low, factor.High, worst.IsUnstable);
            return (new Range(low, Math.Max(low, Divided(best.High, factor.Low, best.IsUnstable))), worst.IsUnstable);
        }

        internal IEnumerable<MissingDatum> Missing(IEnumerable<double> voltages, Range width)
        {
            if (area is null || voltages.Any(voltage => area.Current(voltage, width.High, 0, double.NaN) is var one && one.Low != one.High))
            {
                yield return new MissingDatum(new DatumPlace(place.Part, nameof(ElectronicFuse.SafeOperatingArea)), place.Label);
            }

            foreach (var one in Beside())
            {
                yield return one;
            }

            if (area is not null && stated is { Guaranteed: null } && !factor.IsExact)
            {
                yield return new MissingDatum(new DatumPlace(stated, nameof(RailRules.SafeOperatingArea.Guaranteed)), place.Label);
            }
        }

        /// <summary>What is missing for the temperature factor.</summary>
        private IEnumerable<MissingDatum> Beside()
        {
            if (noTemperature is { } temperatureless)
            {
                yield return temperatureless;
            }

            if (junction is null && temperature.High > 25)
            {
                yield return new MissingDatum(new DatumPlace(place.Part, nameof(ElectronicFuse.JunctionTemperatureLimit)), place.Label);
            }
        }

        /// <summary>The steps to what it bears.</summary>
        internal IEnumerable<WorkingStep> Working(double voltage, double width, bool unstable)
        {
            if (area is null || double.IsInfinity(temperature.High))
            {
                yield break;
            }

            var one = area.Current(voltage, width, temperature.High, Limit);
            var read = one.Factor > 0 ? (one.Low > 0 ? one.Low : one.High) / one.Factor : one.High;
            if (!double.IsInfinity(read) && !double.IsNaN(read))
            {
                yield return new WorkingStep(
                    $"current allowed at {Figures.Text(voltage, "V")} for {(double.IsInfinity(width) ? "ever" : Figures.Text(width, "s"))}", "", "", new Figure(read, "A"), one.Low == one.High || one.Low == read * one.Factor ? "diagram of the part, straight lines on logarithms" : "diagram of the part, its nearest point",
                    new DatumPlace(stated!, nameof(RailRules.SafeOperatingArea.Points)));
            }

            if (!double.IsNaN(one.Factor) && one.Factor != 1)
            {
                yield return new WorkingStep("temperature factor", "(T_max − T_case)/(T_max − T_stated)", "", new Figure(one.Factor, ""), $"case at {CaseText}, junction up to {Figures.Text(Limit, "°C")}", new DatumPlace(place.Part, nameof(ElectronicFuse.JunctionTemperatureLimit)));
            }

            if (factor.High != 1)
            {
                var datum = stated?.Guaranteed == true ? nameof(DesignPolicy.SoaFactor) : nameof(DesignPolicy.SoaFactorTypical);
                yield return new WorkingStep(stated?.Guaranteed is null ? "divided by, guaranteed or typical not stated" : "divided by", "", "", new Figure(factor.High, ""), Network.PolicySource(policy, datum), new DatumPlace(policy, datum));
            }

            if (unstable)
            {
                yield return new WorkingStep("divided by, beyond the knee of thermal instability", "", "", new Figure(InstabilityFactor, ""), "common practice, no source; nothing is stated at temperature");
            }
        }

        /// <summary>The power that it dissipates for ever at its hottest case: its stated dissipation, else what its diagram allows at a voltage.</summary>
        internal (Range Power, IEnumerable<WorkingStep> Working) ForEver(double voltage, Power? dissipation, List<MissingDatum> missing)
        {
            missing.AddRange(Beside());
            if (dissipation is not { } watts)
            {
                missing.Add(new MissingDatum(new DatumPlace(place.Part, nameof(ElectronicFuse.MaxDissipation)), place.Label));
                var (allowed, unstable) = Current(voltage, Range.Exactly(double.PositiveInfinity));
                return (new Range(voltage * allowed.Low, voltage * allowed.High), Working(voltage, double.PositiveInfinity, unstable));
            }

            var rated = (double)watts.Watts;
            double At(double celsius, double none) => celsius <= 25 ? 1 : double.IsNaN(Limit) ? none : double.IsInfinity(celsius) ? 0 : StartFormulas.TemperatureFactor(Limit, celsius);
            var (low, high) = (At(temperature.High, 0), At(temperature.Low, 1));
            return (
                new Range(rated * low, rated * high),
                [
                    new WorkingStep("dissipation at a case of 25 °C", "", "", new Figure(rated, "W"), "data of the part", new DatumPlace(place.Part, nameof(ElectronicFuse.MaxDissipation))),
                    .. low == high ? (IEnumerable<WorkingStep>)[new WorkingStep("temperature factor", "(T_max − T_case)/(T_max − 25 °C)", "", new Figure(low, ""), $"case at {CaseText}")] : [],
                ]);
        }
    }
}
