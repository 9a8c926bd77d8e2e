using System.Collections.Immutable;
using UnitsNet;

namespace RailRules.Rules;

public sealed partial class ContradictoryDatum
{
    private static readonly Func<ElectricPotential, double> Volts = value => value.Volts;
    private static readonly Func<ElectricCurrent, double> Amperes = value => value.Amperes;
    private static readonly Func<ElectricResistance, double> Ohms = value => value.Ohms;
    private static readonly Func<ElectricInductance, double> Henries = value => value.Henries;
    private static readonly Func<ElectricCapacitance, double> Farads = value => value.Farads;
    private static readonly Func<Temperature, double> Celsius = value => value.DegreesCelsius;
    private static readonly Func<Duration, double> Seconds = value => value.Seconds;

    /// <summary>The table of every record of the model. What an object holds is named first, so that it is looked at whatever its comparisons meet.</summary>
    private static readonly Dictionary<Type, Table> Tables = new Table[]
    {
        new Table<Supply>(
            (supply, report) =>
            {
                report.Holds(supply.CurrentLimit, nameof(Supply.CurrentLimit));
                report.Holds(supply.ProspectiveFault, nameof(Supply.ProspectiveFault));
                report.Holds(supply.Derating, nameof(Supply.Derating));
                report.AtLeast(report.Of(nameof(Supply.TransientMax), supply.TransientMax?.Volts), report.Max(nameof(Supply.Voltage), supply.Voltage, Volts), "V");
                report.AtLeast(report.Max(nameof(Supply.OvervoltageTrip), supply.OvervoltageTrip, Volts), report.Max(nameof(Supply.Voltage), supply.Voltage, Volts), "V");
                report.AtMost(report.Of(nameof(Supply.UnitsMin), supply.UnitsMin), report.Of(nameof(Supply.UnitsMax), supply.UnitsMax), "");
                WithinLimit(report, supply.ContinuousCurrent, supply.CurrentLimit);
                report.Derating(nameof(Supply.Derating), supply.Derating);
            })
            .Band(nameof(Supply.Voltage), supply => supply.Voltage, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Supply.TransientMax), supply => supply.TransientMax?.Volts, "V", Bounds.ZeroUp)
            .Band(nameof(Supply.SourceResistance), supply => supply.SourceResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Supply.SourceInductance), supply => supply.SourceInductance, Henries, "H", Bounds.ZeroUp)
            .Band(nameof(Supply.OutputCapacitance), supply => supply.OutputCapacitance, Farads, "F", Bounds.ZeroUp)
            .Band(nameof(Supply.OutputCapacitorEsr), supply => supply.OutputCapacitorEsr, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Supply.OutputCapacitorEsl), supply => supply.OutputCapacitorEsl, Henries, "H", Bounds.ZeroUp)
            .Number(nameof(Supply.ContinuousCurrent), supply => supply.ContinuousCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Supply.ReverseCurrent), supply => supply.ReverseCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(Supply.OvervoltageTrip), supply => supply.OvervoltageTrip, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Supply.UnitsMin), supply => supply.UnitsMin, "", Bounds.OneUp)
            .Number(nameof(Supply.UnitsMax), supply => supply.UnitsMax, "", Bounds.OneUp),

        new Table<Battery>(
            (battery, report) =>
            {
                report.AtLeast(report.Max(nameof(Battery.ChargeVoltage), battery.ChargeVoltage, Volts), report.Max(nameof(Battery.OpenCircuitVoltage), battery.OpenCircuitVoltage, Volts), "V");
                var transient = report.Of(nameof(Battery.TransientMax), battery.TransientMax?.Volts);
                report.AtLeast(transient, report.Max(nameof(Battery.ChargeVoltage), battery.ChargeVoltage, Volts) ?? report.Max(nameof(Battery.OpenCircuitVoltage), battery.OpenCircuitVoltage, Volts), "V");
            })
            .Band(nameof(Battery.OpenCircuitVoltage), battery => battery.OpenCircuitVoltage, Volts, "V", Bounds.ZeroUp)
            .Band(nameof(Battery.InternalResistance), battery => battery.InternalResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Battery.InternalInductance), battery => battery.InternalInductance, Henries, "H", Bounds.ZeroUp)
            .Band(nameof(Battery.ChargeVoltage), battery => battery.ChargeVoltage, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Battery.ChargeCurrent), battery => battery.ChargeCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Battery.ContinuousCurrent), battery => battery.ContinuousCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Battery.TransientMax), battery => battery.TransientMax?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Battery.Strings), battery => battery.Strings, "", Bounds.OneUp),

        new Table<Converter>(
            (converter, report) =>
            {
                report.Feeds(converter.Input);
                report.Holds(converter.CurrentLimit, nameof(Converter.CurrentLimit));
                report.Holds(converter.EnablesAt, nameof(Converter.EnablesAt));
                report.Holds(converter.Derating, nameof(Converter.Derating));
                report.AtLeast(report.Of(nameof(Converter.TransientMax), converter.TransientMax?.Volts), report.Max(nameof(Converter.Output), converter.Output, Volts), "V");
                report.Below(report.Of(nameof(Converter.InputMinVoltage), converter.InputMinVoltage?.Volts), report.Of(nameof(Converter.InputMaxVoltage), converter.InputMaxVoltage?.Volts), "V");
                WithinLimit(report, converter.ContinuousCurrent, converter.CurrentLimit);
                report.Derating(nameof(Converter.Derating), converter.Derating);
            })
            .Band(nameof(Converter.Output), converter => converter.Output, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Converter.TransientMax), converter => converter.TransientMax?.Volts, "V", Bounds.ZeroUp)
            .Band(nameof(Converter.Efficiency), converter => converter.Efficiency, ratio => ratio.DecimalFractions, "", Bounds.ShareAboveZero)
            .Number(nameof(Converter.ContinuousCurrent), converter => converter.ContinuousCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Converter.InputMinVoltage), converter => converter.InputMinVoltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Converter.InputMaxVoltage), converter => converter.InputMaxVoltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Converter.HoldUp), converter => converter.HoldUp?.Seconds, "s", Bounds.ZeroUp)
            .Band(nameof(Converter.InputCapacitance), converter => converter.InputCapacitance, Farads, "F", Bounds.ZeroUp)
            .Band(nameof(Converter.InputCapacitorEsr), converter => converter.InputCapacitorEsr, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Converter.OutputCapacitance), converter => converter.OutputCapacitance, Farads, "F", Bounds.ZeroUp)
            .Band(nameof(Converter.OutputCapacitorEsr), converter => converter.OutputCapacitorEsr, Ohms, "Ω", Bounds.ZeroUp),

        new Table<Rail>(
            (rail, report) =>
            {
                report.Feeds(rail.From);
                report.Holds(rail.Feeds, nameof(Rail.Feeds));
                report.Places(rail.Path, nameof(Rail.Path));
                report.Holds(rail.Return, nameof(Rail.Return));
                report.Places(rail.Clamps, nameof(Rail.Clamps));
                report.Places(rail.Capacitors, nameof(Rail.Capacitors));
                report.Places(rail.Loads, nameof(Rail.Loads));
                report.Holds(rail.Surges, nameof(Rail.Surges));
                report.Holds(rail.Surroundings, nameof(Rail.Surroundings));
                report.Holds(rail.Policy, nameof(Rail.Policy));
                report.Holds(rail.Budgets, nameof(Rail.Budgets));
            })
            .Number(nameof(Rail.FeedsNeeded), rail => rail.FeedsNeeded, "", Bounds.OneUp)
            .Band(nameof(Rail.ChassisReturn), rail => rail.ChassisReturn, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Rail.TransientMax), rail => rail.TransientMax?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Rail.ShortestOutage), rail => rail.ShortestOutage?.Seconds, "s", Bounds.ZeroUp),

        new Table<Feed>((feed, report) =>
        {
            report.Feeds(feed.From);
            report.Places(feed.Path, nameof(Feed.Path));
            report.Holds(feed.Return, nameof(Feed.Return));
        }),

        new Table<Return>((back, report) => report.Places(back.Elements, nameof(Return.Elements)))
            .Band(nameof(Return.Resistance), back => back.Resistance, Ohms, "Ω", Bounds.ZeroUp),

        new Table<Budgets>()
            .Number(nameof(Budgets.Drop), budgets => budgets.Drop?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Budgets.DropShare), budgets => budgets.DropShare?.DecimalFractions, "", Bounds.Share)
            .Number(nameof(Budgets.Dissipation), budgets => Watts(budgets.Dissipation), "W", Bounds.ZeroUp),

        new Table<Surge>((surge, report) => report.Below(report.Of(nameof(Surge.Front), surge.Front?.Seconds), report.Of(nameof(Surge.HalfValue), surge.HalfValue?.Seconds), "s"))
            .Number(nameof(Surge.Voltage), surge => surge.Voltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Surge.SourceResistance), surge => surge.SourceResistance?.Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Surge.Front), surge => surge.Front?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(Surge.HalfValue), surge => surge.HalfValue?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(Surge.Repeats), surge => surge.Repeats, "", Bounds.ZeroUp),

        new Table<Surroundings>()
            .Band(nameof(Surroundings.Ambient), around => around.Ambient, Celsius, "°C", Bounds.Celsius)
            .Number(nameof(Surroundings.HeatOfNeighbours), around => around.HeatOfNeighbours?.Kelvins, "K", Bounds.ZeroUp)
            .Number(nameof(Surroundings.Altitude), around => around.Altitude?.Meters, "m", Bounds.Altitude)
            .Number(nameof(Surroundings.AirSpeed), around => around.AirSpeed?.MetersPerSecond, "m/s", Bounds.ZeroUp)
            .Number(nameof(Surroundings.Vibration), around => around.Vibration?.MetersPerSecondSquared, "m/s²", Bounds.ZeroUp)
            .Number(nameof(Surroundings.ThermalCyclesPerDay), around => around.ThermalCyclesPerDay, "", Bounds.ZeroUp),

        new Table<DesignPolicy>(
            (policy, report) =>
            {
                report.Holds(policy.JointLimits, nameof(DesignPolicy.JointLimits));
                report.Holds(policy.PulseShare, nameof(DesignPolicy.PulseShare));
                report.NeverRises(nameof(DesignPolicy.PulseShare), policy.PulseShare, (nameof(PulseLifePoint.Starts), "", point => point.Starts), (nameof(PulseLifePoint.Share), "", point => point.Share));
            })
            .Number(nameof(DesignPolicy.AdiabaticLimit), policy => policy.AdiabaticLimit.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.FuseContinuous), policy => policy.FuseContinuous, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.BreakerContinuous), policy => policy.BreakerContinuous, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.ElectronicTrip), policy => policy.ElectronicTrip, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.UnknownDeratingFloor), policy => policy.UnknownDeratingFloor, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.OverloadFactor), policy => policy.OverloadFactor, "", Bounds.OneUp)
            .Number(nameof(DesignPolicy.ProtectBothPolesAbove), policy => policy.ProtectBothPolesAbove.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.ResettableHold), policy => policy.ResettableHold, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.StartTimeFactor), policy => policy.StartTimeFactor, "", Bounds.OneUp)
            .Number(nameof(DesignPolicy.SoaFactor), policy => policy.SoaFactor, "", Bounds.OneUp)
            .Number(nameof(DesignPolicy.SoaFactorTypical), policy => policy.SoaFactorTypical, "", Bounds.OneUp)
            .Number(nameof(DesignPolicy.OverratingRatio), policy => policy.OverratingRatio, "", Bounds.OneUp)
            .Number(nameof(DesignPolicy.VoltageFraction), policy => policy.VoltageFraction, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.UnprotectedLength), policy => policy.UnprotectedLength.Meters, "m", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.ConnectorContinuous), policy => policy.ConnectorContinuous, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.TraceRise), policy => policy.TraceRise.Kelvins, "K", Bounds.AboveZero)
            .Number(nameof(DesignPolicy.InterruptingFraction), policy => policy.InterruptingFraction, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.AssumedTimeConstant), policy => policy.AssumedTimeConstant.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.FaultResistance), policy => policy.FaultResistance.Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.ArcVoltage), policy => policy.ArcVoltage.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.OpeningTime), policy => policy.OpeningTime.Seconds, "s", Bounds.AboveZero)
            .Number(nameof(DesignPolicy.ConventionalTime), policy => policy.ConventionalTime.Seconds, "s", Bounds.AboveZero)
            .Number(nameof(DesignPolicy.WithstandLimit), policy => policy.WithstandLimit.Seconds, "s", Bounds.AboveZero)
            .Number(nameof(DesignPolicy.SemiconductorShare), policy => policy.SemiconductorShare, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.PersistentFaultPower), policy => (double?)policy.PersistentFaultPower?.Watts, "W", Bounds.ZeroUp)
            .Number(nameof(DesignPolicy.StandOffFraction), policy => policy.StandOffFraction, "", Bounds.ShareAboveZero)
            .Number(nameof(DesignPolicy.FlammabilityFrom), policy => Watts(policy.FlammabilityFrom), "W", Bounds.ZeroUp),

        new Table<JointLimit>()
            .Number(nameof(JointLimit.Vibration), limit => limit.Vibration?.MetersPerSecondSquared, "m/s²", Bounds.ZeroUp)
            .Number(nameof(JointLimit.ThermalCyclesPerDay), limit => limit.ThermalCyclesPerDay, "", Bounds.ZeroUp)
            .Number(nameof(JointLimit.CyclesFromLength), limit => limit.CyclesFromLength?.Meters, "m", Bounds.ZeroUp),

        new Table<CurrentLimit>(
            (limit, report) =>
            {
                report.AtLeast(report.Of(nameof(CurrentLimit.PeakBeforeLimit), limit.PeakBeforeLimit?.Amperes), report.Min(nameof(CurrentLimit.Level), limit.Level, Amperes), "A");
                report.AtMost(report.Min(nameof(CurrentLimit.FoldbackCurrent), limit.FoldbackCurrent, Amperes), report.Max(nameof(CurrentLimit.Level), limit.Level, Amperes), "A");
            })
            .Band(nameof(CurrentLimit.Level), limit => limit.Level, Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(CurrentLimit.Response), limit => limit.Response, Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(CurrentLimit.PeakBeforeLimit), limit => limit.PeakBeforeLimit?.Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(CurrentLimit.FoldbackCurrent), limit => limit.FoldbackCurrent, Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(CurrentLimit.OnTime), limit => limit.OnTime?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(CurrentLimit.OffTime), limit => limit.OffTime?.Seconds, "s", Bounds.ZeroUp)
            .Band(nameof(CurrentLimit.TripTime), limit => limit.TripTime, Seconds, "s", Bounds.ZeroUp),

        new Table<ProspectiveFault>()
            .Band(nameof(ProspectiveFault.Current), fault => fault.Current, Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(ProspectiveFault.TimeConstant), fault => fault.TimeConstant?.Seconds, "s", Bounds.ZeroUp),

        new Table<InterruptingRating>()
            .Number(nameof(InterruptingRating.Current), rating => rating.Current?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(InterruptingRating.Voltage), rating => rating.Voltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(InterruptingRating.TimeConstant), rating => rating.TimeConstant?.Seconds, "s", Bounds.ZeroUp),

        new Table<ClearingIntegral>()
            .Number(nameof(ClearingIntegral.Value), clearing => clearing.Value?.AmpereSquaredSeconds, "A²s", Bounds.ZeroUp)
            .Number(nameof(ClearingIntegral.Voltage), clearing => clearing.Voltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(ClearingIntegral.TimeConstant), clearing => clearing.TimeConstant?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(ClearingIntegral.Current), clearing => clearing.Current?.Amperes, "A", Bounds.ZeroUp),

        new Table<DeratingPoint>()
            .Number(nameof(DeratingPoint.Ambient), point => point.Ambient.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(DeratingPoint.Factor), point => point.Factor, "", Bounds.Factor),

        new Table<AltitudePoint>()
            .Number(nameof(AltitudePoint.Altitude), point => point.Altitude.Meters, "m", Bounds.Altitude)
            .Number(nameof(AltitudePoint.Factor), point => point.Factor, "", Bounds.Factor),

        new Table<CurvePoint>((point, report) => report.AtMost(report.Of(nameof(CurvePoint.MinimumMelting), point.MinimumMelting?.Seconds), report.Of(nameof(CurvePoint.MaximumClearing), point.MaximumClearing?.Seconds), "s"))
            .Number(nameof(CurvePoint.Current), point => point.Current.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(CurvePoint.MinimumMelting), point => point.MinimumMelting?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(CurvePoint.MaximumClearing), point => point.MaximumClearing?.Seconds, "s", Bounds.ZeroUp),

        new Table<PulseLifePoint>()
            .Number(nameof(PulseLifePoint.Starts), point => point.Starts, "", Bounds.AboveZero)
            .Number(nameof(PulseLifePoint.Share), point => point.Share, "", Bounds.Share),

        new Table<TripPoint>()
            .Number(nameof(TripPoint.Current), point => point.Current.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(TripPoint.Time), point => point.Time.Seconds, "s", Bounds.ZeroUp),

        new Table<SafeOperatingPoint>()
            .Number(nameof(SafeOperatingPoint.Voltage), point => point.Voltage.Volts, "V", Bounds.AboveZero)
            .Number(nameof(SafeOperatingPoint.Current), point => point.Current.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(SafeOperatingPoint.Width), point => point.Width.Seconds, "s", Bounds.AboveZero)
            .Number(nameof(SafeOperatingPoint.CaseTemperature), point => point.CaseTemperature?.DegreesCelsius, "°C", Bounds.Celsius),

        new Table<SafeOperatingArea>((area, report) =>
        {
            report.Holds(area.Points, nameof(SafeOperatingArea.Points));
            if (!area.Points.IsDefaultOrEmpty)
            {
                // Only points of one pulse width and case temperature are a curve.
                foreach (var group in area.Points.Where(point => point is not null).GroupBy(point => (point.Width.Seconds, point.CaseTemperature?.DegreesCelsius)).Where(group => group.Count() > 1))
                {
                    report.NeverRises(
                        nameof(SafeOperatingArea.Points),
                        [.. area.Points.Select(point => group.Contains(point) ? point : null!)],
                        (nameof(SafeOperatingPoint.Voltage), "V", point => point.Voltage.Volts),
                        (nameof(SafeOperatingPoint.Current), "A", point => point.Current.Amperes));
                }
            }
        }),

        new Table<Pulse>((pulse, report) => report.AtMost(report.Of(nameof(Pulse.Width), pulse.Width?.Seconds), report.Of(nameof(Pulse.Period), pulse.Period?.Seconds), "s"))
            .Number(nameof(Pulse.Current), pulse => pulse.Current?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Pulse.Width), pulse => pulse.Width?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(Pulse.Period), pulse => pulse.Period?.Seconds, "s", Bounds.AboveZero)
            .Number(nameof(Pulse.Count), pulse => pulse.Count, "", Bounds.OneUp)
            .Number(nameof(Pulse.TimesInLife), pulse => pulse.TimesInLife, "", Bounds.ZeroUp),

        new Table<EnablesAt>()
            .Number(nameof(EnablesAt.Threshold), enables => enables.Threshold?.Volts, "V", Bounds.ZeroUp),

        new Table<ClampingVoltage>((clamping, report) => report.Below(report.Of(nameof(ClampingVoltage.Front), clamping.Front?.Seconds), report.Of(nameof(ClampingVoltage.HalfValue), clamping.HalfValue?.Seconds), "s"))
            .Number(nameof(ClampingVoltage.Voltage), clamping => clamping.Voltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(ClampingVoltage.Current), clamping => clamping.Current?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(ClampingVoltage.Front), clamping => clamping.Front?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(ClampingVoltage.HalfValue), clamping => clamping.HalfValue?.Seconds, "s", Bounds.ZeroUp),

        new Table<PulseReference>()
            .Number(nameof(PulseReference.Power), reference => Watts(reference.Power), "W", Bounds.ZeroUp)
            .Number(nameof(PulseReference.Width), reference => reference.Width?.Seconds, "s", Bounds.AboveZero),

        new Table<Load>(
            (load, report) =>
            {
                report.Holds(load.Pulses, nameof(Load.Pulses));
                report.Holds(load.EnablesAt, nameof(Load.EnablesAt));
                report.Below(report.Of(nameof(Load.MinVoltage), load.MinVoltage?.Volts), report.Of(nameof(Load.MaxVoltage), load.MaxVoltage?.Volts), "V");
                report.AtLeast(report.Of(nameof(Load.SurgeWithstand), load.SurgeWithstand?.Volts), report.Of(nameof(Load.MaxVoltage), load.MaxVoltage?.Volts), "V");
                report.AtLeast(report.Of(nameof(Load.OverloadLimit), load.OverloadLimit?.Amperes), report.Max(nameof(Load.Current), load.Current, Amperes), "A");
                if (load is { Regenerates: false, RegeneratedCurrent: { } back } && back.Amperes > 0)
                {
                    report.Exclude(nameof(Load.RegeneratedCurrent), Figures.Text(back.Amperes, "A"), nameof(Load.Regenerates), "false");
                }
            })
            .Band(nameof(Load.Power), load => load.Power, power => (double)power.Watts, "W", Bounds.ZeroUp)
            .Band(nameof(Load.Current), load => load.Current, Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(Load.Resistance), load => load.Resistance, Ohms, "Ω", Bounds.AboveZero)
            .Number(nameof(Load.MinVoltage), load => load.MinVoltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Load.MaxVoltage), load => load.MaxVoltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Load.SurgeWithstand), load => load.SurgeWithstand?.Volts, "V", Bounds.ZeroUp)
            .Band(nameof(Load.InputCapacitance), load => load.InputCapacitance, Farads, "F", Bounds.ZeroUp)
            .Band(nameof(Load.InputCapacitorEsr), load => load.InputCapacitorEsr, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Load.InputCapacitorEsl), load => load.InputCapacitorEsl, Henries, "H", Bounds.ZeroUp)
            .Number(nameof(Load.StartsInLife), load => load.StartsInLife, "", Bounds.ZeroUp)
            .Number(nameof(Load.OverloadLimit), load => load.OverloadLimit?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Load.HoldUp), load => load.HoldUp?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(Load.RegeneratedCurrent), load => load.RegeneratedCurrent?.Amperes, "A", Bounds.ZeroUp),

        new Table<Capacitor>((capacitor, report) => report.AtLeast(report.Of(nameof(Capacitor.SurgeWithstand), capacitor.SurgeWithstand?.Volts), report.Of(nameof(Capacitor.VoltageRating), capacitor.VoltageRating?.Volts), "V"))
            .Band(nameof(Capacitor.Capacitance), capacitor => capacitor.Capacitance, Farads, "F", Bounds.ZeroUp)
            .Band(nameof(Capacitor.Esr), capacitor => capacitor.Esr, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Capacitor.Esl), capacitor => capacitor.Esl, Henries, "H", Bounds.ZeroUp)
            .Number(nameof(Capacitor.VoltageRating), capacitor => capacitor.VoltageRating?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Capacitor.SurgeWithstand), capacitor => capacitor.SurgeWithstand?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Capacitor.RippleCurrent), capacitor => capacitor.RippleCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(Capacitor.OperatingTemperature), capacitor => capacitor.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        new Table<TransientSuppressor>(
            (clamp, report) =>
            {
                report.Holds(clamp.ClampingVoltage, nameof(TransientSuppressor.ClampingVoltage));
                report.Holds(clamp.PeakPulsePower, nameof(TransientSuppressor.PeakPulsePower));
                report.Holds(clamp.Derating, nameof(TransientSuppressor.Derating));
                var standOff = report.Of(nameof(TransientSuppressor.StandOffVoltage), clamp.StandOffVoltage?.Volts);
                var clamping = Report.In(clamp.ClampingVoltage, nameof(ClampingVoltage.Voltage), nameof(TransientSuppressor.ClampingVoltage), null, clamp.ClampingVoltage?.Voltage?.Volts);
                report.AtMost(standOff, report.Min(nameof(TransientSuppressor.BreakdownVoltage), clamp.BreakdownVoltage, Volts) ?? clamping, "V");
                report.AtLeast(clamping, report.Max(nameof(TransientSuppressor.BreakdownVoltage), clamp.BreakdownVoltage, Volts), "V");
                report.AtLeast(report.Of(nameof(TransientSuppressor.JunctionTemperatureLimit), clamp.JunctionTemperatureLimit?.DegreesCelsius), report.Max(nameof(TransientSuppressor.OperatingTemperature), clamp.OperatingTemperature, Celsius), "°C");
                report.Derating(nameof(TransientSuppressor.Derating), clamp.Derating);
            })
            .Number(nameof(TransientSuppressor.StandOffVoltage), clamp => clamp.StandOffVoltage?.Volts, "V", Bounds.ZeroUp)
            .Band(nameof(TransientSuppressor.BreakdownVoltage), clamp => clamp.BreakdownVoltage, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(TransientSuppressor.BreakdownVoltageCold), clamp => clamp.BreakdownVoltageCold?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(TransientSuppressor.BreakdownVoltageHot), clamp => clamp.BreakdownVoltageHot?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(TransientSuppressor.DynamicResistance), clamp => clamp.DynamicResistance?.Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(TransientSuppressor.JunctionTemperatureLimit), clamp => clamp.JunctionTemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(TransientSuppressor.LeadInductance), clamp => clamp.LeadInductance?.Henries, "H", Bounds.ZeroUp)
            .Band(nameof(TransientSuppressor.OperatingTemperature), clamp => clamp.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<Fuse>((fuse, report) =>
            {
                report.Holds(fuse.InterruptingRatings, nameof(Fuse.InterruptingRatings));
                report.Holds(fuse.ClearingIntegrals, nameof(Fuse.ClearingIntegrals));
                report.Holds(fuse.Curve, nameof(Fuse.Curve));
                report.Holds(fuse.Derating, nameof(Fuse.Derating));
                report.Holds(fuse.AltitudeDerating, nameof(Fuse.AltitudeDerating));
                report.Holds(fuse.PulseLife, nameof(Fuse.PulseLife));
                var melting = fuse.MeltingIntegral is { } band
                    ? report.Of(nameof(Fuse.MeltingIntegral), (band.Typical ?? band.Min).AmpereSquaredSeconds)
                    : null;
                for (var index = 0; !fuse.ClearingIntegrals.IsDefault && index < fuse.ClearingIntegrals.Length; index++)
                {
                    var clearing = fuse.ClearingIntegrals[index];
                    report.AtLeast(Report.In(clearing, nameof(ClearingIntegral.Value), nameof(Fuse.ClearingIntegrals), index, clearing?.Value?.AmpereSquaredSeconds), melting, "A²s");
                }

                for (var index = 0; !fuse.InterruptingRatings.IsDefault && index < fuse.InterruptingRatings.Length; index++)
                {
                    var rating = fuse.InterruptingRatings[index];
                    report.AtMost(
                        report.Of(nameof(Fuse.MinimumBreakingCurrent), fuse.MinimumBreakingCurrent?.Amperes),
                        Report.In(rating, nameof(InterruptingRating.Current), nameof(Fuse.InterruptingRatings), index, rating?.Current?.Amperes),
                        "A");
                }

                report.AtLeast(report.Of(nameof(Fuse.BodyTemperatureLimit), fuse.BodyTemperatureLimit?.DegreesCelsius), report.Max(nameof(Fuse.OperatingTemperature), fuse.OperatingTemperature, Celsius), "°C");
                TimeCurrent(report, nameof(Fuse.Curve), fuse.Curve);
                report.Derating(nameof(Fuse.Derating), fuse.Derating, fuse.ReferenceAmbient?.DegreesCelsius);
                Altitude(report, nameof(Fuse.AltitudeDerating), fuse.AltitudeDerating);
                report.NeverRises(nameof(Fuse.PulseLife), fuse.PulseLife, (nameof(PulseLifePoint.Starts), "", point => point.Starts), (nameof(PulseLifePoint.Share), "", point => point.Share));
            })
            .Number(nameof(Fuse.RatedCurrent), fuse => fuse.RatedCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(Fuse.DcVoltageRating), fuse => fuse.DcVoltageRating?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(Fuse.AcVoltageRating), fuse => fuse.AcVoltageRating?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(Fuse.MinimumBreakingCurrent), fuse => fuse.MinimumBreakingCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(Fuse.MeltingIntegral), fuse => fuse.MeltingIntegral, integral => integral.AmpereSquaredSeconds, "A²s", Bounds.AboveZero)
            .Number(nameof(Fuse.ReferenceAmbient), fuse => fuse.ReferenceAmbient?.DegreesCelsius, "°C", Bounds.Celsius)
            .Band(nameof(Fuse.ColdResistance), fuse => fuse.ColdResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Fuse.VoltageDrop), fuse => fuse.VoltageDrop, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Fuse.ArcVoltage), fuse => fuse.ArcVoltage?.Volts, "V", Bounds.ZeroUp)
            .Number(nameof(Fuse.TemperatureRise), fuse => fuse.TemperatureRise?.Kelvins, "K", Bounds.ZeroUp)
            .Number(nameof(Fuse.BodyTemperatureLimit), fuse => fuse.BodyTemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Band(nameof(Fuse.OperatingTemperature), fuse => fuse.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<CircuitBreaker>((breaker, report) =>
            {
                report.Holds(breaker.InterruptingRatings, nameof(CircuitBreaker.InterruptingRatings));
                report.Holds(breaker.Curve, nameof(CircuitBreaker.Curve));
                report.Holds(breaker.Derating, nameof(CircuitBreaker.Derating));
                report.Holds(breaker.AltitudeDerating, nameof(CircuitBreaker.AltitudeDerating));
                report.Holds(breaker.ClearingIntegrals, nameof(CircuitBreaker.ClearingIntegrals));
                report.AtLeast(report.Max(nameof(CircuitBreaker.MagneticTrip), breaker.MagneticTrip, Amperes), report.Of(nameof(CircuitBreaker.RatedCurrent), breaker.RatedCurrent?.Amperes), "A");
                if (breaker is { Polarized: true, ReverseAllowed: true })
                {
                    report.Exclude(nameof(CircuitBreaker.ReverseAllowed), "true", nameof(CircuitBreaker.Polarized), "true");
                }

                TimeCurrent(report, nameof(CircuitBreaker.Curve), breaker.Curve);
                report.Derating(nameof(CircuitBreaker.Derating), breaker.Derating, breaker.ReferenceAmbient?.DegreesCelsius);
                Altitude(report, nameof(CircuitBreaker.AltitudeDerating), breaker.AltitudeDerating);
            })
            .Number(nameof(CircuitBreaker.RatedCurrent), breaker => breaker.RatedCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(CircuitBreaker.DcVoltageRating), breaker => breaker.DcVoltageRating?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(CircuitBreaker.AcVoltageRating), breaker => breaker.AcVoltageRating?.Volts, "V", Bounds.AboveZero)
            .Band(nameof(CircuitBreaker.MagneticTrip), breaker => breaker.MagneticTrip, Amperes, "A", Bounds.AboveZero)
            .Number(nameof(CircuitBreaker.MagneticTripDcFactor), breaker => breaker.MagneticTripDcFactor, "", Bounds.AboveZero)
            .Number(nameof(CircuitBreaker.ConventionalTripMultiple), breaker => breaker.ConventionalTripMultiple, "", Bounds.OneUp)
            .Number(nameof(CircuitBreaker.ReferenceAmbient), breaker => breaker.ReferenceAmbient?.DegreesCelsius, "°C", Bounds.Celsius)
            .Band(nameof(CircuitBreaker.Resistance), breaker => breaker.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(CircuitBreaker.VoltageDrop), breaker => breaker.VoltageDrop, Volts, "V", Bounds.ZeroUp)
            .Number(nameof(CircuitBreaker.Poles), breaker => breaker.Poles, "", Bounds.OneUp)
            .Band(nameof(CircuitBreaker.OperatingTemperature), breaker => breaker.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<ResettableFuse>((fuse, report) =>
            {
                report.Holds(fuse.Derating, nameof(ResettableFuse.Derating));
                report.Holds(fuse.TripDerating, nameof(ResettableFuse.TripDerating));
                report.Holds(fuse.TimeToTrip, nameof(ResettableFuse.TimeToTrip));
                var hold = report.Of(nameof(ResettableFuse.HoldCurrent), fuse.HoldCurrent?.Amperes);
                var trip = report.Of(nameof(ResettableFuse.TripCurrent), fuse.TripCurrent?.Amperes);
                report.Below(hold, trip, "A");
                report.AtLeast(report.Of(nameof(ResettableFuse.MaxFaultCurrent), fuse.MaxFaultCurrent?.Amperes), trip, "A");
                report.AtLeast(report.Of(nameof(ResettableFuse.ResistanceAfterTrip), fuse.ResistanceAfterTrip?.Ohms), report.Min(nameof(ResettableFuse.Resistance), fuse.Resistance, Ohms), "Ω");
                for (var index = 0; !fuse.TimeToTrip.IsDefault && index < fuse.TimeToTrip.Length; index++)
                {
                    report.AtLeast(Report.In(fuse.TimeToTrip[index], nameof(TripPoint.Current), nameof(ResettableFuse.TimeToTrip), index, fuse.TimeToTrip[index]?.Current.Amperes), hold, "A");
                }

                report.NeverRises(nameof(ResettableFuse.TimeToTrip), fuse.TimeToTrip, (nameof(TripPoint.Current), "A", point => point.Current.Amperes), (nameof(TripPoint.Time), "s", point => point.Time.Seconds));
                report.Derating(nameof(ResettableFuse.Derating), fuse.Derating, fuse.ReferenceAmbient?.DegreesCelsius);
                report.Derating(nameof(ResettableFuse.TripDerating), fuse.TripDerating, fuse.ReferenceAmbient?.DegreesCelsius);
            })
            .Number(nameof(ResettableFuse.HoldCurrent), fuse => fuse.HoldCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(ResettableFuse.TripCurrent), fuse => fuse.TripCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(ResettableFuse.ReferenceAmbient), fuse => fuse.ReferenceAmbient?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(ResettableFuse.MaxVoltage), fuse => fuse.MaxVoltage?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(ResettableFuse.MaxFaultCurrent), fuse => fuse.MaxFaultCurrent?.Amperes, "A", Bounds.AboveZero)
            .Band(nameof(ResettableFuse.Resistance), fuse => fuse.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(ResettableFuse.ResistanceAfterTrip), fuse => fuse.ResistanceAfterTrip?.Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(ResettableFuse.TrippedPower), fuse => Watts(fuse.TrippedPower), "W", Bounds.ZeroUp)
            .Band(nameof(ResettableFuse.OperatingTemperature), fuse => fuse.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<ElectronicFuse>((fuse, report) =>
            {
                report.Holds(fuse.SafeOperatingArea, nameof(ElectronicFuse.SafeOperatingArea));
                report.AtLeast(report.Of(nameof(ElectronicFuse.JunctionTemperatureLimit), fuse.JunctionTemperatureLimit?.DegreesCelsius), report.Of(nameof(ElectronicFuse.CaseTemperature), fuse.CaseTemperature?.DegreesCelsius), "°C");
                report.AtLeast(report.Of(nameof(ElectronicFuse.JunctionTemperatureLimit), fuse.JunctionTemperatureLimit?.DegreesCelsius), report.Max(nameof(ElectronicFuse.OperatingTemperature), fuse.OperatingTemperature, Celsius), "°C");
            })
            .Band(nameof(ElectronicFuse.TripLevel), fuse => fuse.TripLevel, Amperes, "A", Bounds.AboveZero)
            .Band(nameof(ElectronicFuse.TripDelay), fuse => fuse.TripDelay, Seconds, "s", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.ShortCircuitLevel), fuse => fuse.ShortCircuitLevel, Amperes, "A", Bounds.AboveZero)
            .Band(nameof(ElectronicFuse.ShortCircuitResponse), fuse => fuse.ShortCircuitResponse, Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(ElectronicFuse.MaxFaultCurrent), fuse => fuse.MaxFaultCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.StartCurrent), fuse => fuse.StartCurrent, Amperes, "A", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.StartPower), fuse => fuse.StartPower, power => (double)power.Watts, "W", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.StartTimer), fuse => fuse.StartTimer, Seconds, "s", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.OnResistance), fuse => fuse.OnResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(ElectronicFuse.JunctionTemperatureLimit), fuse => fuse.JunctionTemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(ElectronicFuse.CaseTemperature), fuse => fuse.CaseTemperature?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(ElectronicFuse.MaxDissipation), fuse => Watts(fuse.MaxDissipation), "W", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.RetryInterval), fuse => fuse.RetryInterval, Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(ElectronicFuse.MaxVoltage), fuse => fuse.MaxVoltage?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(ElectronicFuse.AvalancheEnergy), fuse => fuse.AvalancheEnergy?.Joules, "J", Bounds.ZeroUp)
            .Band(nameof(ElectronicFuse.OperatingTemperature), fuse => fuse.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<Switch>((@switch, report) => report.Holds(@switch.SafeOperatingArea, nameof(Switch.SafeOperatingArea)))
            .Number(nameof(Switch.RatedCurrent), part => part.RatedCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(Switch.DcVoltageRating), part => part.DcVoltageRating?.Volts, "V", Bounds.AboveZero)
            .Band(nameof(Switch.OnResistance), part => part.OnResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Switch.MakingCurrent), part => part.MakingCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Switch.BreakingCurrent), part => part.BreakingCurrent?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Switch.Endurance), part => part.Endurance, "", Bounds.ZeroUp)
            .Number(nameof(Switch.AvalancheEnergy), part => part.AvalancheEnergy?.Joules, "J", Bounds.ZeroUp)
            .Number(nameof(Switch.SurgeIntegral), part => part.SurgeIntegral?.AmpereSquaredSeconds, "A²s", Bounds.ZeroUp)
            .Band(nameof(Switch.OperatingTemperature), part => part.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<BlockingDiode>()
            .Number(nameof(BlockingDiode.RatedCurrent), part => part.RatedCurrent?.Amperes, "A", Bounds.AboveZero)
            .Band(nameof(BlockingDiode.ForwardDrop), part => part.ForwardDrop, Volts, "V", Bounds.ZeroUp)
            .Band(nameof(BlockingDiode.Resistance), part => part.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(BlockingDiode.ReverseVoltage), part => part.ReverseVoltage?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(BlockingDiode.SurgeIntegral), part => part.SurgeIntegral?.AmpereSquaredSeconds, "A²s", Bounds.ZeroUp)
            .Number(nameof(BlockingDiode.TurnOffTime), part => part.TurnOffTime?.Seconds, "s", Bounds.ZeroUp)
            .Band(nameof(BlockingDiode.OperatingTemperature), part => part.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<SenseResistor>((resistor, report) =>
            {
                report.Holds(resistor.Derating, nameof(SenseResistor.Derating));
                report.Derating(nameof(SenseResistor.Derating), resistor.Derating);
            })
            .Band(nameof(SenseResistor.Resistance), part => part.Resistance, Ohms, "Ω", Bounds.AboveZero)
            .Number(nameof(SenseResistor.RatedPower), part => Watts(part.RatedPower), "W", Bounds.ZeroUp)
            .Band(nameof(SenseResistor.OperatingTemperature), part => part.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<Inductor>()
            .Band(nameof(Inductor.Resistance), part => part.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Inductor.RatedCurrent), part => part.RatedCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(Inductor.SaturationCurrent), part => part.SaturationCurrent?.Amperes, "A", Bounds.AboveZero),

        OfElement<InrushLimiter>((limiter, report) =>
            {
                report.Holds(limiter.Derating, nameof(InrushLimiter.Derating));
                report.AtMost(report.Min(nameof(InrushLimiter.HotResistance), limiter.HotResistance, Ohms), report.Max(nameof(InrushLimiter.ColdResistance), limiter.ColdResistance, Ohms), "Ω");
                report.Derating(nameof(InrushLimiter.Derating), limiter.Derating);
            })
            .Band(nameof(InrushLimiter.ColdResistance), part => part.ColdResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(InrushLimiter.HotResistance), part => part.HotResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(InrushLimiter.RecoveryTime), part => part.RecoveryTime?.Seconds, "s", Bounds.ZeroUp)
            .Number(nameof(InrushLimiter.MaxEnergy), part => part.MaxEnergy?.Joules, "J", Bounds.ZeroUp)
            .Number(nameof(InrushLimiter.MaxCurrent), part => part.MaxCurrent?.Amperes, "A", Bounds.ZeroUp),

        OfElement<Connector>((connector, report) =>
            {
                report.Holds(connector.Derating, nameof(Connector.Derating));
                report.Derating(nameof(Connector.Derating), connector.Derating);
            })
            .Number(nameof(Connector.Contacts), part => part.Contacts, "", Bounds.OneUp)
            .Number(nameof(Connector.ContactRating), part => part.ContactRating?.Amperes, "A", Bounds.AboveZero)
            .Band(nameof(Connector.ContactResistance), part => part.ContactResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(Connector.OperatingTemperature), part => part.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<FuseHolder>((holder, report) =>
            {
                report.Holds(holder.Derating, nameof(FuseHolder.Derating));
                report.Derating(nameof(FuseHolder.Derating), holder.Derating);
            })
            .Number(nameof(FuseHolder.RatedCurrent), part => part.RatedCurrent?.Amperes, "A", Bounds.AboveZero)
            .Number(nameof(FuseHolder.AcceptedPower), part => Watts(part.AcceptedPower), "W", Bounds.ZeroUp)
            .Number(nameof(FuseHolder.TemperatureLimit), part => part.TemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Band(nameof(FuseHolder.ContactResistance), part => part.ContactResistance, Ohms, "Ω", Bounds.ZeroUp)
            .Band(nameof(FuseHolder.OperatingTemperature), part => part.OperatingTemperature, Celsius, "°C", Bounds.Celsius),

        OfElement<Wire>((wire, report) => report.AtLeast(report.Of(nameof(Wire.ShortTimeLimit), wire.ShortTimeLimit?.DegreesCelsius), report.Of(nameof(Wire.TemperatureLimit), wire.TemperatureLimit?.DegreesCelsius), "°C"))
            .Number(nameof(Wire.Length), part => part.Length?.Meters, "m", Bounds.ZeroUp)
            .Number(nameof(Wire.Section), part => part.Section?.SquareMillimeters, "mm²", Bounds.AboveZero)
            .Band(nameof(Wire.Resistance), part => part.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Wire.Ampacity), part => part.Ampacity?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Wire.TemperatureLimit), part => part.TemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(Wire.ShortTimeLimit), part => part.ShortTimeLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(Wire.Grouping), part => part.Grouping, "", Bounds.OneUp),

        OfElement<Busbar>((busbar, report) => report.AtLeast(report.Of(nameof(Busbar.ShortTimeLimit), busbar.ShortTimeLimit?.DegreesCelsius), report.Of(nameof(Busbar.TemperatureLimit), busbar.TemperatureLimit?.DegreesCelsius), "°C"))
            .Number(nameof(Busbar.Length), part => part.Length?.Meters, "m", Bounds.ZeroUp)
            .Number(nameof(Busbar.Section), part => part.Section?.SquareMillimeters, "mm²", Bounds.AboveZero)
            .Band(nameof(Busbar.Resistance), part => part.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Busbar.Ampacity), part => part.Ampacity?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Busbar.TemperatureLimit), part => part.TemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(Busbar.ShortTimeLimit), part => part.ShortTimeLimit?.DegreesCelsius, "°C", Bounds.Celsius),

        OfElement<Trace>((trace, report) => report.AtLeast(report.Of(nameof(Trace.ShortTimeLimit), trace.ShortTimeLimit?.DegreesCelsius), report.Of(nameof(Trace.TemperatureLimit), trace.TemperatureLimit?.DegreesCelsius), "°C"))
            .Number(nameof(Trace.Length), part => part.Length?.Meters, "m", Bounds.ZeroUp)
            .Number(nameof(Trace.Width), part => part.Width?.Meters, "m", Bounds.AboveZero)
            .Number(nameof(Trace.Thickness), part => part.Thickness?.Meters, "m", Bounds.AboveZero)
            .Band(nameof(Trace.Resistance), part => part.Resistance, Ohms, "Ω", Bounds.ZeroUp)
            .Number(nameof(Trace.Ampacity), part => part.Ampacity?.Amperes, "A", Bounds.ZeroUp)
            .Number(nameof(Trace.TemperatureLimit), part => part.TemperatureLimit?.DegreesCelsius, "°C", Bounds.Celsius)
            .Number(nameof(Trace.ShortTimeLimit), part => part.ShortTimeLimit?.DegreesCelsius, "°C", Bounds.Celsius),

        OfElement<ParallelGroup>((group, report) =>
        {
            for (var index = 0; !group.Branches.IsDefault && index < group.Branches.Length; index++)
            {
                report.Places(group.Branches[index], $"{nameof(ParallelGroup.Branches)}[{index}]", nameof(ParallelGroup.Branches), index);
            }
        }),
    }.ToDictionary(table => table.Type);

    private static double? Watts(Power? power) => power is { } value ? (double)value.Watts : null;

    /// <summary>What every series element has.</summary>
    private static Table<T> OfElement<T>(Action<T, Report>? relate = null)
        where T : Element =>
        new Table<T>((element, report) =>
            {
                report.Holds(element.Surroundings, nameof(Element.Surroundings));
                report.Holds(element.Policy, nameof(Element.Policy));
                report.Places(element.Alternates, nameof(Element.Alternates));
                relate?.Invoke(element, report);
            })
            .Band(nameof(Element.Inductance), element => element.Inductance, Henries, "H", Bounds.ZeroUp)
            .Number(nameof(Element.Withstand), element => element.Withstand?.AmpereSquaredSeconds, "A²s", Bounds.ZeroUp)
            .Number(nameof(Element.VoltageRating), element => element.VoltageRating?.Volts, "V", Bounds.AboveZero)
            .Number(nameof(Element.BodyLength), element => element.BodyLength?.Meters, "m", Bounds.ZeroUp);

    private static void WithinLimit(Report report, ElectricCurrent? continuous, CurrentLimit? limit) =>
        report.AtMost(
            report.Of(nameof(Supply.ContinuousCurrent), continuous?.Amperes),
            Report.In(limit, nameof(CurrentLimit.Level), nameof(Supply.CurrentLimit), null, limit?.Level?.Max.Amperes),
            "A");

    private static void Altitude(Report report, string datum, ImmutableArray<AltitudePoint> points) =>
        report.NeverRises(datum, points, (nameof(AltitudePoint.Altitude), "m", point => point.Altitude.Meters), (nameof(AltitudePoint.Factor), "", point => point.Factor));

    /// <summary>Both edges fall with current, currents rise from point to point, and nothing melts later than all is cleared at a smaller current.</summary>
    private static void TimeCurrent(Report report, string datum, ImmutableArray<CurvePoint> points)
    {
        if (points.IsDefaultOrEmpty)
        {
            return;
        }

        Named? last = null;
        Named? clearing = null;
        for (var index = 0; index < points.Length; index++)
        {
            if (points[index] is not { } point)
            {
                continue;
            }

            var current = Report.In(point, nameof(CurvePoint.Current), datum, index, point.Current.Amperes);
            if (last is not null && current is not null && !IsBelow(last.Value.Value, current.Value.Value))
            {
                report.Below(last, current, "A");
                return;
            }

            last = current;
            if (clearing is not null)
            {
                report.AtMost(Report.In(point, nameof(CurvePoint.MinimumMelting), datum, index, point.MinimumMelting?.Seconds), clearing, "s");
            }

            clearing = Report.In(point, nameof(CurvePoint.MaximumClearing), datum, index, point.MaximumClearing?.Seconds) is { } cleared && !(clearing?.Value < cleared.Value) ? cleared : clearing;
        }

        report.NeverRises(datum, points, (nameof(CurvePoint.Current), "A", point => point.Current.Amperes), (nameof(CurvePoint.MinimumMelting), "s", point => point.MinimumMelting?.Seconds));
        report.NeverRises(datum, points, (nameof(CurvePoint.Current), "A", point => point.Current.Amperes), (nameof(CurvePoint.MaximumClearing), "s", point => point.MaximumClearing?.Seconds));
    }

    private abstract class Table
    {
        public abstract Type Type { get; }

        public abstract void Look(object value, Report report);
    }

    /// <summary>The data of a record with their ranges, and how they bear on each other.</summary>
    private sealed class Table<T>(Action<T, Report>? relate = null) : Table
        where T : class
    {
        private readonly List<(string Datum, Func<T, Numbers?> Read, string Unit, Bounds Bounds)> data = [];

        public override Type Type => typeof(T);

        public Table<T> Number(string datum, Func<T, double?> read, string unit, Bounds bounds)
        {
            data.Add((datum, value => read(value) is { } number ? new Numbers(number, null, number, false) : null, unit, bounds));
            return this;
        }

        public Table<T> Band<TQuantity>(string datum, Func<T, Band<TQuantity>?> read, Func<TQuantity, double> convert, string unit, Bounds bounds)
            where TQuantity : struct, IComparable<TQuantity>
        {
            data.Add((datum, value => read(value) is { } band ? Of(band, convert) : null, unit, bounds));
            return this;
        }

        public override void Look(object value, Report report)
        {
            var typed = (T)value;
            foreach (var (datum, read, unit, bounds) in data)
            {
                try
                {
                    if (read(typed) is { } numbers && !numbers.IsWithin(bounds))
                    {
                        report.Datum(datum, numbers, unit, bounds);
                    }
                }
                catch (Exception exception) when (exception is ArgumentException or OverflowException)
                {
                    // A quantity that was finite in its own unit and is none in this one.
                    report.Unreadable(datum, unit, bounds);
                }
            }

            try
            {
                relate?.Invoke(typed, report);
            }
            catch (Exception exception) when (exception is ArgumentException or OverflowException)
            {
                // The unreadable datum stands in a comparison: it is reported where it belongs, above or with an object that this one holds.
            }
        }

        private static Numbers Of<TQuantity>(Band<TQuantity> band, Func<TQuantity, double> convert)
            where TQuantity : struct, IComparable<TQuantity>
        {
            var min = convert(band.Min);
            return band.Typical is { } typical
                ? new Numbers(min, convert(typical), convert(band.Max), band.Min.CompareTo(band.Max) != 0 || band.Min.CompareTo(typical) != 0)
                : new Numbers(min, null, convert(band.Max), true);
        }
    }
}
