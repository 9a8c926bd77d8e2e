using System.Numerics;

namespace RailRules.Physics;

/// <summary>
/// Eigenvalues and eigenvectors of a small dense real matrix, by reduction to Hessenberg form, shifted QR steps to a complex Schur form and back substitution.
/// Source: G. H. Golub, C. F. Van Loan, Matrix Computations, chapter 7 (from memory). Backward error about 1e-15 of the matrix norm.
/// </summary>
internal sealed class Eigenmodes
{
    private Eigenmodes(Complex[] values, Complex[,] vectors) => (Values, Vectors) = (values, vectors);

    /// <summary>The eigenvalues.</summary>
    internal Complex[] Values { get; }

    /// <summary>Whether some of them nearly coincide without being independent, so that digits are lost.</summary>
    internal bool AreClose { get; private init; }

    /// <summary>The eigenvectors, a column each, of length 1.</summary>
    internal Complex[,] Vectors { get; }

    /// <summary>The decomposition; null if the iteration does not end (not observed; 60 steps are allowed for each eigenvalue).</summary>
    internal static Eigenmodes? Of(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var t = new Complex[n, n];
        var q = new Complex[n, n];
        for (var i = 0; i < n; i++)
        {
            q[i, i] = 1;
            for (var j = 0; j < n; j++)
                t[i, j] = matrix[i, j];
        }

        ToHessenberg(t, q, n);
        return ToSchur(t, q, n) ? new(Diagonal(t, n), VectorsOf(t, q, n)) { AreClose = Coincide(t, n) } : null;
    }

    /// <summary>Coordinates of a vector in the eigenvectors; null where they do not span it.</summary>
    internal Complex[]? Coordinates(double[] vector)
    {
        var n = vector.Length;
        var a = (Complex[,])Vectors.Clone();
        var x = new Complex[n];
        for (var i = 0; i < n; i++)
            x[i] = vector[i];

        for (var column = 0; column < n; column++)
        {
            var pivot = column;
            for (var row = column + 1; row < n; row++)
                pivot = Complex.Abs(a[row, column]) > Complex.Abs(a[pivot, column]) ? row : pivot;

            if (a[pivot, column] == Complex.Zero)
                return null;

            if (pivot != column)
            {
                (x[pivot], x[column]) = (x[column], x[pivot]);
                for (var k = column; k < n; k++)
                    (a[pivot, k], a[column, k]) = (a[column, k], a[pivot, k]);
            }

            for (var row = column + 1; row < n; row++)
            {
                var factor = a[row, column] / a[column, column];
                x[row] -= factor * x[column];
                for (var k = column; k < n; k++)
                    a[row, k] -= factor * a[column, k];
            }
        }

        for (var row = n - 1; row >= 0; row--)
        {
            for (var k = row + 1; k < n; k++)
                x[row] -= a[row, k] * x[k];

            x[row] /= a[row, row];
        }

        return x;
    }

    /// <summary>Whether two coupled eigenvalues lie within 5e-5 of each other: critical damping, where their two parts of the solution nearly cancel.</summary>
    private static bool Coincide(Complex[,] t, int n)
    {
        for (var k = 1; k < n; k++)
        {
            for (var i = 0; i < k; i++)
            {
                var size = Math.Max(Size(t[i, i]), Size(t[k, k]));
                if (Size(t[k, k] - t[i, i]) < 5e-5 * size && Size(t[i, k]) > 1e-6 * size)
                    return true;
            }
        }

        return false;
    }

    private static Complex[] Diagonal(Complex[,] t, int n)
    {
        var values = new Complex[n];
        for (var k = 0; k < n; k++)
            values[k] = t[k, k];

        return values;
    }

    private static void ToHessenberg(Complex[,] t, Complex[,] q, int n)
    {
        var v = new Complex[n];
        for (var k = 0; k < n - 2; k++)
        {
            double norm = 0;
            for (var i = k + 1; i < n; i++)
                norm += Square(v[i] = t[i, k]);

            norm = Math.Sqrt(norm);
            if (norm == 0)
                continue;

            v[k + 1] += v[k + 1] == Complex.Zero ? norm : norm * v[k + 1] / Complex.Abs(v[k + 1]);
            double length = 0;
            for (var i = k + 1; i < n; i++)
                length += Square(v[i]);

            for (var j = 0; j < n; j++)
            {
                Complex dot = 0;
                for (var i = k + 1; i < n; i++)
                    dot += Complex.Conjugate(v[i]) * t[i, j];

                dot *= 2 / length;
                for (var i = k + 1; i < n; i++)
                    t[i, j] -= dot * v[i];
            }

            ReflectColumns(t, v, k, n, length);
            ReflectColumns(q, v, k, n, length);
        }
    }

    private static void ReflectColumns(Complex[,] m, Complex[] v, int k, int n, double length)
    {
        for (var i = 0; i < n; i++)
        {
            Complex dot = 0;
            for (var j = k + 1; j < n; j++)
                dot += m[i, j] * v[j];

            dot *= 2 / length;
            for (var j = k + 1; j < n; j++)
                m[i, j] -= dot * Complex.Conjugate(v[j]);
        }
    }

    private static bool ToSchur(Complex[,] t, Complex[,] q, int n)
    {
        var high = n - 1;
        for (var step = 0; high > 0; step++)
        {
            if (step > 60)
                return false;

            var low = high;
            while (low > 0 && Size(t[low, low - 1]) > 1e-16 * (Size(t[low, low]) + Size(t[low - 1, low - 1])))
                low--;

            if (low > 0)
                t[low, low - 1] = 0;

            if (low == high)
            {
                high--;
                step = -1;
                continue;
            }

            var shift = step is 10 or 20 or 30 ? t[high, high] + Size(t[high, high - 1]) : Shift(t, high);
            Sweep(t, q, n, low, high, shift);
        }

        return true;
    }

    /// <summary>The eigenvalue of the last two by two block that lies nearer to its corner.</summary>
    private static Complex Shift(Complex[,] t, int high)
    {
        Complex a = t[high - 1, high - 1], b = t[high - 1, high], c = t[high, high - 1], d = t[high, high];
        var half = (a - d) / 2;
        var root = Complex.Sqrt((half * half) + (b * c));
        var sum = Size(half + root) > Size(half - root) ? half + root : half - root;
        return sum == Complex.Zero ? d : d - (b * c / sum);
    }

    private static void Sweep(Complex[,] t, Complex[,] q, int n, int low, int high, Complex shift)
    {
        for (var k = low; k <= high; k++)
            t[k, k] -= shift;

        var cosines = new double[high];
        var sines = new Complex[high];
        for (var k = low; k < high; k++)
        {
            Complex a = t[k, k], b = t[k + 1, k];
            var norm = Math.Sqrt(Square(a) + Square(b));
            if (norm == 0)
            {
                cosines[k] = 1;
                continue;
            }

            // Rotation that makes the entry below the diagonal vanish; the pivot keeps its phase.
            var phase = a == Complex.Zero ? 1 : a / Complex.Abs(a);
            var c = Complex.Abs(a) / norm;
            var s = phase * Complex.Conjugate(b) / norm;
            cosines[k] = c;
            sines[k] = s;
            for (var j = k; j < n; j++)
            {
                Complex upper = t[k, j], lower = t[k + 1, j];
                t[k, j] = (c * upper) + (s * lower);
                t[k + 1, j] = (c * lower) - (Complex.Conjugate(s) * upper);
            }
        }

        for (var k = low; k < high; k++)
        {
            var c = cosines[k];
            var s = sines[k];
            for (var i = 0; i <= Math.Min(k + 1, high); i++)
                RotateColumns(t, i, k, c, s);

            for (var i = 0; i < n; i++)
                RotateColumns(q, i, k, c, s);
        }

        for (var k = low; k <= high; k++)
            t[k, k] += shift;
    }

    private static void RotateColumns(Complex[,] m, int i, int k, double c, Complex s)
    {
        Complex left = m[i, k], right = m[i, k + 1];
        m[i, k] = (c * left) + (Complex.Conjugate(s) * right);
        m[i, k + 1] = (c * right) - (s * left);
    }

    private static Complex[,] VectorsOf(Complex[,] t, Complex[,] q, int n)
    {
        double norm = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = i; j < n; j++)
                norm = Math.Max(norm, Size(t[i, j]));
        }

        var vectors = new Complex[n, n];
        var x = new Complex[n];
        for (var k = 0; k < n; k++)
        {
            x[k] = 1;
            for (var i = k - 1; i >= 0; i--)
            {
                Complex sum = 0;
                for (var j = i + 1; j <= k; j++)
                    sum += t[i, j] * x[j];

                var gap = t[k, k] - t[i, i];
                x[i] = sum / (Size(gap) < 1e-15 * norm ? 1e-15 * norm : gap);
            }

            double length = 0;
            for (var i = 0; i < n; i++)
            {
                Complex sum = 0;
                for (var j = 0; j <= k; j++)
                    sum += q[i, j] * x[j];

                vectors[i, k] = sum;
                length += Square(sum);
            }

            length = Math.Sqrt(length);
            for (var i = 0; i < n; i++)
                vectors[i, k] /= length;
        }

        return vectors;
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    private static double Size(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);
}
