using CsCheck;
using RailRules.Physics;

namespace RailRules.Tests.Physics.Starting;

/// <summary>What must be so for every start, pulse and interruption; each follows from charge or energy balance, or from the definition of the quantity.</summary>
public class StartingProperties
{
    private static readonly Gen<double> Volts = Gen.Double[5, 800];
    private static readonly Gen<double> Farads = Exponent(-6, -1);
    private static readonly Gen<double> Ohms = Exponent(-3, 2);
    private static readonly Gen<double> Henries = Exponent(-7, -3);
    private static readonly Gen<double> Amperes = Exponent(-1, 3);

    [Fact]
    public void AnyPathThatMaySwingBackLeavesHalfCVSquaredInItsResistance() =>
        Gen.Select(Volts, Ohms, Henries, Farads).Sample((v, r, l, c) =>
        {
            var exact = Inrush.Integral(v, r, c);
            Close(exact, Inrush.Resistive(v, r, c)!.TotalIntegral, 1e-7);
            Close(exact, Inrush.Resonant(v, r, l, c)!.TotalIntegral, 1e-6);
        });

    [Fact]
    public void AOneWayPathTakesLessAndLeavesTheCapacitorAboveTheSource() =>
        Gen.Select(Volts, Ohms, Henries, Farads).Sample((v, r, l, c) =>
        {
            var oneWay = Inrush.Resonant(v, r, l, c, oneWay: true)!;
            Assert.True(oneWay.TotalIntegral <= Inrush.Integral(v, r, c) * (1 + 1e-7));
            if (Inrush.HalfPeriod(r, l, c) is { } half)
                Close(Inrush.PeakVoltage(v, r, l, c), oneWay.VoltageAt(2 * half), 1e-6);
        });

    [Fact]
    public void AStartWithoutLoadCostsTheSwitchHalfCVSquaredWhateverLimitsIt() =>
        Gen.Select(Volts, Farads, Amperes, Exponent(0, 4), Ohms).Sample((v, c, i, p, r) =>
        {
            var start = SwitchedStart.Of(v, c, new(i, p))!;
            Close(c * v * v / 2, start.Until(v)!.Value.Energy, 1e-7);
            Assert.True(start.PeakPower <= Math.Min(p, v * i) * (1 + 1e-9));
            Assert.Null(SwitchedStart.Of(v, c, new(i, p, r))!.Until(v * 1.0001));
            var almost = 0.999 * v;
            Close(c * ((v * almost) - (almost * almost / 2)), SwitchedStart.Of(v, c, new(i, p, r))!.Until(almost)!.Value.Energy, 1e-7);
        });

    [Fact]
    public void AStartWithAConstantLoadIsTheClosedFormOrNeverEnds() =>
        Gen.Select(Volts, Farads, Amperes, Amperes).Sample((v, c, i, load) =>
        {
            var state = SwitchedStart.Of(v, c, new(i), [new(load)])!.Until(v);
            Assert.Equal(StartFormulas.Time(c, v, i, load) is null, state is null);
            if (state is { } end)
            {
                Close(StartFormulas.Time(c, v, i, load)!.Value, end.Time, 1e-7);
                Close(StartFormulas.Energy(c, v, i, load)!.Value, end.Energy, 1e-7);
                Close(i * i * end.Time, end.Integral, 1e-7);
            }
        });

    [Fact]
    public void AStartStallsExactlyWhereTheLoadsTakeAllThatIsGiven() =>
        Gen.Select(Volts, Amperes, Exponent(0, 4), Exponent(-1, 4), Gen.Double[0, 0.02], Gen.Double[0.01, 0.95]).Sample((v, i, p, load, siemens, from) =>
        {
            var start = SwitchedStart.Of(v, 1e-3, new(i, p), [new(0, siemens, load, from * v)])!;
            var least = Enumerable.Range(0, 20001).Select(k => v * k / 20000.0).Where(u => u < v).Min(u => start.CurrentAt(u) - start.LoadAt(u));
            if (Math.Abs(least) > 1e-3 * (i + (load / v)))
                Assert.Equal(least < 0, start.Until(v) is null);
        });

    [Fact]
    public void MoreLoadNeverMakesAStartShorter() =>
        Gen.Select(Volts, Farads, Amperes, Gen.Double[0, 0.9], Gen.Double[0, 0.9]).Sample((v, c, i, one, other) =>
        {
            double Time(double share) => SwitchedStart.Of(v, c, new(i), [new(share * i)])!.Until(v)!.Value.Time;
            Assert.True(Time(Math.Min(one, other)) <= Time(Math.Max(one, other)) * (1 + 1e-9));
        });

    [Fact]
    public void TheStateAtATimeIsTheStateAtItsVoltage() =>
        Gen.Select(Volts, Farads, Amperes, Exponent(0, 4), Gen.Double[0.05, 0.95]).Sample(
            (v, c, i, p, share) =>
            {
                var start = SwitchedStart.Of(v, c, new(i, p, 0.01))!;
                var there = start.Until(share * v)!.Value;
                var (state, voltage) = start.At(there.Time);
                Close(share * v, voltage, 1e-6);
                Close(there.Energy, state.Energy, 1e-6);
                Close(there.Time, start.TimeToIntegral(there.Integral)!.Value.Time, 1e-6);
            },
            iter: 30);

    [Fact]
    public void AClampTakesWhatWasStoredAndWhatTheSourceAddsLessTheLossInTheLoop() =>
        Gen.Select(Gen.Double[0, 400], Amperes, Henries, Exponent(-4, 1), Gen.Double[1.01, 5], Exponent(-4, 1)).Sample((v, i, l, r, ratio, rc) =>
        {
            var off = TurnOff.Of(v, i, l, r, new Clamp((v * ratio) + 1, rc))!;
            var given = off.StoredEnergy + (v * off.Charge(off.DecayTime));
            Close(given, off.ClampEnergy + (r * off.TotalIntegral), 1e-6);
            Assert.Equal(0, off.At(off.DecayTime));
            Assert.True(off.ClampEnergy <= Clamp.InductiveEnergy(l, i, (v * ratio) + 1, v) * (1 + 1e-6) || rc > 0);
        });

    [Fact]
    public void WithoutResistanceTheClampTakesTheTextbookEnergy() =>
        Gen.Select(Gen.Double[0, 400], Amperes, Henries, Gen.Double[1.01, 5]).Sample((v, i, l, ratio) =>
        {
            var clamp = (v * ratio) + 1;
            var off = TurnOff.Of(v, i, l, 0, new Clamp(clamp, 0))!;
            Close(Clamp.InductiveEnergy(l, i, clamp, v)!.Value, off.ClampEnergy, 1e-9);
            Close(i * i * off.DecayTime / 3, off.TotalIntegral, 1e-9);
            Assert.Null(TurnOff.Of(clamp, i, l, 0, new Clamp(clamp, 0)));
        });

    [Fact]
    public void AnOpeningSurgeStaysBelowItsBoundAndReachesItWithoutResistance() =>
        Gen.Select(Volts, Amperes, Henries, Exponent(-4, 1), Farads).Sample((v, i, l, r, c) =>
        {
            var bound = OpeningSurge.Bound(v, i, l, c);
            Assert.True(OpeningSurge.Into(v, i, l, r, c, v)!.Value.Voltage <= bound * (1 + 1e-9));
            Close(bound, OpeningSurge.Into(v, i, l, 0, c, v)!.Value.Voltage, 1e-9);
        });

    [Fact]
    public void PulsesOnTopOfASteadyCurrentAreTheIntegralOfTheSquare() =>
        Gen.Select(Gen.Enum<PulseShape>(), Amperes, Exponent(-6, 0), Gen.Double[0, 50]).Sample((shape, peak, width, steady) =>
        {
            Func<double, double> at = shape switch
            {
                PulseShape.Rectangle => _ => 1,
                PulseShape.Triangle => x => 1 - Math.Abs((2 * x) - 1),
                PulseShape.HalfSine => x => Math.Sin(Math.PI * x),
                _ => x => Math.Exp(-x * 40),
            };
            const int Steps = 20000;
            double sum = 0;
            for (var k = 0; k < Steps; k++)
            {
                var i = steady + (peak * at((k + 0.5) / Steps));
                sum += ((i * i) - (steady * steady)) / Steps;
            }

            Close(sum * width * (shape == PulseShape.Exponential ? 40 : 1), PulseIntegrals.OnTop(shape, peak, width, steady), 1e-5);
        });

    [Fact]
    public void ThePulseShareFallsWithTheNumberOfPulses() =>
        Gen.Select(Exponent(0, 5), Exponent(0, 5)).Sample((one, other) =>
        {
            (double, double)[] table = [(1e2, 0.48), (1e3, 0.38), (1e4, 0.29), (1e5, 0.22)];
            Assert.True(PulseEndurance.Share(table, Math.Min(one, other)) >= PulseEndurance.Share(table, Math.Max(one, other)));
            Assert.Null(PulseEndurance.Share(table, 100001));
            Assert.Equal(0.48, PulseEndurance.Share(table, Math.Min(one, 100)));
        });

    [Fact]
    public void AFilterKeepsTheMeanAndLowersTheHeat() =>
        Gen.Select(Ohms, Farads, Amperes, Gen.Double[0.01, 0.99], Exponent(-5, 0)).Sample((r, c, peak, duty, period) =>
        {
            var pulses = FilteredPulses.Of(r, c, 0, peak, duty * period, period)!;
            Close(peak * duty, pulses.Mean, 1e-9);
            Assert.True(pulses.Rms >= pulses.Mean * (1 - 1e-7));
            Assert.True(pulses.Rms <= peak * Math.Sqrt(duty) * (1 + 1e-7));
            Assert.True(pulses.Peak <= peak * (1 + 1e-9) && pulses.Lowest >= -1e-9 * peak && pulses.Peak >= pulses.Lowest);
        });

    [Fact]
    public void TheQuadratureIntegratesPolynomials()
    {
        // The integral of x^n from -1 to 1 is 2/(n + 1); Gauss (7) is exact to n = 13, Kronrod (15) to n = 22.
        for (var n = 0; n <= 22; n += 2)
        {
            double kronrod = 0, gauss = 0;
            foreach (var (x, k, g) in SwitchedStart.Nodes)
            {
                var weight = x == 0 ? 1 : 2;
                kronrod += weight * k * Math.Pow(x, n);
                gauss += weight * g * Math.Pow(x, n);
            }

            Assert.Equal(2.0 / (n + 1), kronrod, 1e-14);
            if (n <= 13)
                Assert.Equal(2.0 / (n + 1), gauss, 1e-14);
        }
    }

    [Fact]
    public void NoFiniteInputThrows() =>
        Gen.Select(Gen.Double[-10, 10], Gen.Double[-10, 10], Gen.Double[-10, 10], Gen.Double[-10, 10], Gen.Double[-10, 10]).Sample((a, b, c, d, e) =>
        {
            _ = Inrush.Resistive(a, b, c, d)?.TotalIntegral;
            _ = Inrush.Resonant(a, b, c, d, true)?.TotalIntegral;
            _ = Inrush.Stepped(a, b, c, d, Math.Abs(e))?.TotalIntegral;
            _ = SwitchedStart.Of(a, b, new(c, d, e), [new(a, b, c, d)])?.Until(e);
            _ = TurnOff.Of(a, b, c, d, new(e, a))?.ClampEnergy;
            _ = OpeningSurge.Into(a, b, c, d, e, a - 1);
            _ = FilteredPulses.Of(a, b, c, d, e, a);
            _ = CurrentProfile.Trapezoids(a, b, c, d, e, a);
            _ = Clamp.PulsePower(a, b, c);
            _ = ThermistorCharge.Of(a, b, c, d, e, a, 300, Math.Abs(b), 10);
        });

    private static Gen<double> Exponent(double low, double high) => Gen.Double[low, high].Select(x => Math.Pow(10, x));

    private static void Close(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(expected - actual) <= (relative * Math.Abs(expected)) + 1e-300, $"{actual:R} is not {expected:R}");
}
