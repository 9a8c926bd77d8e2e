using CsCheck;
using RailRules.Physics;

namespace RailRules.Tests.Physics.Faults;

/// <summary>Laws of fault currents over random circuits: against closed forms, against step-by-step integration, and against scaling.</summary>
public class WaveformTests
{
    private static readonly Gen<(double V, double R, double L, double C)> Circuits =
        Gen.Select(Log(5, 1000), Log(1e-3, 1), Log(1e-8, 1e-3), Log(1e-5, 0.1));

    [Fact]
    public void ALoopOfTheNetworkIsTheClosedForm() => Circuits.Sample(at =>
    {
        var closed = Waveform.Capacitive(at.V, at.R, at.L, at.C);
        var network = new FaultNetwork();
        network.AddNode();
        network.AddCapacitor(0, 1, at.C, at.V, at.R / 3, at.L / 4);
        var fault = network.AddBranch(1, 0, at.R * 2 / 3, at.L * 3 / 4);
        var solved = network.Solve()!.Value[fault];
        var peak = closed.PeakCurrent;
        Near(closed.SquareIntegral(double.PositiveInfinity), solved.SquareIntegral(double.PositiveInfinity), 1e-5);
        Near(peak, solved.PeakCurrent, 1e-6);
        foreach (var t in new[] { 0.1, 1, 10 })
            Assert.True(Math.Abs(closed.At(t * at.L / at.R) - solved.At(t * at.L / at.R)) < 2e-6 * peak);
    });

    /// <summary>All the energy of a capacitor ends in the resistance, whatever the inductance: C V²/(2R). Source: conservation of energy.</summary>
    [Fact]
    public void ACapacitorGivesItsEnergy() => Circuits.Sample(at =>
        Near(PulseIntegral.CapacitorDischarge(at.C, at.V, at.R), Waveform.Capacitive(at.V, at.R, at.L, at.C).SquareIntegral(double.PositiveInfinity), 1e-7));

    /// <summary>V/R and V √(C/L) bound the peak of a discharge. Source: rulebook R-10, plain circuit theory.</summary>
    [Fact]
    public void ThePeakOfADischargeIsBounded() => Circuits.Sample(at =>
    {
        var peak = Waveform.Capacitive(at.V, at.R, at.L, at.C).PeakCurrent;
        Assert.InRange(peak, 0, Math.Min(at.V / at.R, at.V * Math.Sqrt(at.C / at.L)) * (1 + 1e-6));
    });

    [Fact]
    public void TheJouleIntegralNeverFalls() => Gen.Select(Circuits, Log(1e-8, 1), Log(1e-8, 1)).Sample(all =>
    {
        var ((v, r, l, c), first, second) = all;
        var current = Waveform.Capacitive(v, r, l, c).Plus(Waveform.Inductive(v, r, l));
        var (early, late) = (Math.Min(first, second), Math.Max(first, second));
        Assert.True(current.SquareIntegral(early) <= current.SquareIntegral(late) * (1 + 1e-8));
    });

    [Fact]
    public void MeltingIsTheInverseOfTheIntegral() => Gen.Select(Circuits, Log(1e-6, 10)).Sample(all =>
    {
        var ((v, r, l, _), share) = all;
        var current = Waveform.Inductive(v, r, l);
        var time = share * l / r;
        Near(time, current.TimeToIntegral(current.SquareIntegral(time))!.Value, 1e-4);
    });

    /// <summary>Currents go with the voltage, Joule integrals with its square; resistance, inductance and 1/capacitance together only stretch the currents.</summary>
    [Fact]
    public void CurrentsScaleAsTheCircuit() => Gen.Select(Circuits, Log(0.1, 10), Log(1e-6, 1e-2)).Sample(all =>
    {
        var ((v, r, l, c), factor, t) = all;
        double Fault(double voltage, double scale, double stretch) => Network(voltage, r * scale, l * scale * stretch, c / scale * stretch).At(t * stretch);
        var one = Fault(v, 1, 1);
        var size = Network(v, r, l, c).PeakCurrent;
        Assert.True(Math.Abs(Fault(v * factor, 1, 1) - (factor * one)) < 1e-5 * factor * size);
        Assert.True(Math.Abs(Fault(v, factor, 1) - (one / factor)) < 1e-5 / factor * size);
        Assert.True(Math.Abs(Fault(v, 1, factor) - one) < 1e-5 * size);
    }, iter: 40);

    /// <summary>Against the classical Runge-Kutta method, written here: source with limit, capacitor bank and back-feeding capacitor behind a one-way element.</summary>
    [Fact]
    public void ANetworkAgreesWithStepByStepIntegration()
    {
        var network = new FaultNetwork();
        network.AddNode();
        network.AddNode();
        var source = network.AddBranch(0, 1, 0.006, 5e-6, 54);
        var bank = network.AddCapacitor(0, 1, 22e-3, 54, 1.5e-3, 2e-8);
        network.AddBranch(1, 2, 0.001, 1e-6);
        network.AddCapacitor(0, 2, 940e-6, 54, 0.01, 3e-8);
        var fault = network.AddBranch(2, 0, 0.004, 2e-6);
        var solved = network.Solve()!.Value;

        // States: source, bank, feed-back currents; two capacitor voltages. Loops close through the fault.
        double[] Slope(double[] x)
        {
            var total = x[0] + x[1] + x[2];
            var through = x[0] + x[1];
            var drive = new[]
            {
                54 - (0.006 * x[0]) - (0.001 * through) - (0.004 * total),
                x[3] - (1.5e-3 * x[1]) - (0.001 * through) - (0.004 * total),
                x[4] - (0.01 * x[2]) - (0.004 * total),
            };
            double[][] inductance =
            [
                [5e-6 + 1e-6 + 2e-6, 1e-6 + 2e-6, 2e-6],
                [1e-6 + 2e-6, 2e-8 + 1e-6 + 2e-6, 2e-6],
                [2e-6, 2e-6, 3e-8 + 2e-6],
            ];
            var rise = Solve(inductance, drive);
            return [rise[0], rise[1], rise[2], -x[1] / 22e-3, -x[2] / 940e-6];
        }

        var state = new double[] { 0, 0, 0, 54, 54 };
        const double step = 2e-8;
        double integral = 0;
        for (var n = 1; n <= 50_000; n++)
        {
            var before = state[0] + state[1] + state[2];
            state = RungeKutta(state, step, Slope);
            var after = state[0] + state[1] + state[2];
            integral += step * ((before * before) + (before * after) + (after * after)) / 3;
            if (n is 500 or 5_000 or 50_000)
            {
                Near(after, solved[fault].At(n * step), 1e-6);
                Near(state[0], solved[source].At(n * step), 1e-6);
                Near(state[1], solved[bank].At(n * step), 1e-5);
                Near(integral, solved[fault].SquareIntegral(n * step), 1e-5);
            }
        }
    }

    /// <summary>A limit never raises a current, and holds it at its level once it acts.</summary>
    [Fact]
    public void ALimitOnlyLowers() => Gen.Select(Circuits, Log(1, 1e5), Log(1e-6, 1e-2)).Sample(all =>
    {
        var ((v, r, l, _), level, response) = all;
        var limited = LimitedSource.Into(v, r, l, level, response);
        Assert.Equal(Math.Min(level, v / r), limited.Settled, 1e-6 * v / r);
        var network = new FaultNetwork();
        network.AddNode();
        network.AddBranch(0, 1, r, l, v);
        network.LimitSource(0, response, double.PositiveInfinity, level);
        network.AddBranch(1, 0, 0, 0);
        var solved = network.Solve()!.Value[0];
        foreach (var t in new[] { response / 2, response * 2, response * 100 })
        {
            Assert.True(limited.At(t) <= Waveform.Inductive(v, r, l).At(t) * (1 + 1e-9));
            Near(limited.At(t), solved.At(t), 1e-5);
        }
    });

    [Fact]
    public void ALatchOffEndsTheCurrent()
    {
        var current = LimitedSource.Into(48, 0.06, 3e-5, 40, 2e-4, off: 0.05);
        Assert.Equal(40, current.At(0.049), 9);
        Assert.Equal(0, current.At(0.051));
        Assert.Equal(0, current.Settled);
    }

    [Fact]
    public void APeakBeforeTheLimitCutsTheRise() => Assert.Equal(100, LimitedSource.Into(48, 0.06, 3e-5, 40, 2e-3, peak: 100).PeakCurrent, 6);

    /// <summary>A feed at a lower voltage behind a one-way element gives nothing until the bus falls below it.</summary>
    [Fact]
    public void AOneWayFeedBlocksUntilTheBusFalls()
    {
        var network = new FaultNetwork();
        network.AddNode();
        network.AddNode();
        network.AddBranch(0, 1, 0.001, 1e-7, 54);
        var low = network.AddBranch(0, 1, 0.001, 1e-7, 30, oneWay: true);
        network.AddBranch(1, 0, 0.002, 2e-7);
        var blocked = network.Solve()!.Value[low];
        Assert.Equal(0, blocked.PeakCurrent, 3);

        // The first feed goes into limit, the bus falls, the second one takes over: 30 V over 3 mΩ less the first feed's share.
        network.LimitSource(0, 1e-3, double.PositiveInfinity, 1000);
        var taking = network.Solve()!.Value[low];
        Assert.Equal((30 - (1000 * 0.002)) / 0.003, taking.Settled, 1);
        Assert.True(taking.Pieces.All(piece => piece.Initial > -1));
    }

    [Fact]
    public void WithoutResistanceThereIsNoSolution()
    {
        var network = new FaultNetwork();
        network.AddNode();
        network.AddBranch(0, 1, 0, 0, 54);
        network.AddBranch(1, 0, 0, 0);
        Assert.Null(network.Solve());
    }

    /// <summary>The steady currents of a tree against the same tree as a network that has settled.</summary>
    [Fact]
    public void ASteadyTreeIsASettledNetwork() => Gen.Double[1e-3, 0.1].Array[6].Sample(resistances =>
    {
        var tree = new SteadyTree(54, resistances[0]);
        int a = tree.Add(0, resistances[1], 0.5), b = tree.Add(a, resistances[2], 2), c = tree.Add(a, resistances[3], 1), d = tree.Add(c, resistances[4]);
        var currents = tree.FaultCurrents(resistances[5]);
        foreach (var place in new[] { 0, a, b, c, d })
        {
            var network = new FaultNetwork();
            var nodes = Enumerable.Range(0, 5).Select(_ => network.AddNode()).ToArray();
            network.AddBranch(0, nodes[0], resistances[0], 1e-6, 54);
            network.AddBranch(nodes[0], nodes[a], resistances[1], 1e-6);
            network.AddBranch(nodes[a], nodes[b], resistances[2], 1e-6);
            network.AddBranch(nodes[a], nodes[c], resistances[3], 1e-6);
            network.AddBranch(nodes[c], nodes[d], resistances[4], 1e-6);
            network.AddBranch(nodes[a], 0, 2, 0);
            network.AddBranch(nodes[b], 0, 0.5, 0);
            network.AddBranch(nodes[c], 0, 1, 0);
            var fault = network.AddBranch(nodes[place], 0, resistances[5], 0);
            Near(currents[place], network.Solve()!.Value[fault].Settled, 1e-6);
        }
    }, iter: 30);

    private static Waveform Network(double v, double r, double l, double c)
    {
        var network = new FaultNetwork();
        network.AddNode();
        network.AddBranch(0, 1, r, l, v);
        network.AddCapacitor(0, 1, c, v, r / 2, l / 10);
        var fault = network.AddBranch(1, 0, r / 4, l / 5);
        return network.Solve()!.Value[fault];
    }

    private static Gen<double> Log(double low, double high) => Gen.Double[Math.Log(low), Math.Log(high)].Select(Math.Exp);

    private static void Near(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(expected - actual) <= relative * Math.Abs(expected), $"{actual:R} instead of {expected:R}");

    private static double[] RungeKutta(double[] x, double h, Func<double[], double[]> slope)
    {
        double[] Moved(double[] by, double factor) => [.. x.Select((value, n) => value + (factor * by[n]))];
        var a = slope(x);
        var b = slope(Moved(a, h / 2));
        var c = slope(Moved(b, h / 2));
        var d = slope(Moved(c, h));
        return [.. x.Select((value, n) => value + (h / 6 * (a[n] + (2 * b[n]) + (2 * c[n]) + d[n])))];
    }

    private static double[] Solve(double[][] matrix, double[] right)
    {
        var a = matrix.Select((row, n) => row.Append(right[n]).ToArray()).ToArray();
        for (var k = 0; k < a.Length; k++)
        {
            for (var row = 0; row < a.Length; row++)
            {
                if (row == k)
                    continue;

                var factor = a[row][k] / a[k][k];
                for (var j = k; j <= a.Length; j++)
                    a[row][j] -= factor * a[k][j];
            }
        }

        return [.. a.Select((row, n) => row[^1] / row[n])];
    }
}
