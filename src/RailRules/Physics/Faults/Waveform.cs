using System.Collections.Immutable;
using System.Numerics;

namespace RailRules.Physics;

/// <summary>One decaying or oscillating part of a current: Factor × (exp(Pole t) − 1). Complex parts stand in conjugate pairs.</summary>
/// <param name="Factor">Factor (A).</param>
/// <param name="Pole">Pole (1/s), real part below 0.</param>
internal readonly record struct Mode(Complex Factor, Complex Pole);

/// <summary>A stretch of a current: Initial + sum of the modes, time counted from Start.</summary>
/// <param name="Start">When it begins (s).</param>
/// <param name="Initial">Current at its beginning (A).</param>
/// <param name="Modes">What changes from there on.</param>
internal sealed record WavePiece(double Start, double Initial, ImmutableArray<Mode> Modes)
{
    /// <summary>The value that the piece tends to if nothing follows (A).</summary>
    internal double Settled => Initial - Modes.Sum(mode => mode.Factor.Real);

    /// <summary>Current at a time after the piece's beginning (A).</summary>
    internal double At(double t)
    {
        var sum = Initial;
        foreach (var mode in Modes)
            sum += (mode.Factor * Exponentials.Minus1(mode.Pole * t)).Real;

        return sum;
    }

    /// <summary>Rate of rise at a time after the piece's beginning (A/s).</summary>
    internal double Slope(double t)
    {
        double sum = 0;
        foreach (var mode in Modes)
            sum += (mode.Factor * mode.Pole * Complex.Exp(mode.Pole * t)).Real;

        return sum;
    }

    /// <summary>Integral of the squared current over the first t seconds of the piece (A²s).</summary>
    internal double SquareIntegral(double t)
    {
        if (t <= 0)
            return 0;

        if (double.IsPositiveInfinity(t))
            return SquareIntegralToEnd();

        var sum = Initial * Initial * t;
        for (var j = 0; j < Modes.Length; j++)
        {
            var a = Modes[j];
            if (Initial != 0)
                sum += 2 * Initial * (a.Factor * Exponentials.Integral(a.Pole, t)).Real;

            sum += (a.Factor * a.Factor * Exponentials.ProductIntegral(a.Pole, a.Pole, t)).Real;
            for (var k = 0; k < j; k++)
                sum += 2 * (a.Factor * Modes[k].Factor * Exponentials.ProductIntegral(a.Pole, Modes[k].Pole, t)).Real;
        }

        return Math.Max(sum, 0);
    }

    /// <summary>Integral of the current over the first t seconds of the piece (As).</summary>
    internal double Charge(double t) => (Initial * t) + Modes.Sum(mode => (mode.Factor * Exponentials.Integral(mode.Pole, t)).Real);

    private double SquareIntegralToEnd()
    {
        var scale = Math.Abs(Initial) + Modes.Sum(mode => Complex.Abs(mode.Factor));
        if (Math.Abs(Settled) > 1e-9 * scale)
            return double.PositiveInfinity;

        double sum = 0;
        foreach (var a in Modes)
        {
            foreach (var b in Modes)
                sum -= (a.Factor * b.Factor / (a.Pole + b.Pole)).Real;
        }

        return Math.Max(sum, 0);
    }
}

/// <summary>
/// A current over time: consecutive stretches, each a sum of exponentials, so that value, charge and Joule integral are exact (to rounding: relative error
/// about 1e-10 except within a ten-thousandth of the shortest time constant, where it may reach 1e-6). Time 0 is the fault. SI units.
/// </summary>
internal sealed class Waveform
{
    private readonly ImmutableArray<WavePiece> pieces;
    private readonly double[] integralsBefore;

    /// <summary>Joins pieces, ordered by their beginnings; the first begins at 0.</summary>
    internal Waveform(IEnumerable<WavePiece> pieces)
    {
        this.pieces = [.. pieces];
        integralsBefore = new double[this.pieces.Length];
        for (var k = 1; k < integralsBefore.Length; k++)
            integralsBefore[k] = integralsBefore[k - 1] + this.pieces[k - 1].SquareIntegral(this.pieces[k].Start - this.pieces[k - 1].Start);
    }

    /// <summary>No current.</summary>
    internal static Waveform Zero { get; } = Constant(0);

    /// <summary>The pieces.</summary>
    internal ImmutableArray<WavePiece> Pieces => pieces;

    /// <summary>The current after everything has settled (A).</summary>
    internal double Settled => pieces[pieces.Length - 1].Settled;

    /// <summary>The largest current at any time (A).</summary>
    internal double PeakCurrent => Peak().Current;

    /// <summary>A constant current (A) from time 0.</summary>
    internal static Waveform Constant(double current) => new([new WavePiece(0, current, [])]);

    /// <summary>
    /// Current of a stiff source into a resistance and an inductance: i = I − (I − i0) exp(−t R/L), I = V/R. Source: closed form, any textbook.
    /// </summary>
    /// <param name="voltage">Driving voltage (V), arc voltage already taken off.</param>
    /// <param name="resistance">Loop resistance (Ω), above 0.</param>
    /// <param name="inductance">Loop inductance (H), 0 allowed.</param>
    /// <param name="initial">Current before (A).</param>
    internal static Waveform Inductive(double voltage, double resistance, double inductance, double initial = 0) =>
        new([InductivePiece(0, voltage, resistance, inductance, initial)]);

    /// <summary>The stretch of <see cref="Inductive"/> that begins at a given time.</summary>
    internal static WavePiece InductivePiece(double start, double voltage, double resistance, double inductance, double initial)
    {
        var settled = voltage / resistance;
        return inductance <= 0 || settled == initial
            ? new(start, settled, [])
            : new(start, initial, [new(initial - settled, -resistance / inductance)]);
    }

    /// <summary>
    /// Discharge of a capacitor through a resistance and an inductance: under-, critically and overdamped. Source: series RLC, closed form, any textbook.
    /// Inductance 0: i = V/R exp(−t/RC).
    /// </summary>
    /// <param name="voltage">Voltage of the capacitor less what opposes it (V).</param>
    /// <param name="resistance">Loop resistance (Ω), ESR included, above 0.</param>
    /// <param name="inductance">Loop inductance (H), ESL included.</param>
    /// <param name="capacitance">Capacitance (F), above 0.</param>
    internal static Waveform Capacitive(double voltage, double resistance, double inductance, double capacitance)
    {
        if (inductance <= 0)
            return new([new(0, voltage / resistance, [new(voltage / resistance, -1 / (resistance * capacitance))])]);

        var damping = resistance / (2 * inductance);
        var difference = (damping * damping) - (1 / (inductance * capacitance));

        // At critical damping the two poles are kept 2e-4 of their size apart, which changes the current by less than 1e-8 of its peak and leaves eight digits
        // in the Joule integral, where the two parts nearly cancel.
        if (Math.Abs(difference) < 1e-8 * damping * damping)
            difference = 1e-8 * damping * damping;

        var root = Complex.Sqrt(difference);
        var factor = voltage / (2 * inductance * root);
        var fast = -damping - root;
        var slow = difference > damping * damping / 4 ? 1 / (inductance * capacitance) / fast : -damping + root;
        return new([new(0, 0, [new(factor, slow), new(-factor, fast)])]);
    }

    /// <summary>Current at a time (A). At a step the later value.</summary>
    internal double At(double time)
    {
        var k = PieceAt(time);
        return pieces[k].At(time - pieces[k].Start);
    }

    /// <summary>Joule integral from 0 to a time (A²s); positive infinity: to the end.</summary>
    internal double SquareIntegral(double time)
    {
        if (time <= 0)
            return 0;

        var k = PieceAt(time);
        return integralsBefore[k] + pieces[k].SquareIntegral(time - pieces[k].Start);
    }

    /// <summary>Heat (J) that the current leaves in a resistance (Ω) from 0 to a time (s).</summary>
    internal double Energy(double resistance, double time) => resistance * SquareIntegral(time);

    /// <summary>
    /// The instant (s) at which the Joule integral reaches a value (A²s): adiabatic melting. Null: never.
    /// </summary>
    internal double? TimeToIntegral(double integral)
    {
        if (integral <= 0)
            return 0;

        for (var k = 0; k < pieces.Length; k++)
        {
            var length = k + 1 < pieces.Length ? pieces[k + 1].Start - pieces[k].Start : double.PositiveInfinity;
            var wanted = integral - integralsBefore[k];
            if (pieces[k].SquareIntegral(length) >= wanted)
                return pieces[k].Start + Within(pieces[k], wanted, length);
        }

        return null;
    }

    /// <summary>The first time of the largest current in a stretch of time, and that current. Zero: the first value counts at <paramref name="from"/>.</summary>
    internal (double Time, double Current) Peak(double from = 0, double to = double.PositiveInfinity)
    {
        var best = (Time: from, Current: At(from));
        for (var k = PieceAt(from); k < pieces.Length && pieces[k].Start <= to; k++)
        {
            var piece = pieces[k];
            var begin = Math.Max(from - piece.Start, 0);
            var end = Math.Min(to, k + 1 < pieces.Length ? pieces[k + 1].Start : double.PositiveInfinity) - piece.Start;
            var previous = (Time: begin, Slope: piece.Slope(begin));
            Offer(begin);
            foreach (var t in Samples(piece, begin, end))
            {
                var slope = piece.Slope(t);
                Offer(previous.Slope > 0 && slope < 0 ? Crest(piece, previous.Time, t) : t);
                previous = (t, slope);
            }

            void Offer(double t)
            {
                var value = piece.At(t);
                if (value > best.Current + (1e-13 * Math.Abs(best.Current)))
                    best = (piece.Start + t, value);
            }
        }

        var settled = double.IsPositiveInfinity(to) ? Settled : double.NegativeInfinity;
        return settled > best.Current ? (double.PositiveInfinity, settled) : best;
    }

    /// <summary>The largest current up to a time: what a device lets through that melts then (A). Source: definition of cut-off current, IEC 60269-1 (from memory).</summary>
    internal double LetThroughPeak(double time) => Peak(0, time).Current;

    /// <summary>
    /// Time constant (s): when the current has come to 1 − 1/e of the way from its first to its settled value. Null where it does not rise to a settled value.
    /// Source: common practice.
    /// </summary>
    internal double? RiseTimeConstant()
    {
        var first = At(0);
        var settled = Settled;
        if (!(settled > first))
            return null;

        var level = settled - ((settled - first) / Math.E);
        double low = 0, high = 1e-9;
        for (var k = 0; k < 80 && At(high) < level; k++)
            (low, high) = (high, high * 2);

        for (var k = 0; k < 80; k++)
        {
            var middle = (low + high) / 2;
            (low, high) = At(middle) < level ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>The sum of two currents at every instant.</summary>
    internal Waveform Plus(Waveform other)
    {
        var starts = pieces.Select(piece => piece.Start).Concat(other.pieces.Select(piece => piece.Start)).Distinct().OrderBy(start => start);
        return new(starts.Select(start =>
        {
            WavePiece a = From(start), b = other.From(start);
            return new WavePiece(start, a.Initial + b.Initial, [.. a.Modes, .. b.Modes]);
        }));
    }

    /// <summary>The current times a number.</summary>
    internal Waveform Times(double factor) =>
        new(pieces.Select(piece => new WavePiece(piece.Start, factor * piece.Initial, [.. piece.Modes.Select(mode => mode with { Factor = factor * mode.Factor })])));

    /// <summary>The current up to a time, then what follows.</summary>
    internal Waveform Then(double time, params WavePiece[] next) => new(pieces.Where(piece => piece.Start < time).Concat(next));

    /// <summary>The first time at or after <paramref name="from"/> at which the current reaches a level (A) upwards. Null: never.</summary>
    internal double? FirstReach(double level, double from = 0)
    {
        if (At(from) >= level)
            return from;

        for (var k = PieceAt(from); k < pieces.Length; k++)
        {
            var piece = pieces[k];
            var begin = Math.Max(from - piece.Start, 0);
            var end = (k + 1 < pieces.Length ? pieces[k + 1].Start : double.PositiveInfinity) - piece.Start;
            if (piece.At(begin) >= level)
                return piece.Start + begin;

            var low = begin;
            foreach (var t in Samples(piece, begin, end))
            {
                var high = t;
                if (piece.Slope(low) > 0 && piece.Slope(t) < 0)
                    high = Crest(piece, low, t);

                if (piece.At(high) >= level || piece.At(high = t) >= level)
                    return piece.Start + Reach(piece, level, low, high);

                low = t;
            }
        }

        return null;
    }

    private static double Reach(WavePiece piece, double level, double low, double high)
    {
        for (var n = 0; n < 100 && high - low > 1e-14 * high; n++)
        {
            var middle = (low + high) / 2;
            (low, high) = piece.At(middle) < level ? (middle, high) : (low, middle);
        }

        return high;
    }

    private static double Within(WavePiece piece, double integral, double length)
    {
        double low = 0, high = length;
        if (double.IsPositiveInfinity(high))
        {
            high = 1e-9;
            while (piece.SquareIntegral(high) < integral && high < 1e12)
                (low, high) = (high, high * 2);
        }

        for (var n = 0; n < 200 && high - low > 1e-14 * high; n++)
        {
            var middle = (low + high) / 2;
            (low, high) = piece.SquareIntegral(middle) < integral ? (middle, high) : (low, middle);
        }

        return high;
    }

    private static double Crest(WavePiece piece, double low, double high)
    {
        for (var n = 0; n < 100 && high - low > 1e-14 * high; n++)
        {
            var middle = (low + high) / 2;
            (low, high) = piece.Slope(middle) > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>
    /// Instants that miss no crest: 24 to a decade from a thousandth of the shortest to forty times the longest time constant, and 16 to a period of each
    /// oscillation while it lasts (at most 200 periods, after which less than 1e-6 of it is left or it is so lightly damped that its first crest is its highest).
    /// </summary>
    private static IEnumerable<double> Samples(WavePiece piece, double begin, double end)
    {
        var times = new List<double>();
        if (piece.Modes.Length > 0)
        {
            var longest = 40 / piece.Modes.Min(mode => Math.Max(-mode.Pole.Real, 1e-12));
            var step = Math.Pow(10, 1.0 / 24);
            for (var t = 1e-3 / piece.Modes.Max(mode => Complex.Abs(mode.Pole)); t < longest; t *= step)
                times.Add(t);

            foreach (var mode in piece.Modes.Where(mode => mode.Pole.Imaginary > 0))
            {
                var period = 2 * Math.PI / mode.Pole.Imaginary;
                var last = Math.Min(14 / -mode.Pole.Real, 200 * period);
                for (var t = period / 16; t < last; t += period / 16)
                    times.Add(t);
            }
        }

        if (!double.IsPositiveInfinity(end))
            times.Add(end);

        return times.Where(t => t > begin && t <= end).Distinct().OrderBy(t => t);
    }

    private WavePiece From(double start)
    {
        var piece = pieces[PieceAt(start)];
        var t = start - piece.Start;
        return t == 0
            ? piece
            : new(start, piece.At(t), [.. piece.Modes.Select(mode => mode with { Factor = mode.Factor * Complex.Exp(mode.Pole * t) })]);
    }

    private int PieceAt(double time)
    {
        var k = pieces.Length - 1;
        while (k > 0 && pieces[k].Start > time)
            k--;

        return k;
    }
}
