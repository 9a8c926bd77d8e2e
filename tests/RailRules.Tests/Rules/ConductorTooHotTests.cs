using CsCheck;
using RailRules.Rules;
using UnitsNet;

namespace RailRules.Tests.Rules;

/// <summary>RAIL0503. Rise of traces: IPC-2221A, 6.2, check value PT-07 and case-036; wires by the square of the current.</summary>
public sealed class ConductorTooHotTests
{
    private static Trace Trace(double millimeters, double micrometers, bool? inner = false) =>
        new() { Name = "neck", Width = millimeters.Millimeters(), Thickness = micrometers.Micrometers(), Inner = inner };

    private static Check Judge(double amperes, Element conductor, Surroundings? air = null, DesignPolicy? policy = null) =>
        Apply.Rule<ConductorTooHot>(Apply.Carrying(amperes, conductor, air, policy)).Of(conductor);

    [Theory] // case-036
    [InlineData(0.4, 70, 77.2, Verdict.Fails)]
    [InlineData(1.2, 70, 12.63, Verdict.Holds)]
    [InlineData(1.2, 35, 39.58, Verdict.Fails)]
    public void A_trace_warms_by_the_formula(double width, double thickness, double rise, Verdict expected)
    {
        var check = Judge(5, Trace(width, thickness));
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(rise, check.Demand!.Value.Value, 0.002 * rise);
        Assert.Equal(20, check.Capacity!.Value.Value);
    }

    [Fact]
    public void It_says_rise_current_and_what_is_left() =>
        Assert.Equal("'neck' on rail 'Rail' warms by 39.6 K at 5 A; 20 K is left above 25 °C", Judge(5, Trace(1.2, 35)).Message);

    [Fact]
    public void The_laminate_leaves_less_in_hot_air_and_neighbours_add()
    {
        var trace = Trace(1.2, 70) with { TemperatureLimit = 105.Celsius() };
        Assert.Equal(20, Judge(5, trace, Apply.At(85)).Capacity!.Value.Value);
        Assert.Equal(10, Judge(5, trace, Apply.At(95)).Capacity!.Value.Value, 1e-9);
        Assert.Equal(Verdict.Fails, Judge(5, trace, Apply.At(95)).Verdict);
        var warm = Judge(5, trace, Apply.At(60) with { HeatOfNeighbours = TemperatureDelta.FromKelvins(10) });
        Assert.Equal((22.63, Verdict.Fails), (Math.Round(warm.Demand!.Value.Value, 2), warm.Verdict));
    }

    [Fact]
    public void A_layer_that_is_not_stated_may_be_an_inner_one()
    {
        Assert.Equal([nameof(RailRules.Trace.Inner)], Judge(5, Trace(1.2, 70, null)).Names());
        Assert.Equal(Verdict.Holds, Judge(1, Trace(1.2, 70, null)).Verdict);
        Assert.Equal(Verdict.Fails, Judge(9, Trace(1.2, 70, null)).Verdict);
    }

    [Theory]
    [InlineData(8, Verdict.Holds)]
    [InlineData(8.001, Verdict.Fails)]
    public void A_wire_reaches_its_limit_at_its_continuous_current(double amperes, Verdict expected)
    {
        var wire = new Wire { Name = "lead", Ampacity = 8.Amperes(), Resistance = 1.Milliohms() };
        Assert.Equal(expected, Judge(amperes, wire).Verdict);
        var stated = Judge(amperes, wire with { TemperatureLimit = 70.Celsius() });
        Assert.Equal((expected, 45.0), (stated.Verdict, Math.Round(stated.Capacity!.Value.Value, 9)));
        Assert.Equal(expected, Judge(amperes, new Busbar { Ampacity = 8.Amperes(), Resistance = 1.Milliohms() }).Verdict);
    }

    [Fact]
    public void Without_geometry_and_current_it_is_undecided()
    {
        Assert.Equal([nameof(RailRules.Trace.Width)], Judge(5, new Trace { Resistance = 1.Milliohms() }).Names());
        Assert.Equal([nameof(Wire.Ampacity)], Judge(5, new Wire { Resistance = 1.Milliohms() }).Names());
        Assert.Equal(Verdict.Holds, Judge(0, new Wire { Resistance = 1.Milliohms() }).Verdict);

        // More than 40 A/mm² is borne by no wire.
        Assert.Equal(Verdict.Fails, Judge(31, new Wire { Section = 0.75.SquareMillimeters(), Length = 1.Meters() }).Verdict);
        Assert.Equal(Verdict.Undecided, Judge(30, new Wire { Section = 0.75.SquareMillimeters(), Length = 1.Meters() }).Verdict);
    }

    [Fact]
    public void Outside_the_range_of_the_formula_it_says_so() => Assert.Contains(Judge(40, Trace(30, 105)).Assumptions, text => text.StartsWith("extrapolated", StringComparison.Ordinal));

    [Fact]
    public void What_cannot_be_worked_out_is_undecided()
    {
        var trace = Trace(1.2, 70) with { Resistance = 1.Milliohms() };
        var rail = Apply.Carrying(5, trace);
        Assert.Equal(Verdict.Undecided, Apply.WithUnknown<ConductorTooHot>(trace, nameof(RailRules.Trace.TemperatureLimit), rail).Of(trace).Verdict);
        var thin = trace with { Width = null };
        Assert.Equal([nameof(RailRules.Trace.Width)], Apply.WithUnknown<ConductorTooHot>(thin, nameof(RailRules.Trace.Width), Apply.Carrying(5, thin)).Of(thin).Names());
    }

    /// <summary>Hotter air never helps, and a wider trace never hurts; millimeters or mils do not matter.</summary>
    [Fact]
    public void Hotter_is_never_better() => Gen.Select(Gen.Double[0.5, 30], Gen.Double[0.2, 20], Gen.Double[0, 100], Gen.Double[0, 30]).Sample((amperes, width, celsius, more) =>
    {
        double Margin(double millimeters, double hottest) => Judge(amperes, Trace(millimeters, 35) with { TemperatureLimit = 130.Celsius(), Resistance = 1.Milliohms() }, Apply.At(hottest)).Margin!.Value;
        var mils = Judge(amperes, Trace(1, 35) with { Width = Length.FromMils(width / 0.0254), TemperatureLimit = 130.Celsius(), Resistance = 1.Milliohms() }, Apply.At(celsius)).Margin!.Value;
        return Margin(width, celsius + more) <= Margin(width, celsius) * (1 + 1e-9)
            && Margin(width + more, celsius) >= Margin(width, celsius) * (1 - 1e-9)
            && Math.Abs(mils - Margin(width, celsius)) <= 1e-6 * mils;
    });
}
