namespace Programs.Arrays.Matrix;

/// <summary>Multiplication of small matrices.</summary>
public static class P
{
    public static readonly double[][] Product = Multiply([[1, 2], [3, 4]], [[0, 1], [1, 0]]);
    public static readonly double Determinant = Det([[2, 0, 1], [1, 3, 2], [1, 1, 1]]);

    private static double[][] Multiply(double[][] a, double[][] b)
    {
        var result = new double[a.Length][];
        for (var i = 0; i < a.Length; i++)
        {
            result[i] = new double[b[0].Length];
            for (var j = 0; j < b[0].Length; j++)
            {
                for (var k = 0; k < b.Length; k++)
                    result[i][j] += a[i][k] * b[k][j];
            }
        }

        return result;
    }

    private static double Det(double[][] m)
    {
        if (m.Length == 1)
            return m[0][0];
        var sum = 0.0;
        for (var c = 0; c < m.Length; c++)
        {
            var minor = m.Skip(1).Select(row => row.Where((_, i) => i != c).ToArray()).ToArray();
            sum += (c % 2 == 0 ? 1 : -1) * m[0][c] * Det(minor);
        }

        return sum;
    }
}
