using System.Globalization;
using System.Text.Json;
using RailRules.Physics;

namespace RailRules.Tests.Physics.Starting;

/// <summary>
/// Every inrush, turn-off and pulse case of tests/Reference/spice/starting.json: run in ngspice 39 and checked by a closed form or an independent numeric
/// method there; each output within the case's own tolerance of the simulator, and within 1e-6 of the other reference (of a value near 0: of its tolerance).
/// </summary>
public class SpiceStartingTests
{
    private static readonly JsonDocument Document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Reference", "spice", "starting.json")));

    public static TheoryData<string> Cases() =>
    [
        .. Document.RootElement.GetProperty("cases").EnumerateArray().Select(one => one.GetProperty("id").GetString()!),
    ];

    [Fact]
    public void EveryKindIsThere() => Assert.Equal(39, Cases().Count);

    [Theory]
    [MemberData(nameof(Cases))]
    public void AgreesWithTheSimulator(string id)
    {
        var one = Document.RootElement.GetProperty("cases").EnumerateArray().Single(item => item.GetProperty("id").GetString() == id);
        var end = one.GetProperty("outputs").EnumerateArray().Where(output => output.GetProperty("quantity").GetString() == "i2t_at")
            .Select(output => output.GetProperty("argument").GetDouble()).DefaultIfEmpty(double.NaN).Max();
        var model = Model(one.GetProperty("kind").GetString()!, new Input(one.GetProperty("inputs")), end);
        foreach (var output in one.GetProperty("outputs").EnumerateArray())
        {
            var name = output.GetProperty("signal").GetString() + " " + output.GetProperty("quantity").GetString();
            var argument = output.GetProperty("argument") is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : double.NaN;
            var value = model(name, argument);
            var tolerance = output.GetProperty("tolerance").GetDouble();
            Near("ngspice", tolerance);
            Near("closed_form", Math.Max(1e-6 * Math.Abs(output.GetProperty("closed_form").GetDouble()), tolerance / 50));

            void Near(string reference, double allowed)
            {
                var expected = output.GetProperty(reference).GetDouble();
                Assert.True(
                    Math.Abs(value - expected) <= allowed,
                    string.Create(CultureInfo.InvariantCulture, $"{id}: {name}({argument}) is {value:R}, {reference} {expected:R} ± {allowed:G3}"));
            }
        }
    }

    private static Func<string, double, double> Model(string kind, Input input, double end) => kind switch
    {
        "inrush.rc" => Plain(input, Inrush.Resistive(input["source_voltage"], input["resistance"], input["capacitance"], input["initial_voltage"])!, end),
        "inrush.rlc" => Plain(
            input,
            Inrush.Resonant(input["source_voltage"], input["resistance"], input["inductance"], input["capacitance"], input.Has("one_way"))!,
            end),
        "inrush.step_resistance" => Plain(
            input,
            Inrush.Stepped(input["source_voltage"], input["precharge_resistance"], input["bypassed_resistance"], input["capacitance"], input["bypass_time"])!,
            end),
        "inrush.thermistor" => Thermistor(input),
        "inrush.constant_current" or "inrush.power_limited" => Switched(input),
        "turnoff.clamp" => Clamped(input),
        "turnoff.capacitor" => (name, _) =>
        {
            var surge = OpeningSurge.Into(0, input["initial_current"], input["inductance"], input["loop_resistance"], input["capacitance"], 0)!.Value;
            return name == "clamp peak_voltage" ? surge.Voltage : name == "inductor time_of_current_zero" ? surge.Time : throw new InvalidOperationException(name);
        }
        ,
        "pulsed.trapezoid" or "pulsed.burst" => Train(input),
        "pulsed.filtered" => (name, _) =>
        {
            var pulses = FilteredPulses.Of(
                input["feed_resistance"], input["capacitance"], input["base_current"], input["peak_current"], input["on_time"], input["period"])!;
            return name switch
            {
                "feed mean_current" => pulses.Mean,
                "feed rms_current" => pulses.Rms,
                "feed peak_current" => pulses.Peak,
                "load lowest_voltage" => pulses.LowestVoltage(input["source_voltage"], input["feed_resistance"]),
                "load highest_voltage" => pulses.HighestVoltage(input["source_voltage"], input["feed_resistance"]),
                _ => throw new InvalidOperationException(name),
            };
        }
        ,
        _ => throw new InvalidOperationException(kind),
    };

    /// <summary>Without ringing the voltage only rises: the highest is that at the end of the simulation.</summary>
    private static double PeakVoltage(Input input, Charging charging, double end)
    {
        double resistance = input["resistance"], inductance = input["inductance"], capacitance = input["capacitance"];
        return Inrush.HalfPeriod(resistance, inductance, capacitance) is null
            ? charging.VoltageAt(end)
            : Inrush.PeakVoltage(input["source_voltage"], resistance, inductance, capacitance);
    }

    private static Func<string, double, double> Plain(Input input, Charging charging, double end)
    {
        var current = charging.Current;
        return (name, argument) => name switch
        {
            "inrush current_at" => current.At(argument),
            "inrush i2t_at" => current.SquareIntegral(argument),
            "inrush melting_time" => current.TimeToIntegral(argument)!.Value,
            "inrush let_through_peak" => current.LetThroughPeak(current.TimeToIntegral(argument)!.Value),
            "inrush peak_current" => current.PeakCurrent,
            "inrush time_of_peak" => current.Peak().Time,
            "inrush total_i2t" => charging.TotalIntegral,
            "inrush time_of_current_zero" => Inrush.HalfPeriod(input["resistance"], input["inductance"], input["capacitance"])!.Value,
            "inrush bypass_peak_current" => current.At(input["bypass_time"]),
            "capacitor time_to_95_percent" => charging.TimeToVoltage(argument, 40 * input["resistance"] * input["capacitance"])!.Value,
            "capacitor peak_voltage" => PeakVoltage(input, charging, end),
            "capacitor final_voltage" => charging.VoltageAt(1),
            "capacitor voltage_at_bypass" => charging.VoltageAt(argument),
            "resistor dissipated_energy" => current.Energy(input.Has("resistance") ? input["resistance"] : input["precharge_resistance"], argument),
            _ => throw new InvalidOperationException(name),
        };
    }

    private static Func<string, double, double> Thermistor(Input input)
    {
        const double End = 0.05;
        var charge = ThermistorCharge.Of(
            input["source_voltage"],
            input["capacitance"],
            input["resistance_at_25C"],
            input["beta"],
            input["heat_capacity"],
            input["dissipation_factor"],
            input["ambient_kelvin"],
            End)!;
        return (name, argument) => name switch
        {
            "inrush i2t_at" when argument == End => charge.Integral[^1],
            "inrush peak_current" => charge.PeakCurrent,
            "capacitor time_to_95_percent" => charge.TimeToVoltage(argument)!.Value,
            "thermistor peak_temperature" => charge.PeakTemperature,
            _ => throw new InvalidOperationException(name),
        };
    }

    private static Func<string, double, double> Switched(Input input)
    {
        var limits = new StartLimits(
            input["current_limit"], input.Has("power_limit") ? input["power_limit"] : double.PositiveInfinity, input["switch_on_resistance"]);
        var load = new StartLoad(
            input.Has("load_current") ? input["load_current"] : 0, input.Has("load_resistance") ? 1 / input["load_resistance"] : 0);
        var start = SwitchedStart.Of(input["source_voltage"], input["capacitance"], limits, [load])!;
        return (name, argument) => name switch
        {
            "inrush i2t_at" => start.At(argument).State.Integral,
            "inrush melting_time" => start.TimeToIntegral(argument)!.Value.Time,
            "inrush let_through_peak" => start.TimeToIntegral(argument)!.Value.Peak,
            "inrush peak_current" => start.PeakCurrent,
            "capacitor time_to_voltage" => start.Until(argument)!.Value.Time,
            "switch dissipated_energy" => start.At(argument).State.Energy,
            "switch peak_power" => start.PeakPower,
            _ => throw new InvalidOperationException(name),
        };
    }

    private static Func<string, double, double> Clamped(Input input)
    {
        var off = TurnOff.Of(
            input["source_voltage"],
            input["initial_current"],
            input["inductance"],
            input["loop_resistance"],
            new Clamp(input["clamp_voltage"], input["clamp_resistance"]))!;
        return (name, argument) => name switch
        {
            "inductor current_at" => off.At(argument),
            "inductor i2t_at" => off.SquareIntegral(argument),
            "inductor decay_time" => off.DecayTime,
            "inductor total_i2t" => off.TotalIntegral,
            "inductor stored_energy" => off.StoredEnergy,
            "clamp peak_voltage" => off.PeakVoltage,
            "clamp dissipated_energy" => off.ClampEnergy,
            _ => throw new InvalidOperationException(name),
        };
    }

    private static Func<string, double, double> Train(Input input)
    {
        var burst = input.Has("pulses_per_burst");
        var profile = CurrentProfile.Trapezoids(
            input["base_current"],
            input["peak_current"],
            input["rise_time"],
            input["flat_time"],
            input["fall_time"],
            input["period"],
            burst ? (int)input["pulses_per_burst"] : 1,
            burst ? input["pulse_spacing"] : 0)!;
        return (name, argument) => name switch
        {
            "load mean_current" => profile.Mean,
            "load rms_current" => profile.Rms,
            "load peak_current" => profile.Peak,
            "load i2t_per_period" when argument == profile.Period => profile.IntegralPerPeriod,
            _ => throw new InvalidOperationException(name),
        };
    }

    private readonly struct Input(JsonElement element)
    {
        public double this[string name] => element.GetProperty(name).GetDouble();

        public bool Has(string name) => element.TryGetProperty(name, out _);
    }
}
