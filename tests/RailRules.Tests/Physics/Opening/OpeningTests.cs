using CsCheck;
using RailRules.Physics;

namespace RailRules.Tests.Physics.Opening;

/// <summary>Laws of opening devices: curves, gates, melting, clearing and what electronic fuses let through.</summary>
public class OpeningTests
{
    private static readonly TimeCurrentCurve Drawn = TimeCurrentCurve.Of([(20, 100, 1000), (40, 1, 10), (400, 0.01, 0.1)]);

    [Fact]
    public void BetweenPointsTheLogarithmsRunStraight()
    {
        // By hand: between (40 A, 10 s) and (400 A, 0.1 s) the exponent is −2: t = 10 (I/40)^−2.
        Assert.Equal(10 / Math.Pow(100.0 / 40, 2), Drawn.LongestTime(100), 9);
        Assert.Equal(1 / Math.Pow(100.0 / 40, 2), Drawn.ShortestTime(100), 9);
        Assert.Equal(double.PositiveInfinity, Drawn.LongestTime(19.9));
        Assert.Equal(double.PositiveInfinity, Drawn.ShortestTime(19.9));
        Assert.Equal(0.1, Drawn.LongestTime(5000));
        Assert.Equal(0, Drawn.ShortestTime(5000));
    }

    [Fact]
    public void MoreCurrentNeverOpensLater() => Gen.Select(Gen.Double[1, 1000], Gen.Double[1, 1000], Gen.Enum<Characteristic>(), Gen.Double[0.5, 600]).Sample(at =>
    {
        var (first, second, family, rated) = at;
        foreach (var curve in new[] { Drawn, TimeCurrentCurve.Of(StandardGates.Of(family, rated), rated) })
        {
            Assert.True(curve.LongestTime(Math.Max(first, second)) <= curve.LongestTime(Math.Min(first, second)));
            Assert.True(curve.ShortestTime(Math.Max(first, second)) <= curve.ShortestTime(Math.Min(first, second)));
            Assert.True(curve.ShortestTime(first) <= curve.LongestTime(first));
        }
    });

    /// <summary>Rulebook R-11: a 63 A gG link on 136.6 A opens for certain, but within 5 s only from 320 A on (OP-01, OP-02; IEC 60269-1 Tables 2 and 3, from memory).</summary>
    [Fact]
    public void TheWorkedExampleOfTheSmallestFault()
    {
        var link = TimeCurrentCurve.Of(StandardGates.Of(Characteristic.Iec60269gG, 63), 63);
        Assert.Equal(3600, link.LongestTime(136.6));
        Assert.Equal(5, link.LongestTime(320));
        Assert.Equal(double.PositiveInfinity, link.LongestTime(100));
    }

    /// <summary>The 0.1 s gates of gG are built for selectivity 1.6 to 1: what one rating surely opens at is what the second next surely withstands. Source: IEC 60269-2 (from memory).</summary>
    [Fact]
    public void TheGatesOfGeneralPurposeFusesChain()
    {
        var rows = StandardGates.GeneralPurposeGates;
        for (var k = 0; k + 2 < rows.Length; k++)
        {
            Assert.Equal(rows[k].MostTenth, rows[k + 2].LeastTenth);
            Assert.True(rows[k].Least10 < rows[k].Most5 && rows[k].Most5 < rows[k].MostTenth && rows[k].Least10 < rows[k].LeastTenth);
            Assert.True(rows[k].Least10 < rows[k + 1].Least10 && rows[k].Most5 < rows[k + 1].Most5);
        }
    }

    [Fact]
    public void AFasterFaultMeltsSooner() => Gen.Select(Gen.Double[10, 500], Gen.Double[1e-3, 0.5], Gen.Double[1e-7, 1e-3], Gen.Double[1, 5000], Gen.Double[1, 3]).Sample(at =>
    {
        var (v, r, l, melting, longer) = at;
        var near = Waveform.Inductive(v, r, l).TimeToIntegral(melting)!.Value;
        Assert.True(Waveform.Inductive(v, r * longer, l * longer).TimeToIntegral(melting)!.Value >= near * (1 - 1e-9), "a longer wire never shortens the opening");
        Assert.True(Waveform.Inductive(v * longer, r, l).TimeToIntegral(melting)!.Value <= near * (1 + 1e-9), "more fault current never lengthens the opening");
    });

    /// <summary>With a constant arc voltage the published clearing I²t, reduced in proportion to voltage, is never less than what the fuse really lets through. Source: rulebook R-20, circuit theory.</summary>
    [Fact]
    public void ReducingToALowerVoltageStaysOnTheCautiousSide() => Gen.Select(Gen.Double[0.01, 0.2], Gen.Double[1e-6, 1e-3], Gen.Double[5, 500], Gen.Double[0.2, 1]).Sample(at =>
    {
        var (r, l, melting, share) = at;
        const double tested = 80, arc = 130;

        // The same prospective current at both voltages, as in a test series.
        var test = ArcInterruption.Of(tested, r, l, melting, arc)!;
        var real = ArcInterruption.Of(tested * share, r * share, l * share, melting, arc)!;
        var reduced = ClearingData.Of([new(test.ClearingIntegral, tested, l / r)], melting, tested * share, l / r, 1e-3)!.Value;
        Assert.True(reduced >= real.ClearingIntegral * (1 - 1e-6));
        Assert.True(reduced <= test.ClearingIntegral * (1 + 1e-9));
    });

    [Fact]
    public void ClearingDataAreNeverRaised()
    {
        ClearingTest at80 = new(900, 80, 2e-3), at100 = new(1200, 100, 5e-3), loose = new(700, 80, double.NaN);
        Assert.Equal(900, ClearingData.Of([at80], 320, 80, 2e-3, 1e-3));
        Assert.Null(ClearingData.Of([at80], 320, 81, 2e-3, 1e-3));
        Assert.Null(ClearingData.Of([at80], 320, 80, 2.1e-3, 1e-3));
        Assert.Equal(320 + (580 * 60.0 / 80), ClearingData.Of([at80], 320, 60, 1e-3, 1e-3)!.Value, 9);
        Assert.Equal(900, ClearingData.Of([at80], null, 60, 1e-3, 1e-3)!.Value, 9);
        Assert.Equal(320 + (880 * 0.6), ClearingData.Of([at80, at100], 320, 60, 4e-3, 1e-3)!.Value, 9);
        Assert.Null(ClearingData.Of([loose], 320, 60, 2e-3, 1e-3));
        Assert.NotNull(ClearingData.Of([loose], 320, 60, 1e-3, 1e-3));
    }

    [Fact]
    public void ABreakerOpensByItsFasterPart()
    {
        Assert.Equal(0.1, Openings.BreakerLongest(200, null, 140, 0.1, 1.45, 10, 3600));
        Assert.Equal(3600, Openings.BreakerLongest(50, null, 140, 0.1, 1.45, 10, 3600));
        Assert.Equal(double.PositiveInfinity, Openings.BreakerLongest(14, null, 140, 0.1, 1.45, 10, 3600));
        Assert.Equal(8, Openings.BreakerLongest(50, TimeCurrentCurve.Of([(50, null, 8)]), 140, 0.1, 1.45, 10, 3600));
    }

    [Fact]
    public void AnElectronicFuseLetsTheRampThrough()
    {
        // HS-11: 50 A level, 60 V, 1 µH, 1 µs: 110 A. The whole ramp: 110²/3 × 110/60 µs.
        var ramp = Waveform.Inductive(60, 1e-6, 1e-6);
        var (peak, integral, _) = Openings.ElectronicLetThrough(ramp, 50, 1e-6)!.Value;
        Assert.Equal(110, peak, 2);
        Assert.Equal(110.0 * 110 / 3 * (110 / 60e6), integral, 5);
        Assert.Null(Openings.ElectronicLetThrough(Waveform.Constant(40), 50, 1e-6));
        Assert.Equal(2e-3, Openings.ElectronicLongest(12, 10, 2e-3, 50, 1e-6));
        Assert.Equal(1e-6, Openings.ElectronicLongest(60, 10, 2e-3, 50, 1e-6));
        Assert.Equal(double.PositiveInfinity, Openings.ElectronicLongest(9, 10, 2e-3, 50, 1e-6));
    }
}
