using CsCheck;
using RailRules.Physics;

namespace RailRules.Tests.Physics.Withstanding;

/// <summary>What conductors bear. Values of standards are in check-values.csv (KW, FU, PT rows); here the laws, and the rulebook's worked example.</summary>
public class WithstandTests
{
    /// <summary>2.5 mm² PVC at 136.6 A: 82 656 A²s, 4.4 s. Source: rulebook R-11 with k = 115 of IEC 60364-4-43 Table 43A.</summary>
    [Fact]
    public void TheWorkedExampleOfAThinWire()
    {
        var integral = Withstand.Integral(ConductorMaterial.Copper, 2.5, 70, 160);
        Assert.Equal(82656, integral, 82656 * 0.005);
        Assert.Equal(4.43, integral / (136.6 * 136.6), 0.02);
    }

    /// <summary>Onderdonk, IEC and ICEA agree within 2 % on copper. Source: rulebook R-22 and section 13.</summary>
    [Fact]
    public void ThreeSourcesAgreeOnCopper() => Gen.Select(Gen.Double[20, 100], Gen.Double[150, 1083]).Sample(at =>
    {
        var (initial, final) = at;
        var iec = Withstand.Integral(ConductorMaterial.Copper, 1, initial, final);
        var icea = Math.Pow(Withstand.IceaCopper(initial, final) / Withstand.SquareMillimetersPerCircularMil, 2);
        var onderdonk = Math.Pow(Withstand.OnderdonkCurrent(1 / Withstand.SquareMillimetersPerCircularMil, final, initial, 1), 2);
        Assert.InRange(icea / iec, 0.97, 1.03);
        Assert.InRange(onderdonk / iec, 0.97, 1.03);
    });

    [Fact]
    public void MoreCurrentNeverHarmsLater() => Gen.Select(Gen.Double[1, 500], Gen.Double[1, 500], Gen.Double[1, 100], Gen.Double[20, 69], Gen.Double[10, 1e6]).Sample(at =>
    {
        var (first, second, continuous, running, integral) = at;
        var wire = new HarmTime(continuous, 20, 70, 160, running, integral, 3600, 5);
        Assert.True(wire.At(Math.Max(first, second)) <= wire.At(Math.Min(first, second)) * (1 + 1e-9));
    });

    /// <summary>The approach to the short-time limit, against integrating the heat balance step by step: C dT/dt = P − (T − T_amb)/R_th. Source: heat balance of a lumped body.</summary>
    [Fact]
    public void TheTimeToTheLimitFollowsTheHeatBalance()
    {
        // τ = k²S²/I_z² (T_limit − T_amb)/(T_f − T_i): 10 A wire that bears 400 A²s from 70 to 160 °C.
        var wire = new HarmTime(10, 20, 70, 160, 70, 400, 3600, 5);
        var tau = 400.0 / 100 * 50 / 90;
        var settled = 20 + (50 * 4.0 * 4.0);
        double temperature = 70, time = 0;
        const double step = 1e-5;
        while (temperature < 160)
        {
            temperature += step * (settled - temperature) / tau;
            time += step;
        }

        // The adiabatic time 400/1600 s is shorter and counts.
        Assert.Equal(0.25, wire.At(40), 9);
        Assert.InRange(time, 0.25, 0.33);
        Assert.Equal(time, (wire with { WithstandLimit = 0 }).At(40), 4);
    }

    [Fact]
    public void WithinItsRatingNothingIsHarmed()
    {
        var wire = new HarmTime(10, 20, 70, 160, 70, 400, 3600, 5);
        Assert.Equal(double.PositiveInfinity, wire.At(10));
        Assert.Equal(3600, wire.At(14));
        Assert.True(wire.At(18) < 3600);
    }
}
