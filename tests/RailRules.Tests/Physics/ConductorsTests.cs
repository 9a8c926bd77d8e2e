using CsCheck;
using RailRules.Physics;

namespace RailRules.Tests.Physics;

/// <summary>Conductors, against check values PT-01 to PT-10, WR-07 to WR-11, WR-20 to WR-23, WR-25, WR-26 and FD-01 to FD-03 of the reference tables (sources beside each).</summary>
public sealed class ConductorsTests
{
    private const double Mil = 25.4e-6;

    /// <summary>PT-01 to PT-04: IPC-2221A, 6.2, I = k ΔT^0.44 A^0.725.</summary>
    [Theory]
    [InlineData(100, 1.378, 10, false, 4.701072)]
    [InlineData(100, 1.378, 10, true, 2.350536)]
    [InlineData(100, 1.378, 20, false, 6.377495)]
    [InlineData(200, 2.756, 20, false, 17.42383)]
    public void Trace_currents_follow_IPC_2221(double width, double thickness, double rise, bool inner, double expected) =>
        Assert.Equal(expected, Conductors.TraceCurrent(width * thickness * Mil * Mil, rise, inner), expected * 1e-6);

    /// <summary>PT-05, PT-06: the width for 10 A; PT-07: the rise of 20 A in 5 mm of 70 µm; PT-08: inner is half of outer.</summary>
    [Fact]
    public void Trace_widths_and_rises_are_its_inverses()
    {
        Assert.Equal(185.9722, Conductors.TraceSection(10, 20, false) / (Mil * Mil) / 1.378, 1e-3);
        Assert.Equal(483.7956, Conductors.TraceSection(10, 20, true) / (Mil * Mil) / 1.378, 1e-3);
        Assert.Equal(28.08788, Conductors.TraceRise(20, 5e-3 * 70e-6, false), 1e-4);
        Assert.Equal(0.5, Conductors.TraceCurrent(1e-7, 20, true) / Conductors.TraceCurrent(1e-7, 20, false), 1e-12);
    }

    /// <summary>PT-09, PT-10: 100 mm of 10 mm × 35 µm at 20 and 80 °C, with resistivity and coefficient of IEC 60028.</summary>
    [Theory]
    [InlineData(20, 4.926)]
    [InlineData(80, 6.087551)]
    public void Trace_resistance_follows_from_geometry(double celsius, double milliohms) => Assert.Equal(
        milliohms,
        1000 * Conductors.Resistance(Conductors.CopperResistivity, 0.1, 0.010 * 35e-6) * Conductors.TemperatureFactor(Conductors.CopperCoefficient, celsius),
        milliohms * 1e-3);

    /// <summary>WR-07 to WR-11: solid copper per 1000 ft at 20 °C (NBS Handbook 100); diameter 0.005 in × 92^((36 - n)/39) (ASTM B258).</summary>
    [Theory]
    [InlineData(10, 0.9988409)]
    [InlineData(12, 1.588219)]
    [InlineData(14, 2.525368)]
    [InlineData(20, 10.15236)]
    [InlineData(-3, 0.04901223)]
    public void Wire_resistance_follows_from_section(int gauge, double ohms)
    {
        var diameter = 0.005 * 0.0254 * Math.Pow(92, (36 - gauge) / 39.0);
        Assert.Equal(ohms, Conductors.Resistance(Conductors.CopperResistivity, 304.8, Math.PI / 4 * diameter * diameter), ohms * 1e-3);
    }

    /// <summary>WR-20: 1/58 Ω mm²/m; WR-21: 0.00393/K; WR-22: no resistance at -234.45 °C; WR-23: 1.1965 at 70 °C. All IEC 60028.</summary>
    [Fact]
    public void Copper_is_that_of_IEC_60028()
    {
        Assert.Equal(0.01724138, Conductors.CopperResistivity * 1e6, 1e-7);
        Assert.Equal(0.00393, Conductors.CopperCoefficient);
        Assert.Equal(0, Conductors.TemperatureFactor(Conductors.CopperCoefficient, -234.4529), 1e-6);
        Assert.Equal(1.1965, Conductors.TemperatureFactor(Conductors.CopperCoefficient, 70), 1e-6);
    }

    /// <summary>WR-25, WR-26: 100 A over 5 m and back of 0.554 Ω/km, at 20 and at 70 °C, built as a rail.</summary>
    [Theory]
    [InlineData(20, 0.554)]
    [InlineData(70, 0.662861)]
    public void A_rails_drop_counts_both_ways_and_the_temperature(double celsius, double drop)
    {
        var rail = new Rail
        {
            From = new Supply { Voltage = 48.Volts() },
            Path = [new Wire { Length = 5.Meters(), Resistance = (0.554e-3 * 5).Ohms(), TemperatureLimit = celsius.Celsius() }],
            Return = Return.Mirrored,
            Loads = [new() { Current = 100.Amperes() }],
        };
        Assert.Equal(drop, 48 - new Network([rail]).CurrentOf(rail).HighVoltage, drop * 0.0005);
    }

    /// <summary>FD-01, FD-02: 90 mV at 200 A are 0.45 mΩ and 18 W; FD-03: 80 K raise copper by 1.3144.</summary>
    [Fact]
    public void A_fuses_drop_at_rated_current_gives_its_hot_resistance()
    {
        var rail = new Rail
        {
            From = new Supply { Voltage = 48.Volts() },
            Path = [new Fuse { RatedCurrent = 200.Amperes(), VoltageDrop = 90.Millivolts(), ColdResistance = 0.1.Milliohms() }],
            Return = Return.OfResistance(0.Ohms()),
            Loads = [new() { Current = 200.Amperes() }],
        };
        Assert.Equal(18, 200 * (48 - new Network([rail]).CurrentOf(rail).HighVoltage), 1e-6);
        Assert.Equal(1.3144, Conductors.TemperatureFactor(Conductors.CopperCoefficient, 100), 1e-6);
    }

    /// <summary>AD-07, AD-08: the correction sqrt((T_c - T_a)/(T_c - T_ref)) of NFPA 70, 310.15(B), is the same law: at the corrected current the conductor just reaches its limit.</summary>
    [Theory]
    [InlineData(75, 50, 30, 0.745356)]
    [InlineData(90, 60, 30, 0.7071068)]
    public void Running_temperatures_follow_the_square_of_the_current(double limit, double ambient, double reference, double correction) =>
        Assert.Equal(limit - ambient, Conductors.RunningTemperature(0, limit - reference, correction, 1), 0.01);

    /// <summary>A conductor that carries half its continuous current runs at a quarter of its rise; the drop follows. Closed form iterated by hand of the same law.</summary>
    [Fact]
    public void A_rails_conductor_runs_at_the_temperature_of_its_current()
    {
        var rail = new Rail
        {
            From = new Supply { Voltage = 48.Volts() },
            Path = [new Wire { Resistance = 10.Milliohms(), Ampacity = 40.Amperes(), TemperatureLimit = 90.Celsius() }],
            Return = Return.OfResistance(0.Ohms()),
            Loads = [new() { Current = 20.Amperes() }],
            Surroundings = new() { Ambient = 30.Celsius() },
        };
        var expected = 20 * 0.010 * (1 + (0.00393 * (30 + (60 / 4.0) - 20)));
        Assert.Equal(expected, 48 - new Network([rail]).CurrentOf(rail).HighVoltage, 1e-9);
    }

    [Fact]
    public void More_current_never_cools_and_more_section_never_heats() => Gen.Select(Gen.Double[0.1, 50], Gen.Double[1, 2], Gen.Double[1e-8, 1e-5]).Sample((current, factor, section) =>
        Conductors.TraceRise(current * factor, section, false) >= Conductors.TraceRise(current, section, false)
        && Conductors.TraceRise(current, section * factor, false) <= Conductors.TraceRise(current, section, false)
        && Math.Abs(Conductors.TraceCurrent(section, Conductors.TraceRise(current, section, true), true) - current) < 1e-9 * current);
}
