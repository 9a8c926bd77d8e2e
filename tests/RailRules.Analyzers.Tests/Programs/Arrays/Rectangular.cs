namespace Programs.Arrays.Rectangular;

/// <summary>Two-dimensional arrays.</summary>
public static class P
{
    public static readonly int[,] Grid = { { 1, 2, 3 }, { 4, 5, 6 } };
    public static readonly int Element = Grid[1, 2];
    public static readonly int Rows = Grid.GetLength(0);
    public static readonly int Total = Grid.Length;
    public static readonly int Sum = Trace(3);
    public static readonly int Rank = Grid.Rank;

    private static int Trace(int size)
    {
        var table = new int[size, size];
        for (var r = 0; r < size; r++)
        {
            for (var c = 0; c < size; c++)
                table[r, c] = r * size + c;
        }

        table[1, 1] += 100;
        var sum = 0;
        foreach (var value in table)
            sum += value;
        return sum + table[1, 1];
    }
}
