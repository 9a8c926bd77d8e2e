namespace Programs.Arrays.Jagged;

/// <summary>Arrays of arrays share what they share.</summary>
public static class P
{
    public static readonly int[][] Triangle = Make(4);
    public static readonly int Shared = Share();
    public static readonly int Sum = Make(5).Sum(row => row.Sum());
    public static readonly int[][] Literal = [[1], [2, 3], []];

    private static int[][] Make(int rows)
    {
        var triangle = new int[rows][];
        for (var r = 0; r < rows; r++)
        {
            triangle[r] = new int[r + 1];
            triangle[r][0] = triangle[r][r] = 1;
            for (var c = 1; c < r; c++)
                triangle[r][c] = triangle[r - 1][c - 1] + triangle[r - 1][c];
        }

        return triangle;
    }

    private static int Share()
    {
        int[] row = [1, 2];
        int[][] grid = [row, row];
        grid[0][1] = 9;
        return grid[1][1];
    }
}
