using System.Collections.Immutable;

namespace RailRules;

/// <content>Voltages of a place. No drop is subtracted from a maximum.</content>
public sealed partial class Network
{
    private RailVoltages[]? voltages;

    /// <summary>Lowest, highest and peak voltage of a rail.</summary>
    internal RailVoltages VoltagesOf(Rail rail) => (voltages ??= FindVoltages())[indexOf[rail]];

    /// <summary>Lowest, highest and peak voltage at the terminals of a supply, battery or converter, or of a rail.</summary>
    internal RailVoltages VoltagesOf(Source? source, DatumPlace from, string fromLabel)
    {
        switch (source)
        {
            case Rail rail:
                return VoltagesOf(rail);
            case Supply supply:
                return OfBand(supply, nameof(Supply.Voltage), supply.Voltage?.Min.Volts, supply.Voltage?.Max.Volts, supply.TransientMax?.Volts);
            case Converter converter:
                return OfBand(converter, nameof(Converter.Output), converter.Output?.Min.Volts, converter.Output?.Max.Volts, converter.TransientMax?.Volts);
            case Battery battery:
                return OfBattery(battery);
            default:
                var nothing = Voltage.Unknown(new MissingDatum(from, fromLabel));
                return new RailVoltages(nothing, nothing, nothing);
        }
    }

    private RailVoltages OfBand(Source source, string datum, double? low, double? high, double? transient)
    {
        var label = Label(source);
        var place = new DatumPlace(source, datum);
        if (low is null || high is null)
        {
            var unknown = Voltage.Unknown(new MissingDatum(place, label));
            return new RailVoltages(unknown, unknown, unknown);
        }

        var steady = new Voltage(high.Value, place, $"highest voltage of '{label}'", false);
        return new RailVoltages(
            new Voltage(low.Value, place, $"lowest voltage of '{label}'", false),
            steady,
            Transient(steady, source, label, transient));
    }

    private RailVoltages OfBattery(Battery battery)
    {
        var label = Label(battery);
        var place = new DatumPlace(battery, nameof(Battery.OpenCircuitVoltage));
        var charge = new DatumPlace(battery, nameof(Battery.ChargeVoltage));
        var low = battery.OpenCircuitVoltage is { } open
            ? new Voltage(open.Min.Volts, place, $"open-circuit voltage of '{label}' at end of discharge", false)
            : Voltage.Unknown(new MissingDatum(place, label));
        Voltage high;
        if (battery.ChargeVoltage is { } charging)
        {
            high = battery.OpenCircuitVoltage is { } full && full.Max > charging.Max
                ? new Voltage(full.Max.Volts, place, $"highest open-circuit voltage of '{label}'", false)
                : new Voltage(charging.Max.Volts, charge, $"charging voltage of '{label}'", false);
        }
        else if (battery.OpenCircuitVoltage is { } opened)
        {
            high = new Voltage(opened.Max.Volts, place, $"highest open-circuit voltage of '{label}'", false);
            high = IsUnknown(battery, nameof(Battery.ChargeVoltage))
                ? high with { Missing = [new MissingDatum(charge, label)] }
                : high with { Assumptions = [$"no charging voltage of '{label}' is stated; its highest open-circuit voltage counts"] };
        }
        else
        {
            high = Voltage.Unknown(new MissingDatum(place, label));
        }

        return new RailVoltages(low, high, Transient(high, battery, label, battery.TransientMax?.Volts));
    }

    /// <summary>The peak: the transient maximum where stated and higher, else the highest steady voltage, as an assumption.</summary>
    private Voltage Transient(Voltage steady, Source source, string label, double? transient)
    {
        if (IsUnknown(source, nameof(Supply.TransientMax)))
        {
            return steady with { Missing = steady.Missing.Add(new MissingDatum(new DatumPlace(source, nameof(Supply.TransientMax)), label)) };
        }

        return transient is not { } peak
            ? steady with { Assumptions = steady.Assumptions.Add($"no transient maximum of '{label}' is stated; its highest steady voltage counts") }
            : peak > steady.Value
                ? steady with { Value = peak, Place = new DatumPlace(source, nameof(Supply.TransientMax)), What = $"transient maximum of '{label}'", Transient = true }
                : steady;
    }

    private RailVoltages[] FindVoltages()
    {
        var result = new RailVoltages[Rails.Length];
        voltages = result;
        for (var i = 0; i < Rails.Length; i++)
        {
            var loop = Voltage.Unknown(new MissingDatum(new DatumPlace(Rails[i], Items(Rails[i].Feeds).Length > 0 ? nameof(Rail.Feeds) : nameof(Rail.From)), Label(Rails[i])));
            result[i] = new RailVoltages(loop, loop, loop);
        }

        foreach (var i in downstream)
        {
            var rail = Rails[i];
            var label = Label(rail);
            RailVoltages? joined = null;
            foreach (var supplying in suppliers[i])
            {
                var from = supplying.Feed is { } feed ? new DatumPlace(feed, nameof(Feed.From)) : supplying.Place;
                var one = VoltagesOf(supplying.From, from, label);
                joined = joined is { } before
                    ? new RailVoltages(Lower(before.Low, one.Low), Higher(before.High, one.High), Higher(before.Peak, one.Peak))
                    : one;
            }

            var all = joined!.Value;
            if (Unworkable(rail, label, nameof(Rail.Feeds), nameof(Rail.From)) is { } hidden && suppliers[i].All(supplying => supplying.From is null || hidden.Place.Datum == nameof(Rail.Feeds)))
            {
                var unknown = ImmutableArray.Create(hidden);
                all = new RailVoltages(all.Low with { Missing = unknown }, all.High with { Missing = unknown }, all.Peak with { Missing = unknown });
            }

            if (IsUnknown(rail, nameof(Rail.TransientMax)))
            {
                all = all with { Peak = all.Peak with { Missing = all.Peak.Missing.Add(new MissingDatum(new DatumPlace(rail, nameof(Rail.TransientMax)), label)) } };
            }
            else if (rail.TransientMax?.Volts is { } own && own > all.Peak.Value)
            {
                all = all with
                {
                    Peak = new Voltage(own, new DatumPlace(rail, nameof(Rail.TransientMax)), $"transient maximum of rail '{label}'", true) { Missing = all.Peak.Missing },
                };
            }

            result[i] = all;
        }

        return result;
    }

    private static Voltage Higher(Voltage a, Voltage b) =>
        (b.Value > a.Value ? b : a) with { Missing = a.Missing.AddRange(b.Missing), Assumptions = a.Assumptions.AddRange(b.Assumptions.Except(a.Assumptions)) };

    private static Voltage Lower(Voltage a, Voltage b) => (b.IsAny && (!a.IsAny || b.Value < a.Value) ? b : a) with { Missing = a.Missing.AddRange(b.Missing) };

    /// <summary>A voltage of a place, or what is missing for it.</summary>
    /// <param name="Value">The voltage (V). Where data are missing: what is known already, below which a maximum cannot lie.</param>
    /// <param name="Place">The datum that decides it.</param>
    /// <param name="What">What it is, for the working.</param>
    /// <param name="Transient">Whether it lasts for a while only.</param>
    internal sealed record Voltage(double Value, DatumPlace Place, string What, bool Transient)
    {
        internal ImmutableArray<MissingDatum> Missing { get; init; } = [];

        internal ImmutableArray<string> Assumptions { get; init; } = [];

        internal bool IsKnown => Missing.IsEmpty;

        /// <summary>Whether at least one feed states it.</summary>
        internal bool IsAny => Value > 0;

        internal static Voltage Unknown(MissingDatum missing) => new(0, missing.Place, "unknown", false) { Missing = [missing] };

        internal WorkingStep Step(string quantity) => new(quantity, "", "", new Figure(Value, "V"), What, Place);
    }

    /// <summary>The voltages of a rail: lowest steady at the source, highest steady, and highest with transients.</summary>
    internal readonly record struct RailVoltages(Voltage Low, Voltage High, Voltage Peak);
}
